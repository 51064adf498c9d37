using System;
using System.IO;
using System.Linq;
using System.Text.Json;
using InscriptionLab.Files;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;

namespace InscriptionLab.App.Measuring;

/// <summary>A camera calibration as a JSON file.</summary>
internal static class CalibrationFile
{
    private static readonly JsonSerializerOptions Options = new() { WriteIndented = true, PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower };

    internal static void Write(string file, CameraCalibration calibration)
    {
        try
        {
            WholeFile.Write(file, JsonSerializer.Serialize(calibration, Options) + "\n");
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new InscriptionLabException($"{file}: the calibration cannot be written there; name another file with --out.", problem);
        }
    }

    internal static CameraCalibration Read(string file)
    {
        try
        {
            var read = JsonSerializer.Deserialize<CameraCalibration>(File.ReadAllText(file), Options);
            return read is { Width: > 0, Height: > 0, FocalX: > 0, FocalY: > 0 }
                && !read.Distortion.IsDefault
                && read.Distortion.Length == CameraCalibration.Coefficients
                && read.Distortion.All(double.IsFinite)
                ? read
                : throw new JsonException("values are missing");
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new InscriptionLabException($"{file}: the camera's calibration cannot be read; make it with ./lab calibrate-camera.", problem);
        }
        catch (JsonException problem)
        {
            throw new InscriptionLabException($"{file}: this is no camera calibration; make it with ./lab calibrate-camera.", problem);
        }
    }
}
