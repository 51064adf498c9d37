using System;
using System.Diagnostics;
using System.Linq;
using System.Threading.Tasks;
using InscriptionLab.Vision.Native;
using InscriptionLab.Vision.Reading;
using OpenCvSharp;
using Xunit;

namespace InscriptionLab.Vision.Tests.Reading;

/// <summary>
/// OpenCV's native library carries image libraries of its own. Loaded first, its symbols are bound into the system's Tesseract, whose first
/// reading then ends the process. Each order is tried in a child process of its own.
/// </summary>
public sealed class LoadOrderTests
{
    [Fact]
    public async Task With_our_assembly_loaded_OpenCV_may_be_called_before_Tesseract()
    {
        Assert.SkipUnless(NativeLoadOrder.TesseractPresent, "Tesseract is not installed.");
        Assert.Equal(0, await RunInChild(nameof(Child_OpenCV_called_first_through_our_assembly)));
    }

    [Fact]
    public async Task With_OpenCV_loaded_first_by_a_stranger_Tesseract_ends_the_process()
    {
        Assert.SkipUnless(NativeLoadOrder.TesseractPresent, "Tesseract is not installed.");

        // 128 and the signal's number: a failed or missing test would end with a small one.
        Assert.InRange(await RunInChild(nameof(Child_OpenCV_loaded_before_our_assembly)), 129, 255);
    }

    [Fact(Explicit = true)]
    public void Child_OpenCV_called_first_through_our_assembly()
    {
        var line = TesseractReaderTests.Printed("HARBOUR");
        using var reader = TesseractReader.TryStart(null, out _);
        Assert.Equal("HARBOUR", reader!.Read([line], TestContext.Current.CancellationToken).Single().Text);
    }

    [Fact(Explicit = true)]
    public void Child_OpenCV_loaded_before_our_assembly()
    {
        using (var stranger = new Mat(8, 8, MatType.CV_8UC1))
        {
            Cv2.ImEncode(".png", stranger, out _);
        }

        ThenOurs();
    }

    [System.Runtime.CompilerServices.MethodImpl(System.Runtime.CompilerServices.MethodImplOptions.NoInlining)]
    private static void ThenOurs() => new LoadOrderTests().Child_OpenCV_called_first_through_our_assembly();

    private static async Task<int> RunInChild(string test)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!)
        {
            ArgumentList = { "-explicit", "only", "-method", $"{typeof(LoadOrderTests).FullName}.{test}", "-noLogo" },
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using var child = Process.Start(start)!;
        var (output, errors) = (child.StandardOutput.ReadToEndAsync(), child.StandardError.ReadToEndAsync());
        await child.WaitForExitAsync();
        await Task.WhenAll(output, errors);
        return child.ExitCode;
    }
}
