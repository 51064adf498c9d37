using System.Collections.Immutable;

namespace InscriptionLab.Page.Bench;

/// <summary>What the photos of a piece gave together; a new one is made at every step and none is ever changed.</summary>
/// <param name="IsWorking">True while the photos are being read together.</param>
/// <param name="Sets">The sets; those of an earlier run stay until the new ones are there.</param>
/// <param name="Problem">A sentence where they could not be read together; null otherwise.</param>
/// <param name="Unlike">A sentence where the photos name several houses; null otherwise.</param>
internal sealed record JointState(bool IsWorking, ImmutableArray<JointSet> Sets, string? Problem, string? Unlike)
{
    internal static JointState None { get; } = new(false, [], null, null);
}
