namespace InscriptionLab.Surveys;

/// <summary>One file of a survey.</summary>
/// <param name="Path">Path as found under the folder that the user named.</param>
/// <param name="ObjectKey">The object it shows.</param>
/// <param name="OfferedAs">Name under which the object is offered; null where unknown.</param>
/// <param name="Bytes">Size.</param>
/// <param name="ChangedAt">Time of the last change, in ticks (UTC).</param>
public sealed record SurveyFile(string Path, string ObjectKey, string? OfferedAs, long Bytes, long ChangedAt);
