using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace InscriptionLab.Vision.Native;

/// <summary>Loads the system's Tesseract before OpenCV: the other order binds its image library to symbols inside OpenCV's and aborts the process.</summary>
internal static class NativeLoadOrder
{
    private const string Tesseract = "libtesseract.so.5";

    /// <summary>Gets a value indicating whether the system has the Tesseract library.</summary>
    internal static bool TesseractPresent { get; private set; }

#pragma warning disable CA2255 // A module initialiser is the one place that surely runs before any OpenCV call of this assembly.
    [ModuleInitializer]
#pragma warning restore CA2255
    internal static void LoadTesseractFirst() => TesseractPresent = NativeLibrary.TryLoad(Tesseract, out _);
}
