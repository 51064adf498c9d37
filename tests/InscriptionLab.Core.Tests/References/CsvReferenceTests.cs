using System;
using System.Linq;
using System.Security.Cryptography;
using System.Text;
using CsCheck;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.References;
using Xunit;

namespace InscriptionLab.Core.Tests.References;

public sealed class CsvReferenceTests
{
    private const string Header = "form,maker,status";

    [Fact]
    public void Three_columns_are_enough()
    {
        var loaded = ListText.Csv(Header, "Tolliver,Tolliver,attested", "Tollivar,Tolliver,period-copy", "TOLIVER,Tolliver,reproduction");

        Assert.Equal(["Tolliver", "Tollivar", "TOLIVER"], loaded.Forms());
        Assert.Equal([AttestationStatus.Attested, AttestationStatus.PeriodCopy, AttestationStatus.Reproduction], loaded.List.Forms.Select(form => form.Status));
        Assert.Empty(loaded.Warnings);
        Assert.Null(loaded.List.Forms[0].From);
    }

    [Fact]
    public void Every_column_is_read()
    {
        var loaded = ListText.Csv(
            "Form,MAKER,status,style,address,from,to,source,note,signature position,Signature-Direction,layout,certainty,partners,successor_of,wording,letter height mm,letter_spacing",
            "Merrowby & Son,Merrowby,attested,italic,\"9, Gannet Stairs\",1790,1812,Directory,\"two \"\"eyes\"\"\",first draw,toward-eyepiece,name-over-place,probable,A. and B. Merrowby,Oskelby,Day or Night,2.4,0.85");

        var form = Assert.Single(loaded.List.Forms);
        var expected = new ReferenceForm("Merrowby & Son", "Merrowby", AttestationStatus.Attested)
        {
            Style = "italic",
            Address = "9, Gannet Stairs",
            From = 1790,
            To = 1812,
            Source = "Directory",
            Note = "two \"eyes\"",
            SignaturePosition = "first draw",
            SignatureDirection = SignatureDirection.TowardEyepiece,
            Layout = FormLayout.NameOverPlace,
            Certainty = FormCertainty.Probable,
            Partners = "A. and B. Merrowby",
            SuccessorOf = "Oskelby",
            Wording = "Day or Night",
            LetterHeight = Length.FromMillimetres(2.4),
            LetterSpacing = 0.85,
        };
        Assert.Equal(expected, form);
        Assert.Empty(loaded.Warnings);
    }

    [Fact]
    public void A_wrong_word_names_file_row_and_column() => Assert.Equal(
        "reference.csv, row 7, column status: 'atested' is not one of attested, period-copy, reproduction.",
        ListText.CsvError(Header, "A,A,attested", "B,B,attested", string.Empty, "C,C,attested", "D,D,attested", "E,E,atested"));

    [Fact]
    public void Several_errors_come_together()
    {
        var lines = ListText.CsvError("form,maker,status,from,to", ",M,attested,,", "A,,attested,1790s,", "B,M,attested,1800,1790", "C,M,,,").Split('\n');

        Assert.Equal(
            [
                "reference.csv has 5 errors:",
                "  reference.csv, row 2, column form: is empty; give the spelling exactly as it is cut.",
                "  reference.csv, row 3, column maker: is empty; give the name of the house that the form names.",
                "  reference.csv, row 3, column from: '1790s' is not a year from 1500 to 2100.",
                "  reference.csv, row 4, column to: 1790 is before the first year, 1800.",
                "  reference.csv, row 5, column status: is empty; give one of attested, period-copy, reproduction.",
            ],
            lines);
    }

    [Theory]
    [InlineData("letter_height_mm", "\"2,4\"", "2,4", "a number from 0.3 to 40, written with a point and without a unit, such as 2.4 (millimetres)")]
    [InlineData("letter_height_mm", "2.4 mm", "2.4 mm", "a number from 0.3 to 40, written with a point and without a unit, such as 2.4 (millimetres)")]
    [InlineData("letter_height_mm", "0", "0", "a number from 0.3 to 40, written with a point and without a unit, such as 2.4 (millimetres)")]
    [InlineData("letter_height_mm", "240", "240", "a number from 0.3 to 40, written with a point and without a unit, such as 2.4 (millimetres)")]
    [InlineData("letter_spacing", "NaN", "NaN", "a number from 0.1 to 8, written with a point and without a unit, such as 0.85 (letter to letter over the height of a capital)")]
    [InlineData("letter_spacing", "85 %", "85 %", "a number from 0.1 to 8, written with a point and without a unit, such as 0.85 (letter to letter over the height of a capital)")]
    public void A_wrong_size_of_letters_is_named(string column, string written, string value, string sentence) => Assert.Equal(
        $"reference.csv, row 2, column {column}: '{value}' is not {sentence}.",
        ListText.CsvError($"{Header},{column}", $"A,A,attested,{written}"));

    [Fact]
    public void At_most_twenty_errors_are_listed()
    {
        var lines = ListText.CsvError([Header, .. Enumerable.Range(0, 23).Select(_ => "A,A,wrong")]).Split('\n');

        Assert.Equal("reference.csv has 23 errors; the first 20 are:", lines[0]);
        Assert.Equal(21, lines.Length);
    }

    [Fact]
    public void A_missing_column_is_reported_alone_with_what_was_found() => Assert.Equal(
        "reference.csv, row 1: the column status is missing; found 'form', 'maker', 'state'.",
        ListText.CsvError("form,maker,state", "A,A,attested", "B,B,attested"));

    [Fact]
    public void A_column_named_twice_is_an_error() =>
        Assert.Equal("reference.csv, row 1: names the column form twice.", ListText.CsvError("form,maker,status,Form", "A,A,attested,B"));

    [Fact]
    public void A_header_alone_is_an_empty_list() => Assert.Empty(ListText.Csv(Header).List.Forms);

    [Fact]
    public void A_file_without_a_byte_is_no_list() =>
        Assert.Equal("reference.csv: is empty; the first row must name the columns form, maker, status.", ListText.CsvError(string.Empty));

    [Fact]
    public void A_semicolon_delimits_where_the_header_has_semicolons() =>
        Assert.Equal(["Oskelby, Marlhaven"], ListText.Csv("form;maker;status", "Oskelby, Marlhaven;Oskelby;attested").Forms());

    [Fact]
    public void A_comma_too_many_is_named() => Assert.Equal(
        "reference.csv, row 2: has 4 fields, but the header names 3; put quotation marks round a field that holds a ','.",
        ListText.CsvError(Header, "Oskelby, Marlhaven,Oskelby,attested"));

    [Fact]
    public void A_quotation_mark_that_never_closes_is_named() => Assert.Equal(
        "reference.csv, row 3: a quotation mark is opened in this row and never closed.",
        ListText.CsvError(Header, "A,A,attested", "\"B,B,attested", "C,C,attested"));

    [Fact]
    public void Text_behind_a_closing_quotation_mark_is_named() =>
        Assert.StartsWith("reference.csv, row 2: text follows a closing quotation mark", ListText.CsvError(Header, "\"A\"x,A,attested"), StringComparison.Ordinal);

    [Fact]
    public void A_mark_of_inches_needs_no_quoting() =>
        Assert.Equal("2\" objective", ListText.Csv("form,maker,status,note", "A,A,attested,2\" objective").List.Forms[0].Note);

    [Fact]
    public void A_byte_order_mark_changes_nothing_but_the_hash()
    {
        byte[] plain = Encoding.UTF8.GetBytes("form,maker,status\nÀ Paris,Dumarchais,attested\n");
        byte[] marked = [.. Encoding.UTF8.Preamble, .. plain];
        var reader = new ReferenceListReader();

        var first = reader.Read("a.csv", plain).List;
        var second = reader.Read("a.csv", marked).List;

        Assert.Equal(first.Forms.ToArray(), second.Forms.ToArray());
        Assert.Equal("À Paris", second.Forms[0].Form);
        Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(marked)), second.Sha256);
    }

    [Fact]
    public void Other_encodings_are_refused_with_the_line()
    {
        byte[] latin1 = [.. Encoding.UTF8.GetBytes("form,maker,status\nA,A,attested\n"), .. Encoding.Latin1.GetBytes("À Paris,D,attested")];
        var reader = new ReferenceListReader();

        Assert.Equal(
            "a.csv: is not UTF-8 at line 3; save it as UTF-8 (in a spreadsheet: \"CSV UTF-8\").",
            Assert.Throws<InscriptionLabException>(() => reader.Read("a.csv", latin1)).Message);
        Assert.StartsWith(
            "a.csv: is UTF-16",
            Assert.Throws<InscriptionLabException>(() => reader.Read("a.csv", [.. Encoding.Unicode.Preamble, .. Encoding.Unicode.GetBytes("form")])).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_row_said_twice_is_kept_and_warned_of()
    {
        var loaded = ListText.Csv(Header, "A,A,attested", "A,A,reproduction", "A,A,attested");

        Assert.Equal(3, loaded.List.Forms.Length);
        Assert.Equal(["reference.csv, row 4: same form, maker and status as row 2; both are kept."], loaded.Warnings.ToArray());
    }

    [Fact]
    public void An_unknown_column_is_warned_of() =>
        Assert.StartsWith("reference.csv: the column 'adress' is not known and is not used", Assert.Single(ListText.Csv("form,maker,status,adress", "A,A,attested,x").Warnings), StringComparison.Ordinal);

    [Theory]
    [InlineData("ſtannick")]
    [InlineData("Wᵐ Hathersedge")]
    [InlineData("N° 12 ½")]
    [InlineData("ﬁnimarch")]
    [InlineData(" Tolliver ")]
    [InlineData("TOLLIVER  &  CO.")]
    public void A_form_is_kept_letter_for_letter(string form) => Assert.Equal([form], ListText.Csv(Header, $"\"{form}\",M,attested").Forms());

    [Fact]
    public void A_letter_and_its_mark_become_one() => Assert.Equal(["\u00C0 Paris"], ListText.Csv(Header, "A\u0300 Paris,D,attested").Forms());

    [Fact]
    public void A_form_of_two_lines_is_refused() => Assert.Equal(
        "reference.csv, row 2, column form: holds a line break or another control character; write a mark of several lines as one line with spaces.",
        ListText.CsvError(Header, "\"Harwick &\nPenhale\",Harwick,attested"));

    [Fact]
    public void No_text_makes_the_reader_fail_otherwise_than_with_its_sentence() =>
        Gen.OneOf(Gen.String, Gen.String[Gen.Char["form,maker;status\"\n\r attested{}[]:"], 0, 80]).Select(Gen.Bool, (text, isJson) => (text, isJson)).Sample(
            sample =>
            {
                try
                {
                    return new ReferenceListReader().Read(sample.isJson ? "x.json" : "x.csv", Encoding.UTF8.GetBytes(sample.text)).List.Forms.Length >= 0;
                }
                catch (InscriptionLabException refused)
                {
                    return refused.Message.StartsWith(sample.isJson ? "x.json" : "x.csv", StringComparison.Ordinal);
                }
            },
            iter: 2000);
}
