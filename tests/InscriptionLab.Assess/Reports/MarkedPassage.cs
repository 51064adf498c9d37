using System;
using System.IO;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Assess.Reports;

/// <summary>The passage of a Markdown file between two marks, which is written by the program and not by hand.</summary>
internal static class MarkedPassage
{
    private const string Start = "<!-- accuracy: written by ./lab assess, do not edit -->";
    private const string End = "<!-- end of accuracy -->";

    /// <summary>Puts text between the marks of a file.</summary>
    /// <exception cref="InscriptionLabException">The file has no marks.</exception>
    internal static void Write(string file, string passage)
    {
        var text = File.ReadAllText(file);
        var start = text.IndexOf(Start, StringComparison.Ordinal);
        var end = text.IndexOf(End, StringComparison.Ordinal);
        if (start < 0 || end < start)
        {
            throw new InscriptionLabException($"{file}: the marks between which the accuracy table goes are missing; put back \"{Start}\" and \"{End}\".");
        }

        File.WriteAllText(file, $"{text[..(start + Start.Length)]}\n\n{passage.Trim()}\n\n{text[end..]}");
    }
}
