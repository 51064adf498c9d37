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
    [InlineData("scenetext01.jpg", "DOUBLE", "PARKING", "PROHIBITED")]
    public void Words_on_real_signs_are_read(string file, params string[] words)
    {
        var lines = Read(file);
        Assert.All(words, word => Assert.Contains(word, lines.Select(line => line.Text)));
    }

    [Theory]
    [InlineData("scenetext_word01.jpg", "CHINA")]
    public void Of_small_letters_at_most_one_is_misread_and_a_misread_one_is_not_called_sure(string file, string words)
    {
        var line = Assert.Single(Read(file), line => string.Equals(line.Text, words, StringComparison.OrdinalIgnoreCase));
        var letters = line.Letters.Where(letter => letter.Char != " ").ToList();
        var cut = words.Where(letter => letter != ' ').Select(letter => letter.ToString()).ToList();
        Assert.Equal(cut.Count, letters.Count);
        var misread = letters.Where((letter, index) => letter.Char != cut[index]).ToList();
        Assert.True(misread.Count <= 1, line.Text);
        Assert.All(misread, letter => Assert.True(letter.Probability < 0.9));
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
