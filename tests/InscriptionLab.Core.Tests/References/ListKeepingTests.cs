using System;
using System.Collections.Immutable;
using System.Linq;
using System.Text;
using CsCheck;
using InscriptionLab.Comparison;
using InscriptionLab.Core.Tests.Comparison;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.References;
using Xunit;

namespace InscriptionLab.Core.Tests.References;

public sealed class ListKeepingTests
{
    private static readonly ReferenceForm Tolliver = new("Tolliver", "Tolliver", AttestationStatus.Attested) { From = 1788, To = 1815, Source = "Directory" };

    private static readonly Gen<string> Text = Gen.String[Gen.Char["abcÀſ,;\"' .&"], 1, 12].Where(text => text.Trim().Length > 0);

    private static readonly Gen<ReferenceForm> Row = Gen.Select(Text, Text, Gen.Int[0, 2].Select(index => (AttestationStatus)index), Gen.Int[1700, 1800], Gen.Int[0, 2].Select(index => index == 2 ? null : (FormLayout?)index), Text)
        .Select((form, maker, status, from, layout, note) => new ReferenceForm(CanonicalComposition.Compose(form), maker.Trim(), status) { From = from, To = from + 10, Layout = layout, Note = note.Trim(), Wording = "Day or Night", LetterHeight = from % 2 == 0 ? null : Length.FromMillimetres(from / 700.0), LetterSpacing = from % 3 == 0 ? null : from / 1900.0 });

    private static ImmutableArray<ReferenceForm> Read(string name, string text) => new ReferenceListReader().Read(name, Encoding.UTF8.GetBytes(text)).List.Forms;

    private static ImportMapping Mapping(string json) => ImportMapping.Read("map.json", Encoding.UTF8.GetBytes(json));

    [Fact]
    public void What_is_written_is_read_again_in_both_kinds() => Row.List[0, 6].Sample(rows =>
    {
        Assert.Equal(rows, Read("list.csv", ReferenceListWriter.Csv(rows)));
        Assert.Equal(rows, Read("list.json", ReferenceListWriter.Json("a \"name\"", rows)));
    });

    [Fact]
    public void Merging_a_list_with_itself_changes_nothing_and_with_another_loses_no_row() => Gen.Select(Row.List[0, 5], Row.List[0, 5]).Sample((first, second) =>
    {
        var once = ReferenceListMerger.Merge([], [.. first]).Forms;
        Assert.Empty(ReferenceListMerger.Merge(once, once).Changes);

        var both = ReferenceListMerger.Merge(once, [.. second]);
        Assert.All(first.Concat(second), row => Assert.Contains(row, both.Forms));
    });

    [Fact]
    public void A_row_fills_what_another_lacks()
    {
        var merged = ReferenceListMerger.Merge([Tolliver], [new ReferenceForm("Tolliver", "Tolliver", AttestationStatus.Attested) { Style = "script", From = 1788 }]);

        Assert.Equal([Tolliver with { Style = "script" }], merged.Forms);
        Assert.Equal([new ReferenceChange(Tolliver, Tolliver with { Style = "script" })], merged.Changes);
        Assert.Empty(merged.Contradictions);
    }

    [Fact]
    public void Rows_that_contradict_are_both_kept_and_told()
    {
        var merged = ReferenceListMerger.Merge([Tolliver], [Tolliver with { From = 1790 }]);

        Assert.Equal([Tolliver, Tolliver with { From = 1790 }], merged.Forms);
        Assert.Equal("'Tolliver' of Tolliver: from differs from row 2; both rows are kept.", Assert.Single(merged.Contradictions));
    }

    [Fact]
    public void A_check_tells_of_missing_sources_doubles_and_shared_forms()
    {
        var list = new ReferenceList("list", string.Empty, [Tolliver, Tolliver, Tolliver with { Maker = "Other", Source = null, Certainty = FormCertainty.Certain, SuccessorOf = "Nobody" }, new ReferenceForm("Tolliver", "Tolliver", AttestationStatus.PeriodCopy) { Source = "x" }]);

        Assert.Equal(
            [
                "Without a source: row 4.",
                "Attested, without saying how certain: rows 2, 3.",
                "The house in successor_of has no rows: row 4.",
                "The form 'Tolliver' is attested for Tolliver and Other: it cannot tell them apart.",
                "The form 'Tolliver' is attested and, in row 5, listed as a copy: the spelling cannot tell which.",
                "The form 'Tolliver' stands in full in rows 2 and 3.",
            ],
            ReferenceListCheck.Remarks(list).ToArray());
    }

    [Fact]
    public void Any_table_is_taken_by_a_mapping()
    {
        var mapping = Mapping("""{"columns": {"form": "Signature text", "maker": "Firm", "status": "Kind", "from": "Begin"}, "constants": {"source": "a museum's export"}, "words": {"status": {"own": "attested", "copied": "period-copy"}}}""");
        var rows = new TableImport(mapping).Read("export.csv", "ID;Signature text;Firm;Kind;Begin\n7;Tolliver;Tolliver;own;1788-01-01\n8;Tollivar;Tolliver;copied;about 1800\n"u8);

        Assert.Equal(
            [
                new ReferenceForm("Tolliver", "Tolliver", AttestationStatus.Attested) { From = 1788, Source = "a museum's export" },
                new ReferenceForm("Tollivar", "Tolliver", AttestationStatus.PeriodCopy) { From = 1800, Source = "a museum's export" },
            ],
            rows.ToArray());
    }

    [Theory]
    [InlineData("""{"columns": {"form": "A", "marker": "B"}}""", "map.json: 'marker' is not known; known are form, maker, ")]
    [InlineData("""{"colums": {}}""", "map.json: 'colums' is not known; known are columns, constants, words.")]
    [InlineData("""["form"]""", "map.json: this is no mapping; write ")]
    [InlineData("""{"columns": {"form": 3}}""", "map.json: this is no mapping; write ")]
    public void A_wrong_mapping_is_named(string json, string sentence) => Assert.StartsWith(sentence, Assert.Throws<InscriptionLabException>(() => Mapping(json)).Message, StringComparison.Ordinal);

    [Fact]
    public void A_column_that_is_not_there_and_a_word_that_is_not_known_are_named_with_their_place()
    {
        var mapping = Mapping("""{"columns": {"form": "Text", "maker": "Firm", "status": "Kind"}}""");

        Assert.StartsWith("x.csv, row 1: the column Kind is missing; found 'Text', 'Firm'.", Assert.Throws<InscriptionLabException>(() => new TableImport(mapping).Read("x.csv", "Text,Firm\nA,B\n"u8)).Message, StringComparison.Ordinal);
        Assert.StartsWith("x.csv, row 3, field status: 'yes' is not one of attested,", Assert.Throws<InscriptionLabException>(() => new TableImport(mapping).Read("x.csv", "Text,Firm,Kind\nA,B,attested\nA,B,yes\n"u8)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Linked_art_gives_marks_of_objects_and_names_of_houses()
    {
        var rows = new LinkedArtImport("attested").Read("set.json", """
            {"items": [
              {"id": "https://example.org/object/1", "type": "HumanMadeObject", "_label": "Telescope",
               "produced_by": {"type": "Production", "carried_out_by": [{"type": "Group", "_label": "Tolliver"}], "timespan": {"begin_of_the_begin": "1790-01-01T00:00:00Z", "end_of_the_end": "1800-12-31T00:00:00Z"}},
               "referred_to_by": [{"type": "LinguisticObject", "classified_as": [{"id": "http://vocab.getty.edu/aat/300028705"}], "content": "Tolliver\nLONDON"}, {"type": "LinguisticObject", "content": "A description"}]},
              {"id": "https://example.org/group/2", "type": "Group", "_label": "Fennimarch", "identified_by": [{"type": "Name", "content": "Fennimarch & Sons"}, {"type": "Identifier", "content": "12"}],
               "formed_by": {"timespan": {"begin_of_the_begin": "1790"}}, "residence": [{"_label": "14, Cawdry Lane, Marlhaven"}]},
              {"type": "HumanMadeObject", "_label": "No maker", "carries": [{"content": "xyz"}]}
            ]}
            """u8);

        Assert.Equal(
            [
                new ReferenceForm("Tolliver LONDON", "Tolliver", AttestationStatus.Attested) { From = 1790, To = 1800, Source = "https://example.org/object/1" },
                new ReferenceForm("Fennimarch & Sons", "Fennimarch", AttestationStatus.Attested) { From = 1790, Address = "14, Cawdry Lane, Marlhaven", Source = "https://example.org/group/2" },
            ],
            rows.ToArray());
    }

    [Theory]
    [InlineData("{")]
    [InlineData("[3, null, \"a\"]")]
    [InlineData("{\"items\": 3}")]
    [InlineData("{}")]
    public void Anything_else_is_no_linked_art(string json) => Assert.StartsWith("x.json:", Assert.Throws<InscriptionLabException>(() => new LinkedArtImport("attested").Read("x.json", Encoding.UTF8.GetBytes(json))).Message, StringComparison.Ordinal);

    [Fact]
    public void Typed_words_are_found_as_if_they_had_been_read()
    {
        var search = new FormSearch(new Comparer(Fabricated.List("Tolliver", "Fennimarch", "Tolliver & Son")));

        Assert.Equal("Tolliver", search.Find("tollivor")[0].Form.Form);
        Assert.Equal("Tolliver & Son", search.Find("Tol?iver & Son")[0].Form.Form);
        Assert.Empty(search.Find("zzz"));
    }
}
