using System;
using System.Linq;
using System.Threading;
using InscriptionLab.Lines;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Readings;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;

namespace InscriptionLab.App.Examining;

/// <summary>Reads the face of a ring all the way round: once to see where its lettering begins, then cut open there.</summary>
internal sealed class RingReading(ExaminingStages stages)
{
    private const string BesideTheRing = "Some lettering was read beside the ring, from the photo as it is.";

    private const string NothingOnTheRing = "No lettering was read with confidence on the face of the ring that was marked; what was read comes from the photo as it is.";

    /// <summary>Letters and mean probability from which a reading leaves nothing to look for on a ring.</summary>
    private const int FewestLetters = 4;
    private const double SureFrom = 0.8;

    /// <summary>A line along or round a tube deviates less, in radians (8 degrees), and bulges less, as a share of its length: an arc of 20 degrees bulges 0.044.</summary>
    private const double LargestAskew = 0.14;
    private const double LargestBulge = 0.03;

    /// <summary>Length of a line in heights below which it does not tell whether it bends.</summary>
    private const double ShortestLine = 5;

    /// <summary>Share of the letters that must stand so.</summary>
    private const double StraightShare = 0.8;

    /// <summary>Tells whether a ring is to be looked for: a person marked it, or lettering does not stand surely and straight along or round a tube. What runs round a ring bends, and stands askew to any tube.</summary>
    internal bool IsWanted(ReadSurface surface) => stages.FindRing is not null && (stages.RingIsMarked || !IsSettled(surface));

    /// <summary>Looks for a ring, reads its face and joins that with the reading of the rest.</summary>
    /// <returns>The ring's surface with the joint reading; the other surface where there is no ring or the ring laid flat shows no more.</returns>
    internal ReadSurface Read(Photo photo, ReadSurface other, CancellationToken cancel) => stages.FindRing!(photo, cancel) switch
    {
        Outcome<RingFace>.Found found => Joined(Read(photo, found.Value, cancel), other),
        Outcome<RingFace>.Declined declined => Without(other, $"{declined.Refusal.Sentence} {declined.Refusal.Remedy}"),
        _ => other,
    };

    private static bool IsSettled(ReadSurface surface)
    {
        var letters = surface.Reading.Lines.SelectMany(line => line.Letters).Where(letter => !letter.IsSpace).ToList();
        return surface.Tube is { } tube
            && letters.Count >= FewestLetters
            && letters.Average(letter => letter.Probability.Value) >= SureFrom
            && surface.Reading.Lines.Where(line => IsStraight(line.Line, tube)).Sum(line => line.Letters.Length) >= StraightShare * surface.Reading.Lines.Sum(line => line.Letters.Length);
    }

    private static bool IsStraight(LetteringLine line, Tube tube)
    {
        double Direction(PixelPoint from, PixelPoint to) => Math.Atan2(to.Y - from.Y, to.X - from.X);
        var askew = Math.IEEERemainder(Direction(line.InPhoto.TopLeft, line.InPhoto.TopRight) - Direction(tube.Axis.Start, tube.Axis.End), Math.PI / 2);
        var length = line.InStrip.TopLeft.DistanceTo(line.InStrip.TopRight) / line.InStrip.TopLeft.DistanceTo(line.InStrip.BottomLeft);
        return length >= ShortestLine && Math.Abs(askew) <= LargestAskew && Math.Abs(line.Bulge) <= LargestBulge;
    }

    private ReadSurface Read(Photo photo, RingFace ring, CancellationToken cancel)
    {
        var strip = stages.UnrollRing(photo, ring, null);
        var reading = stages.Read(photo, strip, cancel);
        if (RingLettering.Cut(reading, (RingStripMap)strip.Map) is { } cut)
        {
            strip = stages.UnrollRing(photo, ring, cut);
            reading = stages.Read(photo, strip, cancel);
        }

        return new ReadSurface(null, strip, reading) { Ring = ring };
    }

    private ReadSurface Joined(ReadSurface ring, ReadSurface other)
    {
        var joint = RingLettering.Union(ring.Reading, other.Reading, ring.Ring!.Plane);
        if (!ReferenceEquals(joint, other.Reading))
        {
            return ring with { Reading = joint, Warnings = joint.Lines.Length > ring.Reading.Lines.Length ? [BesideTheRing, .. ring.Ring.Notes] : ring.Ring.Notes };
        }

        return stages.RingIsMarked ? ring with { Reading = joint, Warnings = [NothingOnTheRing, .. ring.Ring.Notes] } : other;
    }

    /// <summary>Says that no ring was found where one was asked for, or where nothing else was found either.</summary>
    private ReadSurface Without(ReadSurface other, string sentence) =>
        stages.RingIsMarked || (other.Tube is null && other.Reading.Lines.IsEmpty) ? other with { Warnings = other.Warnings.Add(sentence) } : other;
}
