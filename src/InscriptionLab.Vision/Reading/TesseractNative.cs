using System;
using System.Runtime.InteropServices;

namespace InscriptionLab.Vision.Reading;

/// <summary>The calls of Tesseract's C interface (capi.h, version 5) that reading one line needs.</summary>
internal static partial class TesseractNative
{
    /// <summary>Engine mode 1: the neural line recogniser only.</summary>
    internal const int LstmOnly = 1;

    /// <summary>Page segmentation mode 7: the picture is one line.</summary>
    internal const int SingleLine = 7;

    /// <summary>Iterator level 3: words.</summary>
    internal const int Word = 3;

    /// <summary>Iterator level 4: symbols.</summary>
    internal const int Symbol = 4;

    private const string Library = "libtesseract.so.5";

    [LibraryImport(Library, EntryPoint = "TessBaseAPICreate")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    internal static partial TesseractHandle Create();

    [LibraryImport(Library, EntryPoint = "TessBaseAPIEnd")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    internal static partial void End(IntPtr handle);

    [LibraryImport(Library, EntryPoint = "TessBaseAPIDelete")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    internal static partial void Delete(IntPtr handle);

    [LibraryImport(Library, EntryPoint = "TessBaseAPIInit4", StringMarshalling = StringMarshalling.Utf8)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    internal static partial int Init(
        TesseractHandle handle,
        string dataPath,
        string language,
        int engineMode,
        IntPtr configs,
        int configsSize,
        [In] string[] names,
        [In] string[] values,
        nuint count,
        int setOnlyNonDebug);

    [LibraryImport(Library, EntryPoint = "TessBaseAPISetPageSegMode")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    internal static partial void SetPageSegmentation(TesseractHandle handle, int mode);

    [LibraryImport(Library, EntryPoint = "TessBaseAPISetImage")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    internal static partial void SetImage(TesseractHandle handle, ReadOnlySpan<byte> pixels, int width, int height, int bytesPerPixel, int bytesPerLine);

    [LibraryImport(Library, EntryPoint = "TessBaseAPISetSourceResolution")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    internal static partial void SetResolution(TesseractHandle handle, int pixelsPerInch);

    [LibraryImport(Library, EntryPoint = "TessBaseAPIRecognize")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    internal static partial int Recognize(TesseractHandle handle, IntPtr monitor);

    [LibraryImport(Library, EntryPoint = "TessBaseAPIClear")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    internal static partial void Clear(TesseractHandle handle);

    [LibraryImport(Library, EntryPoint = "TessBaseAPIGetIterator")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    internal static partial IntPtr GetIterator(TesseractHandle handle);

    [LibraryImport(Library, EntryPoint = "TessResultIteratorDelete")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    internal static partial void DeleteIterator(IntPtr iterator);

    [LibraryImport(Library, EntryPoint = "TessResultIteratorNext")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    internal static partial int Next(IntPtr iterator, int level);

    [LibraryImport(Library, EntryPoint = "TessResultIteratorGetUTF8Text")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    internal static partial IntPtr GetText(IntPtr iterator, int level);

    [LibraryImport(Library, EntryPoint = "TessDeleteText")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    internal static partial void DeleteText(IntPtr text);

    [LibraryImport(Library, EntryPoint = "TessResultIteratorConfidence")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    internal static partial float Confidence(IntPtr iterator, int level);

    [LibraryImport(Library, EntryPoint = "TessPageIteratorIsAtBeginningOf")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    internal static partial int IsAtBeginningOf(IntPtr iterator, int level);

    [LibraryImport(Library, EntryPoint = "TessPageIteratorBoundingBox")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    internal static partial int BoundingBox(IntPtr iterator, int level, out int left, out int top, out int right, out int bottom);
}
