using System;
using System.Collections.Immutable;
using InscriptionLab.App.Examining;
using InscriptionLab.Measures;

namespace InscriptionLab.Page.Bench;

/// <summary>One thing that a person changed by hand.</summary>
/// <param name="Origin">Who, when and on what.</param>
internal abstract record Correction(CorrectionOrigin Origin)
{
    internal int Id => Origin.Id;

    internal string PhotoId => Origin.PhotoId;

    internal string Person => Origin.Person;

    internal DateTimeOffset At => Origin.At;

    internal string Basis => Origin.Basis;

    /// <summary>The outlines of the tube were moved.</summary>
    /// <param name="Origin">Who, when and on what.</param>
    /// <param name="First">One outline in the photo.</param>
    /// <param name="Second">The other.</param>
    internal sealed record TubeEdges(CorrectionOrigin Origin, PixelSegment First, PixelSegment Second) : Correction(Origin);

    /// <summary>The rim of a ring was drawn; its face is laid flat and read in place of a tube.</summary>
    /// <param name="Origin">Who, when and on what.</param>
    /// <param name="Rim">Image of the rim.</param>
    /// <param name="Opening">Radius of the opening as a share of the rim's.</param>
    internal sealed record RingRim(CorrectionOrigin Origin, PixelEllipse Rim, double Opening) : Correction(Origin);

    /// <summary>A person saw something of the piece itself: an answer of the checklist, a measured value, or odds beforehand. It belongs to no photo.</summary>
    /// <param name="Origin">Who and when.</param>
    /// <param name="Feature">The question.</param>
    /// <param name="Observation">The answer; empty to leave the question open again.</param>
    internal sealed record Seen(CorrectionOrigin Origin, string Feature, string Observation) : Correction(Origin);

    /// <summary>A person says where the lamp of each photo of a view stood; counts for the form of the surface only.</summary>
    /// <param name="Origin">Who, when and of which photos read together.</param>
    /// <param name="Lamps">The lamps, by the SHA-256 of the photo.</param>
    internal sealed record LampsStood(CorrectionOrigin Origin, ImmutableArray<(string Sha256, StatedLamp Lamp)> Lamps) : Correction(Origin);

    /// <summary>The box of a line was drawn or moved; the line is read again there.</summary>
    /// <param name="Origin">Who, when and on what.</param>
    /// <param name="LineId">The line; one that does not exist is added.</param>
    /// <param name="Box">Its box in the strip, corners as its reader sees them.</param>
    internal sealed record LineBox(CorrectionOrigin Origin, string LineId, Quad Box) : Correction(Origin);

    /// <summary>A line was taken away: it is no lettering.</summary>
    /// <param name="Origin">Who, when and on what.</param>
    /// <param name="LineId">The line.</param>
    internal sealed record LineRemoved(CorrectionOrigin Origin, string LineId) : Correction(Origin);

    /// <summary>A letter was read by a person: replaced, split in several, or taken away where nothing is left.</summary>
    /// <param name="Origin">Who, when and on what.</param>
    /// <param name="LineId">The line.</param>
    /// <param name="LetterId">Name of the letter in its line, which stays when other letters are split or taken away.</param>
    /// <param name="Was">What stood there.</param>
    /// <param name="Characters">What the person reads, one grapheme cluster each.</param>
    internal sealed record LetterRead(CorrectionOrigin Origin, string LineId, int LetterId, string Was, ImmutableArray<string> Characters) : Correction(Origin);
}
