namespace InscriptionLab.Page.Answers;

/// <summary>One answer that a question may have.</summary>
/// <param name="Observation">Its name.</param>
/// <param name="Words">The same in words.</param>
/// <param name="Years">Its years in words; empty where it tells of none.</param>
/// <param name="Source">What they rest on; empty where there is nothing to say.</param>
internal sealed record ChoiceAnswer(string Observation, string Words, string Years, string Source);
