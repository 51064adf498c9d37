using System;
using System.IO;
using System.Linq;
using InscriptionLab.References;
using Xunit;

namespace InscriptionLab.App.Tests.Cli;

public sealed class ListCommandTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    private string Own => _folder.File("own.csv");

    public void Dispose() => _folder.Dispose();

    private static ProgramRun Run(params string[] arguments) => ProgramRun.Of(["list", .. arguments]);

    private ReferenceForm[] Rows() => [.. new ReferenceListReader().Read(Own, File.ReadAllBytes(Own)).List.Forms];

    [Fact]
    public void The_demonstration_list_can_be_checked_searched_and_shown()
    {
        Assert.Contains("124 rows of 45 houses (108 attested, 9 period-copy, 7 reproduction); no errors.", Run("check").Output, StringComparison.Ordinal);
        Assert.StartsWith("Tolliver (Tolliver, attested, 1788 to 1815", Run("search", "Tollivor").Output, StringComparison.Ordinal);
        var shown = Run("show", "Crome", "&", "Dunnage").Output;
        Assert.Contains("  succeeded: Windlesett\n", shown, StringComparison.Ordinal);
        Assert.Contains("  words: Day or Night (1806 to 1832)\n", shown, StringComparison.Ordinal);
        Assert.Contains("  partners: Petra Crome and Jonas Dunnage\n", shown, StringComparison.Ordinal);
        Assert.Contains("  succeeded by: Crome & Dunnage\n", Run("show", "windlesett").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Rows_are_added_filled_merged_and_their_history_kept()
    {
        Assert.Equal(0, Run("add", "--reference", Own, "--form", "Ludgrove", "--maker", "Ludgrove", "--status", "attested", "--by", "A").Code);
        Assert.Equal(0, Run("add", "--reference", Own, "--form", "Ludgrove", "--maker", "Ludgrove", "--status", "attested", "--from", "1795", "--by", "B").Code);
        File.WriteAllText(_folder.File("other.json"), """{"forms": [{"form": "Ludgrove", "maker": "Ludgrove", "status": "attested", "from": 1801}, {"form": "Pelowick", "maker": "Pellowick", "status": "period-copy"}]}""");
        var merged = Run("merge", _folder.File("other.json"), "--reference", Own, "--by", "C");

        Assert.Equal("'Ludgrove' of Ludgrove: from differs from row 2; both rows are kept.\n2 added, 0 filled, 0 there already; 3 rows in " + Own + ".\n", merged.Output);
        Assert.Equal([1795, 1801, null], Rows().Select(row => row.From));
        var history = Run("history", "--reference", Own).Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(4, history.Length);
        Assert.EndsWith(" A: add: added 'Ludgrove' of Ludgrove (attested)", history[0], StringComparison.Ordinal);
        Assert.EndsWith(" B: add: filled 'Ludgrove' of Ludgrove (attested)", history[1], StringComparison.Ordinal);
    }

    [Fact]
    public void Tables_and_linked_art_are_imported()
    {
        File.WriteAllText(_folder.File("map.json"), """{"columns": {"form": "Signature", "maker": "Firm"}, "constants": {"status": "attested"}}""");
        File.WriteAllText(_folder.File("export.csv"), "Signature;Firm\nLudgrove;Ludgrove\n");
        File.WriteAllText(_folder.File("object.json"), """{"type": "Group", "_label": "Quillane", "identified_by": [{"type": "Name", "content": "Quillane"}]}""");

        Assert.Equal(0, Run("import", _folder.File("export.csv"), "--mapping", _folder.File("map.json"), "--reference", Own).Code);
        Assert.Equal(0, Run("import", _folder.File("object.json"), "--linked-art", "--reference", Own).Code);
        Assert.Equal(["Ludgrove", "Quillane"], Rows().Select(row => row.Form));
    }

    [Theory]
    [InlineData("A row needs at least --form, --maker and --status.", "add")]
    [InlineData("The demonstration list cannot be changed", "add", "--form", "A", "--maker", "A", "--status", "attested")]
    [InlineData("the new row, row 2, column status: 'true' is not one of attested, period-copy, reproduction.", "add", "--form", "A", "--maker", "A", "--status", "true")]
    [InlineData("the new row has 2 errors:", "add", "--form", "A")]
    [InlineData("Brackhaven (invented) has no house Nobody; ./lab list search finds names that are near.", "show", "Nobody")]
    [InlineData("nowhere.csv: there is no such file", "import", "nowhere.csv", "--linked-art")]
    public void What_cannot_be_done_costs_one_sentence(string sentence, params string[] arguments)
    {
        var run = Run(arguments);

        Assert.NotEqual(0, run.Code);
        Assert.Contains(sentence, run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_wrong_row_changes_nothing()
    {
        Run("add", "--reference", Own, "--form", "Ludgrove", "--maker", "Ludgrove", "--status", "attested");
        var before = File.ReadAllText(Own);

        Assert.Equal(1, Run("add", "--reference", Own, "--form", "B", "--maker", "B", "--status", "attested", "--from", "17").Code);
        Assert.Equal(before, File.ReadAllText(Own));
    }

    [Fact]
    public void The_checklist_is_handed_out_empty_and_with_its_years()
    {
        Assert.StartsWith("feature,observation,choices,question\ntube_material,,", Run("checklist").Output, StringComparison.Ordinal);
        Assert.StartsWith("feature,observation,question,part,from,to,coverage,basis,source,remark\n", Run("checklist", "--years").Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(2, "--prior 1000 % is not understood: write 3/17", "--prior", "1000 %")]
    [InlineData(1, "nowhere.csv: there is no such construction record; give the name of a CSV file.", "--construction", "nowhere.csv")]
    [InlineData(1, "nowhere.csv: there is no such checklist; give the name of a CSV file.", "--checklist", "nowhere.csv")]
    public void What_is_said_of_a_piece_is_checked_before_any_photo_is_read(int code, string sentence, params string[] arguments)
    {
        var run = ProgramRun.Of(["examine", SampleImages.PathOf(SampleImages.Script), .. arguments, "--out", _folder.File("out")]);

        Assert.Equal(code, run.Code);
        Assert.StartsWith(sentence, Assert.Single(run.Complaints), StringComparison.Ordinal);
        Assert.False(Directory.Exists(_folder.File("out")));
    }
}
