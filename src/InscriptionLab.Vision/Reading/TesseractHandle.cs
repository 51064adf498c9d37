using Microsoft.Win32.SafeHandles;

namespace InscriptionLab.Vision.Reading;

/// <summary>Owns one Tesseract engine.</summary>
internal sealed class TesseractHandle : SafeHandleZeroOrMinusOneIsInvalid
{
    /// <summary>Makes a handle that owns nothing yet.</summary>
    public TesseractHandle()
        : base(ownsHandle: true)
    {
    }

    /// <inheritdoc/>
    protected override bool ReleaseHandle()
    {
        TesseractNative.End(handle);
        TesseractNative.Delete(handle);
        return true;
    }
}
