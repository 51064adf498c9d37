using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Cameras;

/// <summary>Works out a camera's distortion from photos of one flat chessboard in several positions (Z. Zhang, IEEE PAMI 22(11), 2000).</summary>
public static class CameraCalibrator
{
    /// <summary>Fewest photos in which the board must be seen: fewer leave focal length and distortion entangled (common practice: ten or more).</summary>
    public const int FewestPhotos = 5;

    private const string Stage = "camera";

    /// <summary>Half the side of the window in which a corner is refined, as a share of the distance of corners: clear of the neighbours.</summary>
    private const double WindowShare = 0.2;
    private const int SmallestWindow = 3;
    private const int Iterations = 30;
    private const double Precision = 0.001;

    /// <summary>Works out the calibration.</summary>
    /// <param name="photos">Photos of one size.</param>
    /// <param name="columns">Inner corners of the board along one side.</param>
    /// <param name="rows">Inner corners along the other.</param>
    /// <param name="window">Half the side of the window in which a corner is refined, in pixels; null for a fifth of the distance of corners.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>The calibration, or why these photos give none.</returns>
    public static Outcome<CameraCalibration> Run(IReadOnlyList<Photo> photos, int columns, int rows, int? window, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(photos);
        var (width, height) = (photos[0].Gray.Width, photos[0].Gray.Height);
        if (photos.FirstOrDefault(p => p.Gray.Width != width || p.Gray.Height != height) is { } other)
        {
            return Declined($"{other.File} has another size than {photos[0].File}, so they are not from one camera setting.", "Use photos of one size, taken with one lens, one zoom and one orientation.");
        }

        var seen = new List<Point2f[]>();
        foreach (var photo in photos)
        {
            cancel.ThrowIfCancellationRequested();
            if (Corners(photo, columns, rows, window) is { } corners)
            {
                seen.Add(corners);
            }
        }

        if (seen.Count < FewestPhotos)
        {
            return Declined($"A board of {columns} by {rows} inner corners is seen in {seen.Count} of {photos.Count} photos; {FewestPhotos} are needed.", "Count the inner corners, pass them with --board, and photograph the whole board flat, sharp and from different sides, filling the photo.");
        }

        Point3f[] board = [.. Enumerable.Range(0, columns * rows).Select(i => new Point3f(i % columns, i / columns, 0))];
#pragma warning disable CA1814 // OpenCvSharp takes the camera's matrix in this shape.
        var matrix = new double[3, 3];
#pragma warning restore CA1814
        var distortion = new double[CameraCalibration.Coefficients];
        var rms = Cv2.CalibrateCamera(seen.Select(_ => (IEnumerable<Point3f>)board), seen, new Size(width, height), matrix, distortion, out _, out _);
        return new Outcome<CameraCalibration>.Found(new CameraCalibration(width, height, matrix[0, 0], matrix[1, 1], matrix[0, 2], matrix[1, 2], [.. distortion], rms, seen.Count));
    }

    private static Outcome<CameraCalibration>.Declined Declined(string sentence, string remedy) => new(new Refusal(Stage, sentence, remedy));

    private static Point2f[]? Corners(Photo photo, int columns, int rows, int? window)
    {
        using var native = NativeImage.View(photo.Gray);
        if (!Cv2.FindChessboardCorners(native.Mat, new Size(columns, rows), out var corners))
        {
            return null;
        }

        var distance = Enumerable.Range(1, columns - 1).Min(i => corners[i].DistanceTo(corners[i - 1]));
        var half = window ?? Math.Max(SmallestWindow, (int)(WindowShare * distance));
        return Cv2.CornerSubPix(native.Mat, corners, new Size(half, half), new Size(-1, -1), new TermCriteria(CriteriaTypes.Eps | CriteriaTypes.MaxIter, Iterations, Precision));
    }
}
