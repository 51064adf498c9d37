using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using InscriptionLab.Advice;

namespace InscriptionLab.Assess.Planting;

/// <summary>What was planted against what was advised.</summary>
internal sealed class AdviceTable
{
    private readonly List<(LimitKind? Planted, LimitKind? Advised)> _cases = [];

    internal int Count => _cases.Count;

    /// <summary>Gets the share of cases whose worst limit is the planted one (none for untouched photos).</summary>
    internal double Right => (double)_cases.Count(one => one.Planted == one.Advised) / _cases.Count;

    internal void Add(LimitKind? planted, PhotoAdvice advice) => _cases.Add((planted, advice.Worst));

    /// <summary>Gives the table: a row a planted fault, a column a limit named first.</summary>
    internal string ToMarkdown()
    {
        var columns = _cases.SelectMany(one => new[] { one.Planted, one.Advised }).Distinct().OrderBy(kind => kind is { } known ? (int)known : -1).ToList();
        var text = new StringBuilder("| planted \\ named first | ").AppendJoin(" | ", columns.Select(Name)).Append(" |\n|---|").AppendJoin("|", columns.Select(_ => "---")).Append("|\n");
        foreach (var row in columns.Where(kind => _cases.Any(one => one.Planted == kind)))
        {
            text.Append("| ").Append(Name(row)).Append(" | ").AppendJoin(" | ", columns.Select(column => _cases.Count(one => one.Planted == row && one.Advised == column)).Select(count => count == 0 ? string.Empty : count.ToString(CultureInfo.InvariantCulture))).Append(" |\n");
        }

        return text.Append(CultureInfo.InvariantCulture, $"\n{Right:0.0 %} right of {Count}\n").ToString();
    }

    private static string Name(LimitKind? kind) => kind?.ToString() ?? "none";
}
