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
    private const string Style = """
        body{font:15px/1.45 Georgia,serif;margin:2rem auto;max-width:75rem;padding:0 1rem;color:#222;background:#fbfaf7}
        table{border-collapse:collapse}th,td{padding:.2rem .8rem;text-align:left;border-bottom:1px solid #ccc}td.n{text-align:right}
        .photos{display:grid;grid-template-columns:repeat(auto-fill,minmax(15rem,1fr));gap:1rem;margin-top:1.5rem}
        figure{margin:0;border:1px solid #ccc;padding:.5rem;background:#fff;overflow-wrap:anywhere}figure img{max-width:100%;display:block;margin:0 auto .4rem}
        figcaption b{display:block}.quiet{color:#666;font-size:.85em}
        """;

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
        page.Append(CultureInfo.InvariantCulture, $"<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>Survey, page {number} of {last}</title><style>{Style}</style></head><body>\n<h1>Survey of photos</h1>\n");
        page.Append(summary).Append("<p>");
        page.Append(number > 1 ? $"<a href=\"{NameOf(number - 1)}\">page before</a> " : string.Empty);
        page.Append(CultureInfo.InvariantCulture, $"page {number} of {last}");
        page.Append(number < last ? $" <a href=\"{NameOf(number + 1)}\">next page</a>" : string.Empty);
        page.Append("</p>\n<div class=\"photos\">\n").AppendJoin('\n', rows.Select(Figure)).Append("\n</div>\n</body></html>\n");
        return page.ToString();
    }

    private static string Figure(SurveyRow row)
    {
        var figure = new StringBuilder("<figure>");
        if (row.Outcome != SurveyRow.Unusable)
        {
            figure.Append(CultureInfo.InvariantCulture, $"<img loading=\"lazy\" alt=\"\" src=\"{SurveyFolder.Thumbnails}/{Safe(row.Sha256)}.jpg\">");
        }

        figure.Append(CultureInfo.InvariantCulture, $"<figcaption><b>{Safe(row.Outcome)}</b>{Safe(row.Text)}");
        figure.Append(row.NearestForm.Length > 0 ? $"<div>nearest form: {Safe(row.NearestForm)} ({Safe(row.NearestStatus)})</div>" : string.Empty);
        figure.Append(row.NearlySameAs.Length > 0 ? $"<div class=\"quiet\">looks like {Safe(row.NearlySameAs)}</div>" : string.Empty);
        figure.Append(string.Concat(row.Warnings.Select(warning => $"<div class=\"quiet\">{Safe(warning)}</div>")));
        return figure.Append(CultureInfo.InvariantCulture, $"<div class=\"quiet\">{Safe(row.File)}</div></figcaption></figure>").ToString();
    }

    private static string Summary(ImmutableArray<FindingCount> counts, int files, int unusable)
    {
        var summary = new StringBuilder();
        summary.Append(CultureInfo.InvariantCulture, $"<p>{files} files, of which {unusable} could not be examined (see unusable.csv). A finding is evidence about lettering in a photo; it is no certificate.</p>\n");
        summary.Append("<table><tr><th>of</th><th>finding</th><th>count</th><th>share</th><th>95 % interval (Wilson)</th></tr>\n");
        foreach (var count in counts)
        {
            var share = count.Of == 0 ? 0 : 100.0 * count.Count / count.Of;
            summary.Append(CultureInfo.InvariantCulture, $"<tr><td>{Safe(count.Group)}</td><td>{count.Outcome}</td><td class=\"n\">{count.Count} of {count.Of}</td><td class=\"n\">{share:0.0} %</td><td>{100 * count.Interval.Low:0.0} to {100 * count.Interval.High:0.0} %</td></tr>\n");
        }

        return summary.Append("</table>\n").ToString();
    }

    private static string Safe(string text) => WebUtility.HtmlEncode(text);
}
