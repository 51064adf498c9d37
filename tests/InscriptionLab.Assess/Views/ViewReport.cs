using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;

namespace InscriptionLab.Assess.Views;

/// <summary>Turned and mirrored photos as Markdown: a row a way of standing, then the photos that were taken wrongly.</summary>
internal static class ViewReport
{
    internal static string Of(IReadOnlyList<ViewCase> cases)
    {
        var text = new StringBuilder("| the photo shows the lettering | photos | said rightly | nothing read | character errors |\n|---|---|---|---|---|\n");
        foreach (var way in cases.GroupBy(one => (one.Mirrored, one.UpsideDown)).OrderBy(way => way.Key))
        {
            text.Append(CultureInfo.InvariantCulture, $"| {Word(way.Key.UpsideDown, way.Key.Mirrored)} | {way.Count()} | {way.Count(one => one.Right)} | {way.Count(one => one.Read == 0)} | {way.Sum(one => one.Errors)} of {way.Sum(one => one.Letters)} |\n");
        }

        text.Append(CultureInfo.InvariantCulture, $"\nSaid rightly: {cases.Count(one => one.Right)} of {cases.Count}; said wrongly: {cases.Count(one => !one.Right && one.Read > 0)}\n");
        foreach (var wrong in cases.Where(one => !one.Right))
        {
            text.Append(CultureInfo.InvariantCulture, $"{wrong.File}, {Word(wrong.UpsideDown, wrong.Mirrored)}: of {wrong.Read} lines {wrong.SaidUpsideDown} said upside down, {wrong.SaidMirrored} mirrored\n");
        }

        return text.ToString();
    }

    private static string Word(bool upsideDown, bool mirrored) => (upsideDown, mirrored) switch
    {
        (false, false) => "upright",
        (true, false) => "upside down",
        (false, true) => "mirrored",
        _ => "mirrored and upside down",
    };
}
