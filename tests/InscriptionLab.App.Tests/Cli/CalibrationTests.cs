using System;
using System.IO;
using InscriptionLab.App.Measuring;
using InscriptionLab.Photos;
using Xunit;

namespace InscriptionLab.App.Tests.Cli;

public sealed class CalibrationTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_calibration_file_is_read_as_it_was_written()
    {
        var written = new CameraCalibration(4000, 3000, 3000, 3001, 1999.5, 1499.5, [-0.1, 0.01, 0, 0, 0.2], 0.2, 12);
        CalibrationFile.Write(_folder.File("camera.json"), written);
        var read = CalibrationFile.Read(_folder.File("camera.json"));
        Assert.Equal(written with { Distortion = read.Distortion }, read);
        Assert.Equal(written.Distortion, read.Distortion);
    }

    [Fact]
    public void A_file_that_is_no_calibration_costs_one_sentence()
    {
        File.WriteAllText(_folder.File("camera.json"), "{}");

        var run = ProgramRun.Of("measure", SampleImages.PathOf(SampleImages.CellCheckerboard), "--camera", _folder.File("camera.json"));

        Assert.Equal(1, run.Code);
        BadInputTests.IsOneSentenceAbout("no camera calibration", run);
    }

    [Theory]
    [InlineData("9")]
    [InlineData("9x")]
    [InlineData("2x6")]
    public void A_board_is_two_counts_of_corners(string board)
    {
        var run = ProgramRun.Of("calibrate-camera", "photo.jpg", "--board", board, "--out", _folder.File("camera.json"));

        Assert.Equal(2, run.Code);
        BadInputTests.IsOneSentenceAbout(board, run);
    }

    [Theory]
    [InlineData("1,2,3")]
    [InlineData("1,2,1,2")]
    public void A_line_over_a_thread_is_two_different_points(string along)
    {
        var run = ProgramRun.Of("thread", "photo.jpg", "--along", along);

        Assert.Equal(2, run.Code);
        BadInputTests.IsOneSentenceAbout(along, run);
    }
}
