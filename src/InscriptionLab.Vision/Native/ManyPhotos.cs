using System;
using System.Runtime.InteropServices;
using OpenCvSharp;

namespace InscriptionLab.Vision.Native;

/// <summary>Sets the native parts up for many photos, examined side by side for hours: no threads of their own, and memory that goes back to the system.</summary>
public static partial class ManyPhotos
{
    // The numbers of mallopt(3), glibc.
    private const int ArenaMax = -8;
    private const int MmapThreshold = -3;
    private const int TrimThreshold = -1;

    /// <summary>Pieces of this size and more are mapped one by one and given back when freed. The C library would raise its own limit to 32 MB with the
    /// first pictures freed, and then keep them between smaller pieces that live on; with 1 MB a tenth of the time went into fresh pages.</summary>
    private const int MappedBytes = 16 << 20;

    /// <summary>Free memory at the end of an arena beyond this goes back.</summary>
    private const int TrimmedBytes = 32 << 20;

    /// <summary>Prepares; once, before the first photo.</summary>
    /// <param name="workers">How many photos are examined at a time.</param>
    public static void Prepare(int workers)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(workers);
        if (workers > 1)
        {
            Cv2.SetNumThreads(1);
        }

        if (OperatingSystem.IsLinux())
        {
            try
            {
                _ = SetMemoryOption(ArenaMax, Math.Max(2, workers));
                _ = SetMemoryOption(MmapThreshold, MappedBytes);
                _ = SetMemoryOption(TrimThreshold, TrimmedBytes);
            }
            catch (EntryPointNotFoundException)
            {
                // Another C library, which has its own ways.
            }
        }
    }

    [LibraryImport("libc", EntryPoint = "mallopt")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int SetMemoryOption(int option, int value);
}
