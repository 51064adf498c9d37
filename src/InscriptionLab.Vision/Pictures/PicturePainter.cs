using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Imaging;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Pictures;

/// <summary>Draws marks on copies of pictures; the pictures themselves are never changed.</summary>
public static class PicturePainter
{
    /// <summary>Binary digits after the point in the coordinates handed to the drawing call: a sixteenth of a pixel.</summary>
    private const int FractionBits = 4;

    /// <summary>Longer side, in pixels, for each pixel of line width: a line is to be seen when the whole picture is looked at.</summary>
    private const int SideForOnePixel = 900;

    /// <summary>Gives a copy of a colour picture with marks.</summary>
    public static ColourImage Paint(ColourImage picture, IEnumerable<Mark> marks) => Painted(picture, marks, canvas => canvas.ToColour());

    /// <summary>Gives a coloured copy of a grey picture with marks.</summary>
    public static ColourImage Paint(GrayImage picture, IEnumerable<Mark> marks) => Painted(picture, marks, canvas => canvas.ToColour());

    /// <summary>Gives what is made of a copy of a colour picture with marks.</summary>
    internal static T Painted<T>(ColourImage picture, IEnumerable<Mark> marks, Func<NativeImage, T> make)
    {
        ArgumentNullException.ThrowIfNull(picture);
        ArgumentNullException.ThrowIfNull(marks);
        using var canvas = NativeImage.From(picture);
        Draw(canvas, marks);
        return make(canvas);
    }

    /// <summary>Gives what is made of a coloured copy of a grey picture with marks.</summary>
    internal static T Painted<T>(GrayImage picture, IEnumerable<Mark> marks, Func<NativeImage, T> make)
    {
        ArgumentNullException.ThrowIfNull(picture);
        ArgumentNullException.ThrowIfNull(marks);
        using var grey = NativeImage.View(picture);
        using var canvas = grey.Apply((from, to) => Cv2.CvtColor(from, to, ColorConversionCodes.GRAY2BGR));
        Draw(canvas, marks);
        return make(canvas);
    }

    private static void Draw(NativeImage canvas, IEnumerable<Mark> marks)
    {
        var width = Math.Max(1, Math.Max(canvas.Mat.Width, canvas.Mat.Height) / SideForOnePixel);
        foreach (var mark in marks)
        {
            Point[] points = [.. mark.Points.Select(point => new Point(Fixed(point.X), Fixed(point.Y)))];
            Cv2.Polylines(canvas.Mat, [points], mark.Closed, ColourOf(mark.Ink), width, LineTypes.AntiAlias, FractionBits);
        }
    }

    private static int Fixed(double coordinate) => (int)Math.Round(coordinate * (1 << FractionBits));

    /// <summary>Blue, green, red. The three differ in lightness too, so that they can be told apart without seeing colours.</summary>
    private static Scalar ColourOf(MarkInk ink) => ink switch
    {
        MarkInk.Letter => new Scalar(255, 235, 60),
        MarkInk.Outline => new Scalar(80, 80, 255),
        MarkInk.Axis => new Scalar(255, 255, 255),
        _ => throw new ArgumentOutOfRangeException(nameof(ink), ink, "No colour for this ink."),
    };
}
