using System.Collections.Immutable;

namespace InscriptionLab.Page.Answers;

/// <summary>One photo as the page shows it. Points are pixels of the upright photo or of the strip; a pixel's centre has integer coordinates.</summary>
/// <param name="Id">Name in addresses.</param>
/// <param name="Name">Name of the file.</param>
/// <param name="Working">True while something runs or waits to run.</param>
/// <param name="Stages">How far each stage is.</param>
/// <param name="Problem">One sentence where the photo cannot be used.</param>
/// <param name="Size">Columns and rows; null before it is read.</param>
/// <param name="Levels">Levels of the tile pyramid.</param>
/// <param name="Facts">What the photo says of itself.</param>
/// <param name="Tube">The tube.</param>
/// <param name="Strip">The strip.</param>
/// <param name="Reader">Who read it.</param>
/// <param name="Styles">Lettering styles, most probable first.</param>
/// <param name="Lines">Lines of lettering.</param>
/// <param name="Finding">What it is worth.</param>
/// <param name="Advice">What limits the photo; null before it is known.</param>
/// <param name="Warnings">Sentences for the user.</param>
internal sealed record PhotoAnswer(
    string Id,
    string Name,
    bool Working,
    ImmutableArray<StageAnswer> Stages,
    string? Problem,
    ImmutableArray<int>? Size,
    int Levels,
    FactsAnswer? Facts,
    TubeAnswer? Tube,
    StripAnswer? Strip,
    string Reader,
    ImmutableArray<ChanceAnswer> Styles,
    ImmutableArray<LineAnswer> Lines,
    FindingAnswer? Finding,
    AdviceAnswer? Advice,
    ImmutableArray<string> Warnings)
{
    /// <summary>Gets the face of a ring; null where none was laid flat.</summary>
    public RingAnswer? Ring { get; init; }

    /// <summary>Gets sizes of tube and lettering in millimetres, in sentences.</summary>
    public ImmutableArray<string> Sizes { get; init; } = [];
}
