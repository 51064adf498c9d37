using System;
using System.IO;
using System.Linq;
using System.Security.Cryptography;
using System.Text.Json;
using Xunit;

namespace InscriptionLab.App.Tests;

public sealed class SampleImagesTests
{
    [Fact]
    public void Every_sample_is_the_file_that_the_list_says()
    {
        using var list = JsonDocument.Parse(File.ReadAllText(SampleImages.PathOf("samples.json")));
        var samples = list.RootElement.GetProperty("samples").EnumerateArray().ToList();

        Assert.All(samples, sample => Assert.Equal(
            sample.GetProperty("sha256").GetString(),
            Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(SampleImages.PathOf(sample.GetProperty("file").GetString()!))))));
        Assert.Equal(
            Directory.GetFiles(SampleImages.Folder, "*.jpg").Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal),
            samples.Select(sample => sample.GetProperty("file").GetString()!).Order(StringComparer.Ordinal));
        Assert.All(samples, sample => Assert.True(sample.GetProperty("rendered").GetBoolean()));
    }

    [Fact]
    public void Every_sample_has_its_truth() =>
        Assert.Equal(Directory.GetFiles(SampleImages.Folder, "*.jpg").Length, SampleImages.Truths.Length);
}
