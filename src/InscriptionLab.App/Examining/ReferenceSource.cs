using System;
using System.IO;
using InscriptionLab.App.Demo;
using InscriptionLab.Outcomes;
using InscriptionLab.References;

namespace InscriptionLab.App.Examining;

/// <summary>Where the attested forms come from: the user's file, or the demonstration list.</summary>
internal static class ReferenceSource
{
    /// <summary>Said whenever the demonstration list was used: its makers are invented, so it can say nothing of a real piece.</summary>
    internal const string DemonstrationNote =
        "The reading was weighed against the demonstration list of invented makers; give your own list with --reference for a piece that is real.";

    /// <summary>Loads the list.</summary>
    /// <param name="file">The user's file; null for the demonstration list.</param>
    /// <exception cref="InscriptionLabException">The file cannot be read or is no list.</exception>
    internal static LoadedReferences Load(string? file)
    {
        if (file is null)
        {
            return new LoadedReferences(DemoReferences.Load(), []);
        }

        if (Directory.Exists(file) || !File.Exists(file))
        {
            throw new InscriptionLabException($"{file}: there is no such reference list; give the name of a CSV or JSON file.");
        }

        try
        {
            return new ReferenceListReader().Read(file, File.ReadAllBytes(file));
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new InscriptionLabException($"{file}: the reference list cannot be read; check that you may open it.", problem);
        }
    }
}
