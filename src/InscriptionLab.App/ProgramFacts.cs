using System.Reflection;

namespace InscriptionLab.App;

/// <summary>What the program says of itself.</summary>
internal static class ProgramFacts
{
    /// <summary>Gets the version, with the commit where the build knew it.</summary>
    internal static string Version { get; } =
        typeof(ProgramFacts).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "unknown";

    /// <summary>Gets name and version in one line.</summary>
    internal static string NameAndVersion => "InscriptionLab " + Version;
}
