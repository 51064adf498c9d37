using System.Collections.Immutable;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>A part of a paper. A paper is written down once as blocks; each way of putting it out (printed page, web page) knows how to show every block.</summary>
internal abstract record Block
{
    /// <summary>A heading; rank 1 begins an object, 2 a photo, 3 a part.</summary>
    internal sealed record Heading(string Text, int Rank) : Block;

    /// <summary>Plain sentences, each a point of its own.</summary>
    internal sealed record Sentences(ImmutableArray<string> Texts) : Block;

    /// <summary>One paragraph in small, soft type.</summary>
    internal sealed record Aside(string Text) : Block;

    /// <summary>The outcome: a sign, so that it is not told by colour alone, and its words.</summary>
    internal sealed record Outcome(string Sign, string Text) : Block;

    /// <summary>Lettering, set as lettering.</summary>
    internal sealed record Lettering(string Text) : Block;

    /// <summary>Names with their values.</summary>
    internal sealed record Facts(ImmutableArray<(string Name, string Value)> Rows) : Block;

    /// <summary>A table; a row is as long as its head.</summary>
    internal sealed record Grid(ImmutableArray<string> Head, ImmutableArray<ImmutableArray<string>> Rows) : Block;

    /// <summary>A picture with its marks.</summary>
    internal sealed record Figure(PaperPicture Picture) : Block;

    /// <summary>Letters side by side: as photographed, as read, and beside them the form's.</summary>
    internal sealed record Letters(ImmutableArray<LetterCell> Cells, bool WithForm) : Block;
}
