namespace InscriptionLab.App.Guides;

/// <summary>One guide for users.</summary>
/// <param name="Name">Word by which it is asked for: <c>./lab help NAME</c>; its file is NAME.md.</param>
/// <param name="Title">Its first heading.</param>
/// <param name="Text">The whole guide in Markdown (CommonMark with pipe tables, without HTML).</param>
internal sealed record Guide(string Name, string Title, string Text);
