using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using InscriptionLab.Files;
using InscriptionLab.Outcomes;

namespace InscriptionLab.App.Cli;

/// <summary>Where JSON Lines go.</summary>
internal static class JsonTarget
{
    /// <summary>The name that stands for the screen.</summary>
    internal const string Screen = "-";

    /// <summary>Writes the lines to a file or, for "-", to the screen; does nothing for null.</summary>
    internal static void Write(string? target, IEnumerable<string> lines, TextWriter screen)
    {
        if (target is null)
        {
            return;
        }

        var text = string.Concat(lines.Select(line => line + "\n"));
        if (target == Screen)
        {
            screen.Write(text);
            return;
        }

        try
        {
            WholeFile.Write(target, text);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new InscriptionLabException($"{target}: the JSON cannot be written there; check that the folder exists and that you may write in it.", problem);
        }
    }
}
