using System;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using InscriptionLab.App.Tests.Surveying;
using InscriptionLab.Catalogue.Tests.Services;
using Xunit;

namespace InscriptionLab.App.Tests.Cli;

/// <summary>
/// The program as a process where the disk is full, nothing may be written or read, links lead round in circles, and names are no text: one sentence, a bad
/// exit code, and what was there before is there still. Small disks and lost rights come from namespaces of Linux (<c>unshare</c>); where they may not be made, tests are skipped.
/// </summary>
public sealed class HardSurroundingsTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("size=24k", "")]
    [InlineData("size=1m", "mount -o remount,ro \"$DISK\"")]
    public async Task An_examination_that_cannot_be_written_leaves_the_one_of_before(string size, string then)
    {
        Photo();
        var run = await OnSmallDiskAsync(size, $$"""
            mkdir "$DISK/out"; echo before > "$DISK/out/record.json"; echo before > "$DISK/out.jsonl"; {{then}}
            "$PROGRAM" examine "$FOLDER/photos/00000.jpg" --out "$DISK/out" --json "$DISK/out.jsonl"; code=$?
            echo "record: $(cat "$DISK/out/record.json")"; ls "$DISK/out" | sed 's/^/left: /'
            exit $code
            """);

        Assert.Equal(1, run.Code);
        IsOneSentence(run.Complaints, _folder.File("disk"));
        Assert.Contains("record: before", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain(".unfinished", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_catalogue_on_a_full_disk_keeps_what_was_acknowledged_and_says_so()
    {
        Photo();
        await ProgramProcess.RunAsync("survey", _folder.File("photos"), "--out", _folder.File("before"), "--catalogue", _folder.File("kept.db"));
        var run = await OnSmallDiskAsync("size=4m", """
            cp "$FOLDER/kept.db" "$DISK/kept.db"
            "$PROGRAM" catalogue describe 00000.jpg --title first --by tester --catalogue "$DISK/kept.db" || exit 9
            cat /dev/zero > "$DISK/filler" 2>/dev/null
            "$PROGRAM" catalogue describe 00000.jpg --title "$(head -c 9000 /dev/zero | tr '\0' x)" --by tester --catalogue "$DISK/kept.db"; code=$?
            rm "$DISK/filler"
            "$PROGRAM" catalogue check --catalogue "$DISK/kept.db"
            "$PROGRAM" catalogue steps --catalogue "$DISK/kept.db" | sed 's/^/step: /'
            exit $code
            """);

        Assert.Equal(1, run.Code);
        IsOneSentence(run.Complaints, "disk");
        Assert.Contains("the catalogue is sound", run.Output, StringComparison.Ordinal);
        Assert.Equal(2, run.Output.Split('\n').Count(line => line.StartsWith("step: ", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task A_survey_on_a_full_disk_stops_with_a_sentence_and_goes_on_when_there_is_room()
    {
        ManyPhotos.Fill(_folder.File("photos"), 3, 1, 400);
        await ProgramProcess.RunAsync("survey", _folder.File("photos"), "--out", _folder.File("whole"));
        var run = await OnSmallDiskAsync("size=40k", """
            "$PROGRAM" survey "$FOLDER/photos" --out "$DISK/out" --workers 1; code=$?
            mount -o remount,size=64m "$DISK"
            "$PROGRAM" survey "$FOLDER/photos" --out "$DISK/out" --workers 1 || exit 9
            mkdir "$FOLDER/after"; cp "$DISK"/out/*.* "$FOLDER/after"
            exit $code
            """);

        Assert.Equal(1, run.Code);
        IsOneSentence([.. run.Complaints.Where(line => !line.Contains("of 4 photos", StringComparison.Ordinal) && !line.Contains("demonstration", StringComparison.OrdinalIgnoreCase))], "disk");
        Assert.All(["photos.csv", "unusable.csv", "records.jsonl", "counts.json"], name => Assert.Equal(File.ReadAllText(_folder.File("whole/" + name)), File.ReadAllText(_folder.File("after/" + name))));
    }

    [Fact]
    public async Task A_folder_that_may_not_be_opened_is_named_and_the_rest_is_done()
    {
        ManyPhotos.Fill(_folder.File("photos"), 0, 1);
        Directory.CreateDirectory(_folder.File("photos/locked"));
        Directory.CreateDirectory(_folder.File("out"));
        File.WriteAllText(_folder.File("photos/locked/hidden.jpg"), "Dear Sir");
        Assert.Equal(0, ChildProcess.Output("chmod", "000", _folder.File("photos/locked")).ExitCode);
        try
        {
            var run = await InNamespaceAsync("-U", """exec "$PROGRAM" survey "$FOLDER/photos" --out "$FOLDER/out" """);

            Assert.Equal(1, run.Code);
            IsOneSentence([.. run.Complaints.Where(line => line.Contains("locked", StringComparison.Ordinal))], "cannot be opened");
            Assert.Contains("damaged-0.jpg", File.ReadAllText(_folder.File("out/unusable.csv")), StringComparison.Ordinal);
        }
        finally
        {
            ChildProcess.Output("chmod", "700", _folder.File("photos/locked"));
        }
    }

    [Fact]
    public void A_survey_says_how_many_lines_of_its_journal_were_damaged()
    {
        ManyPhotos.Fill(_folder.File("photos"), 0, 2);
        string[] survey = ["survey", _folder.File("photos"), "--out", _folder.File("out")];
        Assert.DoesNotContain("journal", ProgramRun.Of(survey).Error, StringComparison.Ordinal);
        var journal = _folder.File("out/journal.log");
        var lines = File.ReadAllLines(journal);
        lines[^1] = new string('x', lines[^1].Length);
        File.WriteAllLines(journal, lines);

        var run = ProgramRun.Of(survey);

        Assert.Equal(0, run.Code);
        Assert.Single(run.Complaints, line => line.Contains("1 line of the journal was damaged", StringComparison.Ordinal));
    }

    [Fact]
    public void Links_that_lead_round_in_circles_end()
    {
        ManyPhotos.Fill(_folder.File("photos/a"), 0, 2);
        File.CreateSymbolicLink(_folder.File("photos/a/up"), "..");
        File.CreateSymbolicLink(_folder.File("photos/a/again"), _folder.File("photos/a"));
        File.CreateSymbolicLink(_folder.File("photos/self.jpg"), "self.jpg");
        File.CreateSymbolicLink(_folder.File("photos/one"), "two");
        File.CreateSymbolicLink(_folder.File("photos/two"), "one");

        var run = ProgramRun.Of("survey", _folder.File("photos"), "--out", _folder.File("out"));

        Assert.Equal(0, run.Code);
        var unusable = File.ReadAllLines(_folder.File("out/unusable.csv"));
        Assert.Equal(1 + 2 + 1, unusable.Length);
        Assert.Single(unusable, line => line.Contains("self.jpg", StringComparison.Ordinal));
        BadInputTests.IsOneSentenceAbout("self.jpg", ProgramRun.Of("examine", _folder.File("photos/self.jpg")));
    }

    [Fact]
    public void Names_with_line_feeds_and_bytes_that_are_no_text_are_listed_and_complaints_stay_on_one_line()
    {
        Directory.CreateDirectory(_folder.File("photos"));
        File.WriteAllText(_folder.File("photos/two\nlines.jpg"), "Dear Sir");
        File.WriteAllText(_folder.File("photos/\u001B[31mred \u202E\"quoted\", ,.jpg"), "Dear Madam");
        Assert.Equal(0, ChildProcess.Output("/bin/sh", "-c", $"printf 'Dear all' > \"$(printf '{_folder.File("photos")}/caf\\351.jpg')\"").ExitCode);

        var run = ProgramRun.Of("survey", _folder.File("photos"), "--out", _folder.File("out"), "--catalogue", _folder.File("kept.db"));
        var rows = Tables.CsvTable.Read(File.ReadAllText(_folder.File("out/unusable.csv")));

        Assert.Equal(0, run.Code);
        Assert.Equal(1 + 3, rows.Length);
        Assert.Contains(rows, row => row[0].EndsWith("two\nlines.jpg", StringComparison.Ordinal));
        Assert.Contains(rows, row => row[0].Contains('\uFFFD', StringComparison.Ordinal) && row[1].Contains("cannot be read", StringComparison.Ordinal));
        var alone = ProgramRun.Of("examine", _folder.File("photos/two\nlines.jpg"));
        Assert.Equal(1, alone.Code);
        BadInputTests.IsOneSentenceAbout("two\u240Alines.jpg", alone);
        ChildProcess.Run("rm", ["-r", _folder.File("photos")]);
    }

    private void Photo() => ManyPhotos.Fill(_folder.File("photos"), 1, 0, 400);

    /// <summary>Runs a script with a small disk of its own at <c>$DISK</c>.</summary>
    private Task<(int Code, string Output, string[] Complaints)> OnSmallDiskAsync(string options, string script)
    {
        Directory.CreateDirectory(_folder.File("disk"));
        return InNamespaceAsync("-rm", $"""
            DISK="$FOLDER/disk"; mount -t tmpfs -o {options} none "$DISK" || exit 9
            {script}
            """);
    }

    private async Task<(int Code, string Output, string[] Complaints)> InNamespaceAsync(string kind, string script)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux() && ChildProcess.Find("unshare") is not null && ChildProcess.Output("unshare", kind, "true").ExitCode == 0, "No namespaces may be made here.");
        using var run = ProgramProcess.Under(["env", $"PROGRAM={ProgramProcess.Program}", $"FOLDER={_folder.Path}", "unshare", kind, "sh", "-c", script]);
        return await run.OutcomeAsync();
    }

    private static void IsOneSentence(string[] complaints, string named)
    {
        var complaint = Assert.Single(complaints);
        Assert.Contains(named, complaint, StringComparison.Ordinal);
        Assert.EndsWith(".", complaint, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", complaint, StringComparison.Ordinal);
    }
}
