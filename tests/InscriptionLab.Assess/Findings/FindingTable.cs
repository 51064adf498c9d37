using System;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using System.Text;
using InscriptionLab.Findings;

namespace InscriptionLab.Assess.Findings;

/// <summary>How the findings did, with a line for every photo.</summary>
internal sealed record FindingTable(ImmutableArray<FindingCase> Cases)
{
    private static readonly ImmutableArray<(FindingGroup Group, string Words)> Groups =
    [
        (FindingGroup.Misspelt, "misspelt, 20 px or more, every letter of the name to be seen"),
        (FindingGroup.Unreadable, "misspelt, smaller or with letters of the name hidden"),
        (FindingGroup.Attested, "spelt as attested"),
    ];

    internal string ToMarkdown()
    {
        var text = new StringBuilder();
        Line(text, $"| lettering | photos | named with its letters | differs, other letters named | undecided or nothing read | agrees |");
        Line(text, $"|---|---|---|---|---|---|");
        foreach (var (group, words) in Groups)
        {
            var cases = Cases.Where(found => found.Group == group).ToList();
            Line(text, $"| {words} | {cases.Count} | {cases.Count(found => found.IsNamed)} | {cases.Count(found => found.IsFlagged && !found.IsNamed)} | {cases.Count(found => found.Outcome is FindingOutcome.Undecided or FindingOutcome.NothingRead)} | {cases.Count(found => found.Outcome == FindingOutcome.Agrees)} |");
        }

        text.Append('\n');
        Line(text, $"False flags (attested, said to differ): {Cases.Count(found => found.Group == FindingGroup.Attested && found.IsFlagged)} of {Cases.Count(found => found.Group == FindingGroup.Attested)}. Misspelt, said to agree: {Cases.Count(found => found.Group != FindingGroup.Attested && found.Outcome == FindingOutcome.Agrees)} of {Cases.Count(found => found.Group != FindingGroup.Attested)}.");
        text.Append('\n');
        Line(text, $"| photo | cut | attested | px | outcome | as the finding has it |");
        Line(text, $"|---|---|---|---|---|---|");
        foreach (var found in Cases)
        {
            Line(text, $"| {found.Photo} | {found.Cut} | {found.Attested} | {found.XHeight:0} | {found.Outcome} | {found.Named ?? "-"} |");
        }

        return text.ToString();
    }

    private static void Line(StringBuilder text, FormattableString line) => text.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');
}
