using System.Linq;
using InscriptionLab.Readings;
using InscriptionLab.Strips;

namespace InscriptionLab.App.Examining;

/// <summary>In which sense lettering runs round a ring, in words.</summary>
internal static class RingSense
{
    /// <summary>Gives one word: outward, inward, both, or none where nothing was read on the ring.</summary>
    internal static string Word(Reading reading, RingStripMap map) => RingLettering.Lines(reading, map).Select(line => line.TopsOutward).Distinct().ToList() switch
    {
        [] => "none",
        [true] => "outward",
        [false] => "inward",
        _ => "both",
    };

    /// <summary>Gives a sentence.</summary>
    internal static string Sentence(Reading reading, RingStripMap map)
    {
        var lines = RingLettering.Lines(reading, map);
        string Texts(bool outward) => string.Join(", ", lines.Where(line => line.TopsOutward == outward).Select(line => $"'{line.Line.Text}'"));
        return Word(reading, map) switch
        {
            "none" => "No lettering was read on the face of the ring.",
            "outward" => "The lettering runs round the face of the ring clockwise, its tops away from the centre.",
            "inward" => "The lettering runs round the face of the ring anticlockwise, its tops toward the centre.",
            _ => $"The lettering runs round the face of the ring: {Texts(true)} clockwise, tops away from the centre; {Texts(false)} anticlockwise, tops toward the centre.",
        };
    }
}
