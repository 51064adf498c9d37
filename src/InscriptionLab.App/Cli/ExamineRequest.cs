using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.App.Examining;
using InscriptionLab.App.Records;
using InscriptionLab.Gathering;

namespace InscriptionLab.App.Cli;

/// <summary>What the user asks of <c>examine</c>.</summary>
/// <param name="Photos">Files as named.</param>
/// <param name="Json">File for JSON Lines, "-" for the screen; null for none.</param>
/// <param name="Out">Folder of the examination; null for one named after the first photo.</param>
/// <param name="Reference">File of attested forms; null for the demonstration list.</param>
/// <param name="As">raking, turns or separate; null to find out.</param>
/// <param name="Catalogue">Catalogue to keep the examinations in; null for none.</param>
/// <param name="Construction">File in which a person recorded how the piece is made; null for none.</param>
/// <param name="Checklist">File of the checklist with its years; null for the one that the program carries.</param>
/// <param name="Prior">Odds beforehand; null for none.</param>
/// <param name="Lamps">For each photo in turn where its lamp stood; empty or default where the shading is to tell.</param>
/// <param name="Edges">For each photo in turn the two long sides of its tube, or "find"; empty or default where all tubes are to be found.</param>
/// <param name="Rings">For each photo in turn the rim of its ring, or "find"; empty or default where rings are to be found.</param>
internal sealed record ExamineRequest(ImmutableArray<string> Photos, string? Json, string? Out, string? Reference, string? As, string? Catalogue = null, string? Construction = null, string? Checklist = null, string? Prior = null, ImmutableArray<string> Edges = default, ImmutableArray<string> Rings = default, ImmutableArray<string> Lamps = default)
{
    /// <summary>Gets the scale beside the tube as written; null where none is named.</summary>
    internal string? Scale { get; init; }

    /// <summary>Gets the height of the tube's axis above the scale as written; null where both lie on one table.</summary>
    internal string? Offset { get; init; }

    private const string Separate = "separate";

    /// <summary>Gets the words that <c>--as</c> knows.</summary>
    internal static ImmutableArray<string> Kinds { get; } = [Words.For(SetKind.Raking), Words.For(SetKind.Turns), Separate];

    /// <summary>Gets a value indicating whether the photos are never to be read together.</summary>
    internal bool IsSeparate => As == Separate;

    /// <summary>Gets why the photos belong together, as the user says; null to find out.</summary>
    internal SetKind? Together => As == Words.For(SetKind.Raking) ? SetKind.Raking : As == Words.For(SetKind.Turns) ? SetKind.Turns : null;

    /// <summary>Gets where the lamp of each photo stood, by the photo's name; null where the shading is to tell.</summary>
    internal IReadOnlyDictionary<string, StatedLamp>? StatedLamps => Lamps.IsDefaultOrEmpty ? null
        : Photos.Zip(Lamps).DistinctBy(pair => pair.First, System.StringComparer.Ordinal).ToDictionary(pair => pair.First, pair => StatedLamp.Parse(pair.Second)!, System.StringComparer.Ordinal);

    /// <summary>Gives the two sides that were marked for a photo; null where its tube is to be found.</summary>
    internal MarkedEdges? EdgesOf(int photo) => Edges.IsDefaultOrEmpty ? null : MarkedEdges.Parse(Edges[photo]);

    /// <summary>Gives the ring that was marked for a photo; null where it is to be found.</summary>
    internal MarkedRing? RingOf(int photo) => Rings.IsDefaultOrEmpty ? null : MarkedRing.Parse(Rings[photo]);

    /// <summary>Gets the options as the user could have written them.</summary>
    internal ImmutableArray<string> Asked
    {
        get
        {
            var asked = new List<string>();
            void Add(string name, string? value)
            {
                if (value is not null)
                {
                    asked.Add($"{name} {value}");
                }
            }

            Add("--reference", Reference);
            Add("--as", As);
            Add("--catalogue", Catalogue);
            Add("--construction", Construction);
            Add("--checklist", Checklist);
            Add("--prior", Prior);
            Add("--scale", Scale);
            Add("--plane-offset", Offset);
            asked.AddRange((Edges.IsDefault ? [] : Edges).Select(edges => $"--edges {edges}"));
            asked.AddRange((Rings.IsDefault ? [] : Rings).Select(ring => $"--ring {ring}"));
            asked.AddRange((Lamps.IsDefault ? [] : Lamps).Select(lamp => $"--lamp {lamp}"));
            Add("--json", Json);
            Add("--out", Out);
            return [.. asked];
        }
    }
}
