using System;
using System.IO;
using InscriptionLab.Imaging;
using InscriptionLab.Readings;
using InscriptionLab.Reliefs;
using InscriptionLab.Vision.Pictures;
using InscriptionLab.Vision.Relief;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports.Html;

/// <summary>The form of the surface from several lamps: grooves, normals, and a picture over which a lamp can be moved.</summary>
internal static class ReliefSection
{
    /// <summary>Longest side of the picture to relight, in pixels: each movement of the lamp lights every pixel again.</summary>
    private const int LongestSide = 1000;

    /// <summary>Gets the script that lights the picture: the program's own, it needs nothing and asks nothing of anyone.</summary>
    internal static string Script { get; } = Read("InscriptionLab.App.Reports.Html.relight.js");

    internal static void Write(Markup page, SurfaceRelief relief, Reading reading, int index)
    {
        var round = ReliefCut.Round(relief, reading);
        page.Open("section", ("class", "relief")).Element("h3", "The form of the surface");
        if (relief.Kind == ReliefKind.Normals)
        {
            Relight(page, round.Of(ReliefPictures.ForRelighting(relief)), index);
        }

        Figure(page, PictureEncoder.ToJpeg(ReliefPictures.Grooves(relief)), relief.Height.Width, relief.Height.Height, "Heights over the tube's curve: grooves dark, bare metal light", Invariant($"grooves{index}"), relief.Kind == ReliefKind.Normals
            ? "Heights over the tube's curve, from the slopes that the lamps show: the darker, the deeper. Depths compare places of this picture; they are no millimetres."
            : "Heights over the tube's curve, from slopes in one direction: the darker, the deeper. Strokes that run along that direction do not show.");
        if (relief.Kind == ReliefKind.Normals)
        {
            var normals = round.Of(ReliefPictures.Normals(relief));
            Figure(page, PictureEncoder.ToJpeg(normals, LongestSide), normals.Width, normals.Height, "Which way the metal faces, as colours", Invariant($"normals{index}"), "Which way the metal faces, against the tube's curve: redder to the right, greener upward; bare metal is light blue.");
        }

        page.Close("section");
    }

    private static void Figure(Markup page, byte[] jpeg, int width, int height, string label, string id, string caption) => page
        .Open("figure").OpenDrawing(width, height, label, "picture")
        .Picture("jpeg", jpeg, width, height, id)
        .Close("svg").Element("figcaption", caption).Close("figure");

    private static void Relight(Markup page, ColourImage colours, int index)
    {
        var packed = PictureEncoder.ToPng(colours, LongestSide);
        var name = Invariant($"relight{index}");
        page.Open("figure", ("class", "relight"), ("data-relight", name))
            .Open("canvas", ("id", name), ("role", "img"), ("tabindex", "0"), ("aria-label", "The metal under a lamp that can be moved with the pointer or the arrow keys"), ("style", Invariant($"--ratio:{(double)colours.Width / colours.Height:0.####}"))).Close("canvas")
            .Empty("img", ("hidden", "hidden"), ("alt", string.Empty), ("src", "data:image/png;base64," + Convert.ToBase64String(packed)))
            .Open("p", ("class", "lamp"));
        Slider(page, name, "side", "Side of the lamp", 0, 360, 225, "degrees clockwise from right");
        Slider(page, name, "height", "Height of the lamp", 3, 90, 25, "degrees");
        Slider(page, name, "shine", "Shine", 0, 100, 30, "per cent");
        Slider(page, name, "stains", "Stains of the metal", 0, 100, 100, "per cent");
        page.Close("p")
            .Element("figcaption", "Move the lamp: point at the picture, use the arrow keys on it, or the sliders. Worked out from the photos, not photographed: reflections and cast shadows are not shown as they would be.")
            .Close("figure");
    }

    private static void Slider(Markup page, string name, string key, string label, int from, int to, int value, string unit) => page
        .Open("label", ("for", $"{name}-{key}")).Text(label).Close("label")
        .Empty("input", ("type", "range"), ("id", $"{name}-{key}"), ("data-key", key), ("data-unit", unit), ("min", Invariant($"{from}")), ("max", Invariant($"{to}")), ("value", Invariant($"{value}")))
        .Element("output", Invariant($"{value} {unit}"), ("for", $"{name}-{key}"));

    private static string Read(string resource)
    {
        using var stream = typeof(ReliefSection).Assembly.GetManifestResourceStream(resource)
            ?? throw new InvalidOperationException("The script is part of the program.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
