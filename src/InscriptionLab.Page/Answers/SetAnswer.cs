using System.Collections.Immutable;

namespace InscriptionLab.Page.Answers;

/// <summary>One set of photos read together.</summary>
/// <param name="Id">Changes whenever the joint reading does; part of addresses.</param>
/// <param name="Place">Name under which letters of the joint reading are corrected; stays while the same photos belong together.</param>
/// <param name="Kind">raking or turns.</param>
/// <param name="Title">How many photos, and why they belong together.</param>
/// <param name="Photos">Names of the photos.</param>
/// <param name="Reader">Who read them.</param>
/// <param name="Lines">The joint reading.</param>
/// <param name="Styles">Lettering styles, most probable first.</param>
/// <param name="Finding">What it is worth.</param>
/// <param name="Reasons">Why the photos belong together, and what could not be told.</param>
/// <param name="Pictures">The joined strip, the grooves, the picture over which a lamp can be moved.</param>
/// <param name="Lamps">For each photo of a view under several lamps where a person says that it stood, degrees clockwise from right and over the plane of the picture; null where nobody said. Empty for other sets.</param>
internal sealed record SetAnswer(
    string Id,
    string Place,
    string Kind,
    string Title,
    ImmutableArray<string> Photos,
    string Reader,
    ImmutableArray<LineAnswer> Lines,
    ImmutableArray<ChanceAnswer> Styles,
    FindingAnswer Finding,
    ImmutableArray<string> Reasons,
    ImmutableArray<SetPictureAnswer> Pictures,
    ImmutableArray<double[]?> Lamps);
