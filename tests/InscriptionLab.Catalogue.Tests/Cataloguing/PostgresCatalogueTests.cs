using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using InscriptionLab.Catalogue.Tests.Services;
using InscriptionLab.Cataloguing;
using InscriptionLab.Cataloguing.Rows;
using InscriptionLab.Likeness;
using InscriptionLab.Outcomes;
using Microsoft.EntityFrameworkCore;
using Xunit;
using Cat = InscriptionLab.Cataloguing.Catalogue;

namespace InscriptionLab.Catalogue.Tests.Cataloguing;

/// <summary>The catalogue on a real PostgreSQL server.</summary>
[Collection(PostgresTests.Name)]
public sealed class PostgresCatalogueTests(PostgresServer server) : CatalogueRules
{
    /// <summary>Tables of the catalogue beside its list of steps.</summary>
    private const int Tables = 12;

    internal override string NewAddress() => server.NewDatabase();

    [Fact]
    public void A_new_schema_step_copies_the_tables_first()
    {
        var address = NewAddress();
        Cat.Open(address, TimeProvider.System).Intake.Add(Entries.Of("a.jpg", "Brockwell"), "tester");
        var steps = SchemaStep.All.Add(new SchemaStep(SchemaStep.All.Length + 1, "next.sql", "ALTER TABLE objects ADD COLUMN place TEXT NULL;"));

        var copy = new SchemaKeeper(CatalogueAddress.Parse(address), steps, TimeProvider.System).BringUpToDate();

        using var context = new CatalogueContext(CatalogueAddress.Parse(address));
        var schema = copy!.Split(' ')[^1];
        Assert.Equal(
            1 + Tables,
            context.Database.SqlQuery<int>($"SELECT count(*)::int AS \"Value\" FROM information_schema.tables WHERE table_schema = {schema}").AsEnumerable().Single());
        Assert.StartsWith($"before_step_{SchemaStep.All.Length + 1}_", schema, StringComparison.Ordinal);
        Assert.Contains("place", ColumnsOf(context, "objects"));
    }

    [Fact]
    public void Pictures_and_records_lie_outside_the_rows_that_are_read_for_likeness()
    {
        const int Marks = 64;
        var address = NewAddress();
        var catalogue = Cat.Open(address, TimeProvider.System);
        catalogue.Intake.Add(Entries.Of("a.jpg", "Brockwell"), "tester");
        using var context = new CatalogueContext(CatalogueAddress.Parse(address));
        var random = new Random(7);
        var examination = context.Examinations.Single();
        for (var number = 0; number < Marks; number++)
        {
            var (embedding, picture) = (new byte[new MarkEmbedder(new MarkEmbedderOptions()).Dimensions], new byte[16_000]);
            random.NextBytes(embedding);
            random.NextBytes(picture);
            context.Lines.Add(new LineRow { ExaminationId = examination.Id, Position = number + 1, Text = "Brockwell", Folded = "brockwell", Letters = "[]", Mark = new MarkRow { Embedding = embedding, Boxes = "[]", Picture = picture } });
        }

        context.SaveChanges();

        Assert.Equal(Marks + 1, catalogue.Likeness.Load().Count);
        var rows = context.Database.SqlQuery<long>($"SELECT pg_relation_size('marks') AS \"Value\"").AsEnumerable().Single();
        var whole = context.Database.SqlQuery<long>($"SELECT pg_table_size('marks') AS \"Value\"").AsEnumerable().Single();
        Assert.InRange(rows, Marks * 512, Marks * 2048);
        Assert.True(whole > Marks * 16_000, "The pictures are kept.");
    }

    [Fact]
    public void A_catalogue_goes_from_file_to_server_and_back_without_loss()
    {
        using var scratch = new Scratch();
        var first = Cat.Open(scratch.At("first.db"), TimeProvider.System);
        first.Intake.Add(Entries.Of("a.jpg", "Br\u00F6ckwell\nLondon"), "tester");
        first.Intake.Add(Entries.Measured("b.jpg", "cell", 39.873215, 0.0712), "tester");
        first.Desk.Correct(1, 0, "Brockwell", "tester", "no dots");
        var server = Cat.Open(NewAddress(), TimeProvider.System);
        var back = Cat.Open(scratch.At("back.db"), TimeProvider.System);

        server.Archive.Import(new StringReader(Text(first)));
        back.Archive.Import(new StringReader(Text(server)));

        Assert.Equal(Text(first), Text(back));
    }

    [Fact]
    public void A_server_that_does_not_answer_is_named_in_one_sentence_without_its_password()
    {
        var problem = Assert.Throws<InscriptionLabException>(() => Cat.Open("Host=127.0.0.1;Port=1;Database=catalogue;Username=me;Password=secret;Timeout=2", TimeProvider.System));

        Assert.Contains("127.0.0.1:1/catalogue", problem.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("secret", problem.Message, StringComparison.Ordinal);
    }

    private protected override IEnumerable<string> ColumnsOf(CatalogueContext context, string table) =>
        [.. context.Database.SqlQuery<string>($"SELECT column_name AS \"Value\" FROM information_schema.columns WHERE table_schema = current_schema() AND table_name = {table}").AsEnumerable().Order(StringComparer.Ordinal)];

    private static string Text(Cat catalogue)
    {
        using var text = new StringWriter { NewLine = "\n" };
        catalogue.Archive.Export(text);
        return text.ToString();
    }
}
