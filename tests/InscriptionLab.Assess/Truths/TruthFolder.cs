using System.Collections.Immutable;
using System.IO;
using System.Linq;
using System.Text.Json;
using System.Text.Json.Serialization;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Assess.Truths;

/// <summary>A folder of photos with a folder <c>truth</c> of one JSON file a photo.</summary>
[JsonSerializable(typeof(TruthPhoto))]
internal sealed partial class TruthFolder : JsonSerializerContext
{
    /// <summary>Reads every truth file of a folder, in the order of their names.</summary>
    /// <exception cref="InscriptionLabException">There is no truth, or a file is no truth file.</exception>
    internal static ImmutableArray<TruthPhoto> Read(string folder)
    {
        var truths = Path.Combine(folder, "truth");
        if (!Directory.Exists(truths))
        {
            throw new InscriptionLabException($"{folder}: there is no folder truth in it; give a folder of photos with their truth files, for example sample-images.");
        }

        var files = Directory.GetFiles(truths, "*.json").Order(System.StringComparer.Ordinal).ToList();
        return files.Count > 0
            ? [.. files.Select(ReadOne)]
            : throw new InscriptionLabException($"{truths}: there are no truth files in it; each photo needs one.");
    }

    private static TruthPhoto ReadOne(string file)
    {
        try
        {
            using var stream = File.OpenRead(file);
            return JsonSerializer.Deserialize(stream, Default.TruthPhoto) ?? throw new JsonException("The file is empty.");
        }
        catch (JsonException problem)
        {
            throw new InscriptionLabException($"{file}: this is no truth file; see sample-images/README.md for the format.", problem);
        }
    }
}
