using System.IO;
using InscriptionLab.App.Measuring;
using InscriptionLab.Vision.Models;
using InscriptionLab.Vision.Photos;

namespace InscriptionLab.Fuzz;

/// <summary>Files that are more than text: photos, calibrations, the list of models.</summary>
internal static class FileTargets
{
    /// <summary>Small bounds, so that a run is short; what lies beyond them is refused by the same rule.</summary>
    private static readonly PhotoReader Photos = new(new PhotoLimits { Pixels = 1_000_000, FileBytes = 1_000_000 });

    /// <summary>No picture passes, so that only the header is looked at.</summary>
    private static readonly PhotoReader Headers = new(new PhotoLimits { Pixels = 0 });

    internal static void Models(byte[] input)
    {
        Scratch.Write("models.json", input);
        _ = new ModelShelf(Path.GetDirectoryName(Scratch.PathOf("models.json"))!);
    }

    internal static void Calibration(byte[] input) => _ = CalibrationFile.Read(Scratch.Write("camera.json", input));

    internal static void PhotoHeader(byte[] input) => _ = Headers.Read(Scratch.Write("header", input));

    internal static void Photo(byte[] input) => _ = Photos.Read(Scratch.Write("photo", input));
}
