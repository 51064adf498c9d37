namespace InscriptionLab.Cataloguing.Rows;

/// <summary>One line as the program read it, and beside it what the user made of it.</summary>
internal sealed class LineRow
{
    public long Id { get; set; }

    public long ExaminationId { get; set; }

    public ExaminationRow? Examination { get; set; }

    /// <summary>Gets or sets the place of the line, from 0.</summary>
    public int Position { get; set; }

    /// <summary>Gets or sets the text as read; nothing ever changes it.</summary>
    public required string Text { get; set; }

    public required string Folded { get; set; }

    /// <summary>Gets or sets the text after the corrections that stand, or null where none stands.</summary>
    public string? Corrected { get; set; }

    public string? CorrectedFolded { get; set; }

    /// <summary>Gets or sets the letters with their alternatives, as in the record.</summary>
    public required string Letters { get; set; }

    public MarkRow? Mark { get; set; }
}
