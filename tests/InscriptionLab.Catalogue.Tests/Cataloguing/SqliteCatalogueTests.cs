using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using InscriptionLab.Cataloguing;
using InscriptionLab.Outcomes;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Xunit;
using Cat = InscriptionLab.Cataloguing.Catalogue;

namespace InscriptionLab.Catalogue.Tests.Cataloguing;

/// <summary>The catalogue in a file.</summary>
public sealed class SqliteCatalogueTests : CatalogueRules, IDisposable
{
    private readonly Scratch _scratch = new();
    private int _count;

    public void Dispose() => _scratch.Dispose();

    internal override string NewAddress() => _scratch.At(string.Create(CultureInfo.InvariantCulture, $"{++_count}.db"));

    [Fact]
    public void The_file_keeps_a_write_ahead_log()
    {
        var file = NewAddress();
        Cat.Open(file, TimeProvider.System);

        using var connection = new SqliteConnection($"Data Source={file}");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "PRAGMA journal_mode";
        Assert.Equal("wal", command.ExecuteScalar());
    }

    [Fact]
    public void A_new_schema_step_copies_the_file_first_and_keeps_what_is_there()
    {
        var file = NewAddress();
        Cat.Open(file, TimeProvider.System).Intake.Add(Entries.Of("a.jpg", "Brockwell"), "tester");

        var copy = Step(file, "ALTER TABLE objects ADD COLUMN place TEXT NULL;").BringUpToDate();

        Assert.True(File.Exists(copy));
        Assert.Single(Cat.Open(copy!, TimeProvider.System).Search.Find(new SearchQuery()));
        using var connection = new SqliteConnection($"Data Source={file}");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT count(*) FROM objects WHERE place IS NULL";
        Assert.Equal(1L, command.ExecuteScalar());
    }

    [Fact]
    public void A_schema_step_that_fails_changes_nothing()
    {
        var file = NewAddress();
        Cat.Open(file, TimeProvider.System).Intake.Add(Entries.Of("a.jpg", "Brockwell"), "tester");

        Assert.Throws<InscriptionLabException>(() => Step(file, "ALTER TABLE objects ADD COLUMN place TEXT NULL; THIS IS NO SQL;").BringUpToDate());

        var catalogue = Cat.Open(file, TimeProvider.System);
        Assert.Single(catalogue.Search.Find(new SearchQuery()));
        using var context = catalogue.NewContext();
        Assert.DoesNotContain("place", ColumnsOf(context, "objects"));
    }

    [Fact]
    public void A_catalogue_of_a_newer_program_is_refused_in_one_sentence()
    {
        var file = NewAddress();
        Cat.Open(file, TimeProvider.System);
        Step(file, "ALTER TABLE objects ADD COLUMN place TEXT NULL;").BringUpToDate();

        var problem = Assert.Throws<InscriptionLabException>(() => Cat.Open(file, TimeProvider.System));

        Assert.Contains("newer", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_no_catalogue_is_refused_in_one_sentence()
    {
        var file = NewAddress();
        File.WriteAllText(file, "This is a letter and not a database. It is long enough to be looked at as one, though it has no header at all.");

        Assert.Contains("cannot be opened", Assert.Throws<InscriptionLabException>(() => Cat.Open(file, TimeProvider.System)).Message, StringComparison.Ordinal);
        Assert.Contains("folder", Assert.Throws<InscriptionLabException>(() => Cat.Open(_scratch.Folder, TimeProvider.System)).Message, StringComparison.Ordinal);
        Assert.Throws<InscriptionLabException>(() => Cat.Open(" ", TimeProvider.System));
    }

    private protected override IEnumerable<string> ColumnsOf(CatalogueContext context, string table) =>
        [.. context.Database.SqlQuery<string>($"SELECT name AS Value FROM pragma_table_info({table})").AsEnumerable().Order(StringComparer.Ordinal)];

    private static SchemaKeeper Step(string file, string sql) =>
        new(CatalogueAddress.Parse(file), SchemaStep.All.Add(new SchemaStep(SchemaStep.All.Length + 1, "next.sql", sql)), TimeProvider.System);
}
