using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.IO;

namespace InscriptionLab.Catalogue.Tests.Cataloguing;

/// <summary>One of these tests' own methods as a process of its own, which can be killed and can run beside another.</summary>
internal static class OtherProcess
{
    /// <summary>Name of the environment variable that tells the method its file.</summary>
    internal const string File = "INSCRIPTIONLAB_OTHER_FILE";

    /// <summary>Name of the environment variable that tells the method who it is.</summary>
    internal const string Name = "INSCRIPTIONLAB_OTHER_NAME";

    /// <summary>Starts an explicit test method.</summary>
    /// <param name="type">The class.</param>
    /// <param name="method">The method.</param>
    /// <param name="file">What it works on.</param>
    /// <param name="name">Who it is.</param>
    internal static Process Start(Type type, string method, string file, string name)
    {
        var program = Path.Combine(AppContext.BaseDirectory, type.Assembly.GetName().Name!);
        IEnumerable<string> arguments = ["-method", $"{type.FullName}.{method}", "-explicit", "only", "-noLogo"];
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        (start.Environment[File], start.Environment[Name]) = (file, name);
        var process = Process.Start(start)!;
        process.OutputDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        return process;
    }

    /// <summary>Gives what the process was told; null in a run by hand.</summary>
    internal static (string File, string Name)? Told() =>
        Environment.GetEnvironmentVariable(File) is { } file ? (file, Environment.GetEnvironmentVariable(Name) ?? string.Empty) : null;
}
