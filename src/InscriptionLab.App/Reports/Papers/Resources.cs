using System;
using System.IO;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>Texts that are part of the program.</summary>
internal static class Resources
{
    internal static string Text(string name)
    {
        using var stream = typeof(Resources).Assembly.GetManifestResourceStream(name) ?? throw new InvalidOperationException($"{name} is part of the program.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
