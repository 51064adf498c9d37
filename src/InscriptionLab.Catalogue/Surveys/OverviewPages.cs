using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using System.Net;
using System.Text;

namespace InscriptionLab.Surveys;

/// <summary>The overview of a survey as pages that need no network: counts first, then every photo with a small picture.</summary>
internal sealed class OverviewPages(SurveyOptions options)
{
    /// <summary>The look of the program's other pages, without their typefaces: such a page is one of thousands.</summary>
    private const string Style = """
        :root{color-scheme:light dark;--ground:#f4f2ee;--sheet:#fffdfa;--well:#e5e1d8;--ink:#23211d;--soft:#615c53;--rule:#d9d3c7;--agrees:#0b5a94;--differs:#a13300}
        @media(prefers-color-scheme:dark){:root{--ground:#191815;--sheet:#22201c;--well:#100f0d;--ink:#ebe6dc;--soft:#a59e90;--rule:#3b372f;--agrees:#86c8ff;--differs:#ff9f75}}
        body{font:15px/1.45 system-ui,sans-serif;margin:0 auto;max-width:80rem;padding:1.2rem;color:var(--ink);background:var(--ground)}
        h1{font-size:1.4rem;margin:0 0 .5rem}p{margin:.5rem 0;max-width:60rem}a{color:inherit}.counts{overflow-x:auto}
        table{border-collapse:collapse;background:var(--sheet);font-variant-numeric:tabular-nums}th,td{padding:.35rem .9rem;text-align:left;border:1px solid var(--rule)}thead th{color:var(--soft);font-weight:600}
        .quiet{color:var(--soft);font-size:.85rem}td .quiet{display:block;white-space:nowrap}
        .photos{display:grid;grid-template-columns:repeat(auto-fill,minmax(15rem,1fr));gap:.8rem;margin-top:1rem;align-items:start}
        figure{margin:0;border:1px solid var(--rule);border-radius:5px;background:var(--sheet);overflow:hidden;overflow-wrap:anywhere}
        figure img,.none{width:100%;height:11rem;object-fit:contain;display:block;background:var(--well)}.none{display:grid;place-items:center;color:var(--soft)}
        figcaption{padding:.5rem .7rem .7rem}figcaption b{display:block}.agrees{color:var(--agrees)}.differs{color:var(--differs)}.text{font:1.1rem/1.35 Georgia,serif}
        summary{cursor:pointer;min-height:24px}
        """;

    private static readonly ImmutableDictionary<string, string> Signs = new Dictionary<string, string> { ["agrees"] = "= ", ["differs"] = "\u2260 ", ["undecided"] = "? " }.ToImmutableDictionary();

    /// <summary>Gives the pages in order, each with its file name; the first one bears the counts.</summary>
    internal IEnumerable<(string Name, string Page)> Of(IEnumerable<SurveyRow> rows, ImmutableArray<FindingCount> counts, int files, int unusable)
    {
        var last = System.Math.Max(1, (files + options.PhotosPerPage - 1) / options.PhotosPerPage);
        var number = 0;
        foreach (var part in rows.Chunk(options.PhotosPerPage))
        {
            number++;
            yield return (NameOf(number), Page(number, last, number == 1 ? Summary(counts, files, unusable) : string.Empty, part));
        }
    }

    private static string NameOf(int number) => number == 1 ? "index.html" : string.Create(CultureInfo.InvariantCulture, $"page-{number:0000}.html");

    private static string Page(int number, int last, string summary, IEnumerable<SurveyRow> rows)
    {
        var page = new StringBuilder();
        page.Append(CultureInfo.InvariantCulture, $"<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"><title>Survey, page {number} of {last}</title><style>{Style}</style></head><body><main>\n<h1>Survey of photos</h1>\n");
        page.Append(summary).Append("<p>");
        page.Append(number > 1 ? $"<a href=\"{NameOf(number - 1)}\">page before</a> " : string.Empty);
        page.Append(CultureInfo.InvariantCulture, $"page {number} of {last}");
        page.Append(number < last ? $" <a href=\"{NameOf(number + 1)}\">next page</a>" : string.Empty);
        page.Append("</p>\n<div class=\"photos\">\n").AppendJoin('\n', rows.Select(Figure)).Append("\n</div>\n</main></body></html>\n");
        return page.ToString();
    }

    private static string Figure(SurveyRow row)
    {
        var figure = new StringBuilder("<figure>");
        var isUsable = row.Outcome != SurveyRow.Unusable;
        figure.Append(isUsable ? $"<img loading=\"lazy\" alt=\"{Safe(row.File)}\" src=\"{SurveyFolder.Thumbnails}/{Safe(row.Sha256)}.jpg\">" : "<div class=\"none\">no picture</div>");
        figure.Append(CultureInfo.InvariantCulture, $"<figcaption><b class=\"{Safe(row.Outcome)}\">{Signs.GetValueOrDefault(row.Outcome, string.Empty)}{Words(row.Outcome)}</b><div class=\"text\">{Safe(row.Text)}</div>");
        figure.Append(row.NearestForm.Length > 0 ? $"<div>nearest form: {Safe(row.NearestForm)} ({Safe(row.NearestStatus)})</div>" : string.Empty);
        figure.Append(row.NearlySameAs.Length > 0 ? $"<div class=\"quiet\">looks like {Safe(row.NearlySameAs)}</div>" : string.Empty);
        figure.Append(CultureInfo.InvariantCulture, $"<div class=\"quiet\">{Safe(row.File)}</div>").Append(Remarks(row.Warnings, isUsable));
        return figure.Append("</figcaption></figure>").ToString();
    }

    /// <summary>Why a file is unusable stands open; remarks on one that was examined are folded away.</summary>
    private static string Remarks(ImmutableArray<string> warnings, bool isFolded)
    {
        var sentences = string.Concat(warnings.Select(warning => $"<div class=\"quiet\">{Safe(warning)}</div>"));
        return isFolded && warnings.Length > 0
            ? string.Create(CultureInfo.InvariantCulture, $"<details class=\"quiet\"><summary>to bear in mind ({warnings.Length})</summary>{sentences}</details>")
            : sentences;
    }

    /// <summary>One row a group, one column a finding: count, and under it share and Wilson interval.</summary>
    private static string Summary(ImmutableArray<FindingCount> counts, int files, int unusable)
    {
        var summary = new StringBuilder();
        summary.Append(CultureInfo.InvariantCulture, $"<p>{files} files, of which {unusable} could not be examined (see unusable.csv). A finding is evidence about lettering in a photo; it is no certificate.</p>\n");
        string[] outcomes = [.. counts.Select(count => count.Outcome).Distinct()];
        summary.Append("<div class=\"counts\" tabindex=\"0\" role=\"group\" aria-label=\"Counts\"><table><thead><tr><th scope=\"col\">of</th>").Append(string.Concat(outcomes.Select(outcome => $"<th scope=\"col\">{Words(outcome)}</th>"))).Append("</tr></thead><tbody>\n");
        foreach (var group in counts.GroupBy(count => count.Group))
        {
            summary.Append(CultureInfo.InvariantCulture, $"<tr><th scope=\"row\">{group.First().Of} {Safe(group.Key)}</th>").Append(string.Concat(group.Select(Share))).Append("</tr>\n");
        }

        return summary.Append("</tbody></table></div>\n<p class=\"quiet\">Under each count its share, with the 95 % score interval of Wilson (1927). Shares are those of the photos given, which may be no sample of anything else.</p>\n").ToString();
    }

    private static string Share(FindingCount count) => string.Create(
        CultureInfo.InvariantCulture,
        $"<td>{count.Count}<span class=\"quiet\">{(count.Of == 0 ? 0 : 100.0 * count.Count / count.Of):0.0} % ({100 * count.Interval.Low:0.0} to {100 * count.Interval.High:0.0} %)</span></td>");

    private static string Words(string outcome) => Safe(outcome.Replace('-', ' '));

    private static string Safe(string text) => WebUtility.HtmlEncode(text);
}
