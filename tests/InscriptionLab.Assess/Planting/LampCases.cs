using System.Collections.Generic;
using InscriptionLab.Advice;
using InscriptionLab.Photos;
using InscriptionLab.Vision.Tests.Rendering;

namespace InscriptionLab.Assess.Planting;

/// <summary>
/// Rendered lettering under a lamp on the wrong side: in line with the stems (above or below the line) or with the bars (beyond an end), and under one that crosses both. No photo can be
/// spoilt in this way afterwards, so grooves of exact form are drawn, of words that have stems and bars in plenty.
/// </summary>
internal static class LampCases
{
    private const double HalfWidth = 0.3;
    private const double Depth = 0.18;

    private static readonly string[] Words = ["NETHALINE", "FILTENHAZE", "LITTLEZEAN", "HEALTIFEN", "TALFENZIL", "ANTHELINE"];

    /// <summary>Names of the stands, angle of the lamp round the tube from the camera's side, and toward its end, degrees.</summary>
    private static readonly (string Name, LimitKind? Fault, double Around, double Along)[] Stands =
    [
        ("lamp above the line", LimitKind.LightAlongStrokes, -68, 0),
        ("lamp below the line", LimitKind.LightAlongStrokes, 66, 3),
        ("lamp beyond the end", LimitKind.LightAlongStrokes, 0, 68),
        ("lamp beyond the start", LimitKind.LightAlongStrokes, 3, -66),
        ("lamp across stems and bars", null, -60, 48),
    ];

    /// <summary>Gives the photos, each with the fault that its lamp stands for.</summary>
    internal static IEnumerable<(string Name, LimitKind? Fault, Photo Photo)> All()
    {
        for (var i = 0; i < Words.Length; i++)
        {
            var scene = new TubeScene { Width = 900, Height = 480, Focal = 2000, Noise = 1.5 + (0.3 * i), Radius = 15 + i, Distance = 200 + (5 * i), Roll = 0.02 * (i - 2), Seed = 50 + i };
            var tube = new EngravedTube(scene, Groove.Word(Words[i], 0, 0, 3.2 + (0.15 * (i % 4)), HalfWidth, Depth)) { Exposure = 1.2, Ambient = 0.02 + (0.01 * (i % 3)) };
            foreach (var (name, fault, around, along) in Stands)
            {
                yield return ($"{Words[i]}, {name}", fault, tube.Render(EngravedTube.Lamp(around, along)));
            }
        }
    }
}
