using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Outcomes;
using Microsoft.ML.OnnxRuntime;

namespace InscriptionLab.Vision.Native;

/// <summary>
/// The one owner of an inference session. A run stays on its caller's thread, so that its sums are always added in one order; runs may overlap and share the session.
/// </summary>
internal sealed class OnnxNetwork : IDisposable
{
    private readonly InferenceSession _session;
    private readonly string _file;
    private readonly string _input;
    private readonly IReadOnlyList<string> _outputs;

    /// <summary>Loads a network.</summary>
    /// <param name="file">Name of the file, for messages.</param>
    /// <param name="bytes">The file's content, already checked against its hash.</param>
    /// <param name="input">The input and its axes; -1 where free.</param>
    /// <param name="outputs">Outputs wanted, in this order.</param>
    /// <exception cref="InscriptionLabException">The network cannot be loaded or has other inputs or outputs.</exception>
    internal OnnxNetwork(string file, byte[] bytes, (string Name, ImmutableArray<int> Axes) input, IReadOnlyList<string> outputs)
    {
        (_file, _input, _outputs) = (file, input.Name, outputs);
        // Lines and photos differ in size: a plan of memory for each shape would be kept and used once.
        using var options = new SessionOptions { IntraOpNumThreads = 1, InterOpNumThreads = 1, EnableMemoryPattern = false, EnableCpuMemArena = false, LogSeverityLevel = OrtLoggingLevel.ORT_LOGGING_LEVEL_ERROR };
        try
        {
            _session = new InferenceSession(bytes, options);
        }
        catch (OnnxRuntimeException cause)
        {
            throw new InscriptionLabException($"{file}: the model cannot be loaded; put back the models folder that belongs to this version.", cause);
        }

        if (!Fits(input.Axes))
        {
            _session.Dispose();
            throw new InscriptionLabException(
                $"{file}: the model takes or gives something else than this version needs (input {input.Name} of shape {string.Join('x', input.Axes.Select(axis => axis < 0 ? "?" : $"{axis}"))}, outputs {string.Join(", ", outputs)}); put back the models folder that belongs to this version.");
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _session.Dispose();

    /// <summary>Runs the network.</summary>
    /// <param name="numbers">Input values, last axis fastest.</param>
    /// <param name="shape">Length of each axis.</param>
    internal NetworkOutput[] Run(float[] numbers, long[] shape)
    {
        using var input = OrtValue.CreateTensorValueFromMemory(numbers, shape);
        using var run = new RunOptions();
        try
        {
            using var results = _session.Run(run, [_input], [input], _outputs);
            return [.. results.Select(result => new NetworkOutput(result.GetTensorDataAsSpan<float>().ToArray(), [.. result.GetTensorTypeAndShape().Shape]))];
        }
        catch (OnnxRuntimeException cause)
        {
            throw new InscriptionLabException($"{_file}: the model failed on an input of {string.Join('x', shape)}; a smaller photo may pass.", cause);
        }
    }

    private bool Fits(ImmutableArray<int> axes) =>
        _session.InputMetadata.TryGetValue(_input, out var metadata)
        && metadata.ElementType == typeof(float)
        && metadata.Dimensions.Length == axes.Length
        && metadata.Dimensions.Zip(axes).All(pair => pair.First < 0 || pair.Second < 0 || pair.First == pair.Second)
        && _outputs.All(_session.OutputMetadata.ContainsKey);
}
