using InscriptionLab.Measures;

namespace InscriptionLab.Gathering;

/// <summary>When lines of several photos count as one line, and how their letters are put together.</summary>
public sealed record GathererOptions
{
    /// <summary>Gets how alike two lines must read to be taken for one line: one minus edits over letters of the longer.</summary>
    /// <value>Default 0.6: of ten letters four may be misread; different lines of one tube are far below (a choice).</value>
    public double Likeness { get; init; } = 0.6;

    /// <summary>Gets how far apart, in heights of the lettering, two lines of the same place may lie from one row.</summary>
    /// <value>Default 0.6: neighbouring lines stand at least one height apart (common practice of engravers). Lines that read alike may lie twice as far apart.</value>
    public double SamePlace { get; init; } = 0.6;

    /// <summary>Gets the letters that a line must have to tie two photos together.</summary>
    /// <value>Default 4: shorter lines read alike by chance.</value>
    public int TyingLetters { get; init; } = 4;

    /// <summary>Gets the angle from which a tube counts as turned between two photos.</summary>
    /// <value>Default 4 degrees: lamps shift what two photos of one view share by up to 3 (rendered sets), hands turn a tube by more.</value>
    public Angle SmallestTurn { get; init; } = Angle.FromDegrees(4);

    /// <summary>Gets how far the outlines of a tube may lie apart in photos of one stand, as a share of its diameter.</summary>
    /// <value>Default 0.03: outlines are found to about 1 % where both lie in the frame, and lamps move them.</value>
    public double SameOutline { get; init; } = 0.03;

    /// <summary>Gets the share of a tube's length, as all photos of a stand show it, below which one photo's own tube counts as cut short.</summary>
    /// <value>Default 0.8: lettering may lie on the rest.</value>
    public double ShortLength { get; init; } = 0.8;

    /// <summary>Gets the exponent of the number of photos by which their joint evidence is divided: 1 averages it, 0 takes the photos as independent.</summary>
    /// <value>Default 0.5, half way: photos of one groove read by one reader share some of their mistakes.</value>
    public double SharedMistakes { get; init; } = 0.5;

    /// <summary>Gets the power of its mean letter probability with which a reading of a line counts beside others of that line under other lamps; 0 counts all alike. Photos of a turned tube always count alike.</summary>
    /// <value>Default 8: a reading of mean 0.95 counts five times one of 0.78. Of 0, 4, 8 and 16 on rendered raking sets 8 and 16 read best (<c>RakingReadingsTests</c>).</value>
    public double Reliability { get; init; } = 8;

    /// <summary>Gets the number of letters over which a reading's doubt is spread that it does not put on letters it lists.</summary>
    /// <value>Default 50: the letters of either case.</value>
    public int OtherLetters { get; init; } = 50;

    /// <summary>Gets the least doubt that a reading leaves to letters that it does not list.</summary>
    /// <value>Default 0.005: what readers no longer list.</value>
    public double LeastDoubt { get; init; } = 0.005;

    /// <summary>Gets the probability with which a photo that passes over a letter is taken to say that there is none.</summary>
    /// <value>Default 0.9: a shadow can swallow a letter whole.</value>
    public double PassedOver { get; init; } = 0.9;

    /// <summary>Gets the probability under which a joint letter is given as unreadable.</summary>
    /// <value>Default 0.3, as for a single photo.</value>
    public double UnreadableBelow { get; init; } = 0.3;

    /// <summary>Gets the probability from which on an alternative is kept.</summary>
    /// <value>Default 0.005, as for a single photo.</value>
    public double AlternativesFrom { get; init; } = 0.005;
}
