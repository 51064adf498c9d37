using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;

namespace InscriptionLab.Assess.Turns;

/// <summary>The turn sets of a folder as Markdown: a row a set, then the whole.</summary>
internal static class TurnReport
{
    internal static string Of(IReadOnlyList<TurnCase> cases)
    {
        var text = new StringBuilder("| set | photos joined | circumference seen | largest error of a turn, % of the circumference | letters' places apart, % (pairs) | as stated, % | character errors |\n|---|---|---|---|---|---|---|\n");
        foreach (var one in cases)
        {
            text.Append(CultureInfo.InvariantCulture, $"| {one.Set} | {one.Joined} of {one.Photos} | {one.ShareSeen * 100:0} % | {one.LargestStep * 100:0.00} | {one.Seam * 100:0.00} ({one.Meetings}) | {one.SaidSeam * 100:0.00} | {one.Text.Edits} of {one.Text.Letters} |\n");
        }

        text.Append(CultureInfo.InvariantCulture, $"\nSets joined whole: {cases.Count(one => one.Joined == one.Photos)} of {cases.Count}; character errors of the joint readings: {cases.Sum(one => one.Text.Edits)} of {cases.Sum(one => one.Text.Letters)}\n");
        return text.ToString();
    }
}
