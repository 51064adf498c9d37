using System;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace InscriptionLab.Vision.Native;

/// <summary>Loads the system's Tesseract before OpenCV: the other order binds its image library to symbols inside OpenCV's and aborts the process.</summary>
internal static partial class NativeLoadOrder
{
    private const string Tesseract = "libtesseract.so.5";

    /// <summary>Tesseract's worker threads cost more than they bring on lines of lettering: 40 lines took 2.7 s with them and 1.0 s without.</summary>
    private const string ThreadLimit = "OMP_THREAD_LIMIT";

    /// <summary>Gets a value indicating whether the system has the Tesseract library.</summary>
    internal static bool TesseractPresent { get; private set; }

#pragma warning disable CA2255 // A module initialiser is the one place that surely runs before any OpenCV call of this assembly.
    [ModuleInitializer]
#pragma warning restore CA2255
    internal static void LoadTesseractFirst()
    {
        if (OperatingSystem.IsLinux())
        {
            // The runtime keeps its own copy of the environment; the native library reads the process's. A limit the user has set stays.
            _ = SetEnvironmentVariable(ThreadLimit, "1", 0);
        }

        TesseractPresent = NativeLibrary.TryLoad(Tesseract, out _);
    }

    [LibraryImport("libc", EntryPoint = "setenv", StringMarshalling = StringMarshalling.Utf8)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int SetEnvironmentVariable(string name, string value, int overwrite);
}
