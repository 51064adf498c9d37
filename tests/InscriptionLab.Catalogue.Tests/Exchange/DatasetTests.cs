using System;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Threading;
using InscriptionLab.Catalogue.Tests.Cataloguing;
using InscriptionLab.Catalogue.Tests.Services;
using InscriptionLab.Exchange;
using InscriptionLab.Likeness;
using InscriptionLab.Outcomes;
using InscriptionLab.Tables;
using Xunit;
using Cat = InscriptionLab.Cataloguing.Catalogue;

namespace InscriptionLab.Catalogue.Tests.Exchange;

public sealed class DatasetTests : IDisposable
{
    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void Every_line_and_letter_is_there_and_no_object_is_in_two_parts()
    {
        var catalogue = Cat.Open(_scratch.At("catalogue.db"), TimeProvider.System);
        for (var number = 0; number < 160; number++)
        {
            var entry = Entries.Of(string.Create(CultureInfo.InvariantCulture, $"{number}.jpg"), string.Create(CultureInfo.InvariantCulture, $"Maker {number}"), key: string.Create(CultureInfo.InvariantCulture, $"tube {number / 2}"));
            catalogue.Intake.Add(entry with { Photo = entry.Photo with { PerceptualHash = 0x9E3779B97F4A7C15UL * (ulong)(number + 1) } }, "tester");
        }

        var (marks, letters) = new DatasetFolder(catalogue, TimeProvider.System).Write(new DatasetRequest(_scratch.At("set"), "CC0-1.0", 1), CancellationToken.None);

        var lines = CsvTable.Read(File.ReadAllText(_scratch.At("set", "data", "lines.csv"))).Skip(1).ToList();
        Assert.Equal((160, 160), (marks, lines.Count));
        Assert.Equal(Enumerable.Range(0, 160).Sum(number => "Maker".Length + (number < 10 ? 1 : number < 100 ? 2 : 3)), letters);
        Assert.All(lines.GroupBy(row => row[2]), rows => Assert.Single(rows.Select(row => row[9]).Distinct()));
        Assert.Equal(["test", "train", "validation"], lines.Select(row => row[9]).Distinct().Order(StringComparer.Ordinal));
        Assert.All(CsvTable.Read(File.ReadAllText(_scratch.At("set", "data", "letters.csv"))).Skip(1), row => Assert.True(GrayPng.Read(File.ReadAllBytes(_scratch.At("set", "data", row[0]))).Width is >= 4 and <= 6));
        Assert.Contains("Licence: CC0-1.0", File.ReadAllText(_scratch.At("set", "data", "datasheet.md")), StringComparison.Ordinal);
        Assert.Equal(0, ChildProcess.Output("/bin/sh", "-c", $"cd '{_scratch.At("set")}' && sha256sum --check --strict --quiet manifest-sha256.txt").ExitCode);
    }

    [Fact]
    public void Objects_that_share_nearly_the_same_photo_stay_together()
    {
        var objects = Enumerable.Range(0, 200).Select(number => string.Create(CultureInfo.InvariantCulture, $"object {number}")).ToList();

        var split = new DatasetSplit(objects, objects.Chunk(4).SelectMany(four => four.Skip(1).Select(other => (other, four[0]))), seed: 3);

        Assert.All(objects.Chunk(4), four => Assert.Single(four.Select(split.Of).Distinct()));
        Assert.NotEqual(objects.Select(split.Of), objects.Select(new DatasetSplit(objects, [], seed: 4).Of));
        Assert.InRange(objects.Count(key => new DatasetSplit(objects, [], seed: 4).Of(key) == DatasetSplit.Training), 140, 180);
    }

    [Fact]
    public void A_catalogue_without_pictures_or_a_folder_in_use_is_refused()
    {
        var catalogue = Cat.Open(_scratch.At("catalogue.db"), TimeProvider.System);

        Assert.Throws<InscriptionLabException>(() => new DatasetFolder(catalogue, TimeProvider.System).Write(new DatasetRequest(_scratch.At("set"), null, 1), CancellationToken.None));
        Assert.Contains("not empty", Assert.Throws<InscriptionLabException>(() => new DatasetFolder(catalogue, TimeProvider.System).Write(new DatasetRequest(_scratch.Folder, null, 1), CancellationToken.None)).Message, StringComparison.Ordinal);
    }
}
