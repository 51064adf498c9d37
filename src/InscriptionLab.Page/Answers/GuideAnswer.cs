namespace InscriptionLab.Page.Answers;

/// <summary>One guide.</summary>
/// <param name="Name">Word by which it is asked for.</param>
/// <param name="Title">Its first heading.</param>
/// <param name="Html">The guide as a piece of HTML that holds no markup but that of its Markdown; null in a list of guides.</param>
internal sealed record GuideAnswer(string Name, string Title, string? Html);
