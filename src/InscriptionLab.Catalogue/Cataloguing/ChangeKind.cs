namespace InscriptionLab.Cataloguing;

/// <summary>The steps that can be undone.</summary>
internal static class ChangeKind
{
    internal const string Added = "examination-added";
    internal const string Corrected = "corrected";
    internal const string Described = "object-described";
    internal const string Observed = "object-observed";
    internal const string ObjectTrashed = "object-trashed";
    internal const string ObjectRestored = "object-restored";
    internal const string PhotoMoved = "photo-moved";
}
