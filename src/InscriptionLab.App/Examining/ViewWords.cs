using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Readings;

namespace InscriptionLab.App.Examining;

/// <summary>What is said of a photo that shows its lettering mirrored or upside down.</summary>
internal static class ViewWords
{
    /// <summary>Gives sentences; none where the lettering stands as it was cut.</summary>
    internal static IEnumerable<string> Of(Reading reading)
    {
        var mirrored = reading.Lines.Where(line => line.Line.Direction.Mirrored).ToList();
        if (mirrored.Count > 0)
        {
            yield return $"This photo is mirrored, left and right exchanged: {Texts(mirrored)} reads the right way round only in a mirror. The letters are given as they stand on the metal; boxes lie where the photo shows them. Ask for a photo that is not mirrored before you compare anything else in it.";
        }

        var turned = reading.Lines.Where(line => line.Line.Direction.UpsideDown).ToList();
        if (turned.Count > 0)
        {
            yield return turned.Count == reading.Lines.Length
                ? $"The lettering stands upside down in this photo: {Texts(turned)} was read with the photo turned round."
                : $"Some lettering stands upside down beside the rest: {Texts(turned)}.";
        }
    }

    private static string Texts(IEnumerable<LineReading> lines) => string.Join(", ", lines.Select(line => $"'{line.Text}'"));
}
