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

        var built = new DatasetFolder(catalogue, TimeProvider.System).Write(new DatasetRequest(_scratch.At("set"), "CC0-1.0", 1), null, CancellationToken.None);

        var lines = CsvTable.Read(File.ReadAllText(_scratch.At("set", "data", "lines.csv"))).Skip(1).ToList();
        Assert.Equal((160, 160), (built.Marks, lines.Count));
        Assert.Equal(Enumerable.Range(0, 160).Sum(number => "Maker".Length + (number < 10 ? 1 : number < 100 ? 2 : 3)), built.Letters);
        Assert.Equal((80, 160), (built.Objects, built.Parts.Sum(part => part.Marks)));
        Assert.Equal(["train", "validation", "test"], built.Parts.Select(part => part.Name));
        Assert.All(built.Parts, part => Assert.Equal(lines.Count(row => row[9] == part.Name), part.Marks));
        Assert.Equal(["No line was corrected by a person: every transcription is what the program read, and may be wrong."], built.Warnings.Where(warning => !warning.StartsWith("The part", StringComparison.Ordinal)));
        Assert.All(lines.GroupBy(row => row[2]), rows => Assert.Single(rows.Select(row => row[9]).Distinct()));
        Assert.Equal(["test", "train", "validation"], lines.Select(row => row[9]).Distinct().Order(StringComparer.Ordinal));
        Assert.All(CsvTable.Read(File.ReadAllText(_scratch.At("set", "data", "letters.csv"))).Skip(1), row => Assert.True(GrayPng.Read(File.ReadAllBytes(_scratch.At("set", "data", row[0]))).Width is >= 4 and <= 6));
        Assert.Contains("Licence: CC0-1.0", File.ReadAllText(_scratch.At("set", "data", "datasheet.md")), StringComparison.Ordinal);
        Assert.Equal(0, ChildProcess.Output("/bin/sh", "-c", $"cd '{_scratch.At("set")}' && sha256sum --check --strict --quiet manifest-sha256.txt").ExitCode);
    }

    [Fact]
    public void Letters_go_with_their_line_groups_hold_like_marks_and_the_same_seed_gives_the_same_set()
    {
        var catalogue = Cat.Open(_scratch.At("catalogue.db"), TimeProvider.System);
        string[] names = ["Brockwell", "Tenshord", "Walterson"];
        for (var number = 0; number < 30; number++)
        {
            var entry = Entries.Of(string.Create(CultureInfo.InvariantCulture, $"{number}.jpg"), names[number % 3], key: string.Create(CultureInfo.InvariantCulture, $"tube {number}"));
            catalogue.Intake.Add(entry with { Photo = entry.Photo with { PerceptualHash = 0x9E3779B97F4A7C15UL * (ulong)(number + 1) } }, "tester");
        }

        catalogue.Desk.Correct(1, 0, "Brockwel", "A. Cataloguer", "Seen under raking light.");
        foreach (var (folder, licence, seed) in new[] { ("one", null, 7), ("two", null, 7), ("three", "CC-BY-4.0", 8) })
        {
            new DatasetFolder(catalogue, TimeProvider.System).Write(new DatasetRequest(_scratch.At(folder), licence, seed), null, CancellationToken.None);
        }

        var lines = CsvTable.Read(File.ReadAllText(_scratch.At("one", "data", "lines.csv"))).Skip(1).ToDictionary(row => row[0], StringComparer.Ordinal);
        Assert.All(CsvTable.Read(File.ReadAllText(_scratch.At("one", "data", "letters.csv"))).Skip(1), row => Assert.Equal(lines[row[1]][9], row[5]));
        Assert.Equal(3, lines.Values.Select(row => row[8]).Distinct().Count());
        Assert.All(lines.Values, row => Assert.Equal((row[5], row[8]), (lines[row[8]][5], lines[row[8]][8])));
        Assert.Equal(("Brockwel", "A. Cataloguer", 29), (lines["mark-000001"][6], lines["mark-000001"][7], lines.Values.Count(row => row[6].Length == 0)));
        Assert.Equal(File.ReadAllText(_scratch.At("one", "data", "lines.csv")), File.ReadAllText(_scratch.At("two", "data", "lines.csv")));
        Assert.NotEqual(File.ReadAllText(_scratch.At("one", "data", "lines.csv")), File.ReadAllText(_scratch.At("three", "data", "lines.csv")));

        var sheet = File.ReadAllText(_scratch.At("one", "data", "datasheet.md"));
        Assert.All(["Motivation", "Composition", "Collection process", "Preprocessing, cleaning, labelling", "Uses", "Distribution", "Maintenance"], heading => Assert.Contains($"## {heading}\n", sheet, StringComparison.Ordinal));
        Assert.Contains("30 lines of lettering", sheet, StringComparison.Ordinal);
        Assert.Contains("1 of 30 lines were corrected by people", sheet, StringComparison.Ordinal);
        Assert.Contains("Licence: NOT STATED.", sheet, StringComparison.Ordinal);
        Assert.Contains("Licence: CC-BY-4.0", File.ReadAllText(_scratch.At("three", "data", "datasheet.md")), StringComparison.Ordinal);
        Assert.Contains("\"name\": \"CC-BY-4.0\"", File.ReadAllText(_scratch.At("three", "data", "ro-crate-metadata.json")), StringComparison.Ordinal);
        File.AppendAllText(_scratch.At("two", "data", "lines.csv"), "x");
        Assert.NotEqual(0, ChildProcess.Output("/bin/sh", "-c", $"cd '{_scratch.At("two")}' && sha256sum --check --strict --quiet manifest-sha256.txt").ExitCode);
    }

    [Fact]
    public void Only_what_was_chosen_goes_in_and_what_gives_nothing_is_said()
    {
        var catalogue = Cat.Open(_scratch.At("catalogue.db"), TimeProvider.System);
        for (var number = 0; number < 6; number++)
        {
            catalogue.Intake.Add(Entries.Of(string.Create(CultureInfo.InvariantCulture, $"{number}.jpg"), "Brockwell", madeAt: new DateTimeOffset(2026, 1, 1, 0, 0, 0, TimeSpan.Zero)), "tester");
        }

        // The first photo is examined again: number 1 is older than number 7 and not counted twice.
        catalogue.Intake.Add(Entries.Of("0.jpg", "Brockwell") with { Versions = Entries.Versions with { Model = "reader-2" } }, "tester");
        var steps = new System.Collections.Generic.List<DatasetStep>();
        var built = new DatasetFolder(catalogue, TimeProvider.System).Write(new DatasetRequest(_scratch.At("set"), "CC0-1.0", 1) { Examinations = System.Collections.Immutable.ImmutableHashSet.Create(1L, 2L, 7L), Threshold = 1f }, new Told(steps), CancellationToken.None);

        Assert.Equal((2, 2), (built.Marks, built.Objects));
        Assert.Contains(built.Warnings, warning => warning.StartsWith("1 examination of those chosen gave nothing", StringComparison.Ordinal));
        Assert.Equal(Enum.GetValues<DatasetStep>(), steps.Distinct());
        Assert.Contains("choose", Assert.Throws<InscriptionLabException>(() => new DatasetFolder(catalogue, TimeProvider.System).Write(new DatasetRequest(_scratch.At("none"), null, 1) { Examinations = System.Collections.Immutable.ImmutableHashSet.Create(99L) }, null, CancellationToken.None)).Message, StringComparison.Ordinal);
    }

    private sealed class Told(System.Collections.Generic.List<DatasetStep> steps) : IProgress<DatasetProgress>
    {
        public void Report(DatasetProgress value) => steps.Add(value.Step);
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

        Assert.Throws<InscriptionLabException>(() => new DatasetFolder(catalogue, TimeProvider.System).Write(new DatasetRequest(_scratch.At("set"), null, 1), null, CancellationToken.None));
        Assert.Contains("not empty", Assert.Throws<InscriptionLabException>(() => new DatasetFolder(catalogue, TimeProvider.System).Write(new DatasetRequest(_scratch.Folder, null, 1), null, CancellationToken.None)).Message, StringComparison.Ordinal);
    }
}
