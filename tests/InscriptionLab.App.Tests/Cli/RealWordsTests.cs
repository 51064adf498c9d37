using System;
using System.IO;
using System.Linq;
using InscriptionLab.App.Records;
using Xunit;

namespace InscriptionLab.App.Tests.Cli;

/// <summary>
/// Outside check on real photographs: the words on signs that come with OpenCV's text samples (Debian package <c>opencv-doc</c>, examples/text).
/// They are painted or printed, not engraved, and nothing here was trained on a photograph.
/// </summary>
public sealed class RealWordsTests : IDisposable
{
    private const string Photos = "/usr/share/doc/opencv-doc/examples/text";

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("scenetext_word02.jpg", "HERE")]
    [InlineData("scenetext_word03.jpg", "riser")]
    [InlineData("scenetext_word04.jpg", "Produkt")]
    [InlineData("scenetext01.jpg", "DOUBLE", "PARKING", "PROHIBITED", "AT ALL TIMES")]
    public void Words_on_real_signs_are_read(string file, params string[] words)
    {
        var lines = Read(file);
        Assert.All(words, word => Assert.Contains(word, lines.Select(line => line.Text)));
    }

    [Fact]
    public void A_word_of_twenty_pixels_is_read_but_for_the_case_of_a_letter_and_none_of_it_is_called_sure()
    {
        var line = Assert.Single(Read("scenetext_word01.jpg"));
        Assert.Equal("CHINA", line.Text, ignoreCase: true);
        Assert.All(line.Letters, letter => Assert.True(letter.Probability < 0.9));
    }

    private LineRecord[] Read(string file)
    {
        var photo = Path.Combine(Photos, file);
        Assert.SkipUnless(File.Exists(photo), "OpenCV's sample photos are not installed (Debian: apt-get install opencv-doc).");
        var record = _folder.File("out.jsonl");
        Assert.Equal(0, ProgramRun.Of("examine", photo, "--out", _folder.File("out"), "--json", record).Code);
        return [.. JsonLines.PhotoOf(File.ReadAllText(record)).Lines];
    }
}
