using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Data.Common;
using System.Globalization;
using System.IO;
using System.Linq;
using InscriptionLab.Files;
using InscriptionLab.Outcomes;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace InscriptionLab.Cataloguing;

/// <summary>Brings a catalogue to the newest schema: each step whole or not at all, and a copy of what was there first.</summary>
/// <param name="address">The catalogue.</param>
/// <param name="steps">Every step in order.</param>
/// <param name="clock">The clock.</param>
internal sealed class SchemaKeeper(CatalogueAddress address, ImmutableArray<SchemaStep> steps, TimeProvider clock)
{
    /// <summary>The server-wide number under which two programs take turns to change a PostgreSQL schema; any fixed number would do.</summary>
    private const long TurnNumber = 4_210_226_817;

    /// <summary>Applies the steps that are missing.</summary>
    /// <returns>Where the copy of the catalogue as it was lies, or null where nothing had to be copied.</returns>
    /// <exception cref="InscriptionLabException">The catalogue cannot be opened, belongs to a newer program or is something else.</exception>
    internal string? BringUpToDate()
    {
        try
        {
            using var connection = Open();
            var applied = Applied(connection, null);
            Check(applied);
            if (applied.Count == steps.Length)
            {
                return null;
            }

            var copy = applied.Count > 0 ? CopyOf(connection, applied.Count) : null;
            ApplyMissing(connection);
            return copy;
        }
        catch (Exception problem) when (problem is DbException or IOException or UnauthorizedAccessException)
        {
            throw new InscriptionLabException($"The catalogue {address.Name} cannot be opened ({problem.Message.TrimEnd('.')}): {(address.Kind == StoreKind.Sqlite ? "check the name, and that nothing else holds it" : "check the address, and that a PostgreSQL server answers there")}.", problem);
        }
    }

    private DbConnection Open()
    {
        DbConnection connection = address.Kind == StoreKind.Sqlite ? new SqliteConnection(address.Connection) : new NpgsqlConnection(address.Connection);
        connection.Open();
        if (address.Kind == StoreKind.Sqlite)
        {
            Execute(connection, null, "PRAGMA journal_mode = WAL");
        }

        return connection;
    }

    private void ApplyMissing(DbConnection connection)
    {
        using var transaction = connection.BeginTransaction();
        if (address.Kind == StoreKind.PostgreSql)
        {
            Execute(connection, transaction, string.Create(CultureInfo.InvariantCulture, $"SELECT pg_advisory_xact_lock({TurnNumber})"));
        }

        Execute(connection, transaction, "CREATE TABLE IF NOT EXISTS schema_steps (number INTEGER NOT NULL PRIMARY KEY, name TEXT NOT NULL, sha256 TEXT NOT NULL, applied_at TEXT NOT NULL)");
        foreach (var step in steps.Skip(Applied(connection, transaction).Count))
        {
            Execute(connection, transaction, step.For(address.Kind));
            using var note = Command(connection, transaction, "INSERT INTO schema_steps (number, name, sha256, applied_at) VALUES (@number, @name, @sha256, @at)");
            Add(note, "number", step.Number);
            Add(note, "name", step.Name);
            Add(note, "sha256", step.Sha256);
            Add(note, "at", clock.GetUtcNow().ToString("O", CultureInfo.InvariantCulture));
            note.ExecuteNonQuery();
        }

        transaction.Commit();
    }

    private List<(int Number, string Sha256)> Applied(DbConnection connection, DbTransaction? transaction)
    {
        var exists = address.Kind == StoreKind.Sqlite
            ? "SELECT count(*) FROM sqlite_master WHERE type = 'table' AND name = 'schema_steps'"
            : "SELECT count(*) FROM information_schema.tables WHERE table_schema = current_schema() AND table_name = 'schema_steps'";
        using var question = Command(connection, transaction, exists);
        var applied = new List<(int, string)>();
        if (Convert.ToInt64(question.ExecuteScalar(), CultureInfo.InvariantCulture) == 0)
        {
            return applied;
        }

        using var command = Command(connection, transaction, "SELECT number, sha256 FROM schema_steps ORDER BY number");
        using var reader = command.ExecuteReader();
        while (reader.Read())
        {
            applied.Add((reader.GetInt32(0), reader.GetString(1)));
        }

        return applied;
    }

    private void Check(List<(int Number, string Sha256)> applied)
    {
        if (applied.Count > steps.Length)
        {
            throw new InscriptionLabException($"The catalogue {address.Name} was made by a newer InscriptionLab: use that one, or export it there and import it here.");
        }

        for (var index = 0; index < applied.Count; index++)
        {
            if (applied[index].Number != steps[index].Number || applied[index].Sha256 != steps[index].Sha256)
            {
                throw new InscriptionLabException($"The catalogue {address.Name} was made by another build of InscriptionLab: export it there and import it here.");
            }
        }
    }

    private string CopyOf(DbConnection connection, int appliedSteps) =>
        connection is SqliteConnection file ? CopyFile(file, appliedSteps) : CopyTables(connection, appliedSteps);

    private string CopyFile(SqliteConnection connection, int appliedSteps)
    {
        var stem = string.Create(CultureInfo.InvariantCulture, $"{connection.DataSource}.step-{appliedSteps}-{clock.GetUtcNow():yyyyMMddHHmmss}");
        var name = Enumerable.Range(1, int.MaxValue).Select(number => number == 1 ? stem + ".bak" : string.Create(CultureInfo.InvariantCulture, $"{stem}-{number}.bak")).First(free => !File.Exists(free));

        // Copied beside its place and moved there, so that a copy under its name is whole; one of before, made by a clock that went wrong, is not written over.
        var beside = string.Create(CultureInfo.InvariantCulture, $"{name}.{Environment.ProcessId}{WholeFile.Unfinished}");
        try
        {
            using (var copy = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = beside, Pooling = false }.ToString()))
            {
                copy.Open();
                connection.BackupDatabase(copy);
            }

            File.Move(beside, name);
        }
        finally
        {
            File.Delete(beside);
        }

        return name;
    }

    private string CopyTables(DbConnection connection, int appliedSteps)
    {
        var schema = string.Create(CultureInfo.InvariantCulture, $"before_step_{appliedSteps + 1}_{clock.GetUtcNow():yyyyMMddHHmmss}");
        using var question = Command(connection, null, "SELECT table_name FROM information_schema.tables WHERE table_schema = current_schema() AND table_type = 'BASE TABLE'");
        var tables = new List<string>();
        using (var reader = question.ExecuteReader())
        {
            while (reader.Read())
            {
                tables.Add(reader.GetString(0));
            }
        }

        using var transaction = connection.BeginTransaction();
        Execute(connection, transaction, $"CREATE SCHEMA \"{schema}\"");
        foreach (var table in tables)
        {
            Execute(connection, transaction, $"CREATE TABLE \"{schema}\".\"{table}\" AS TABLE \"{table}\"");
        }

        transaction.Commit();
        return $"{address.Name}, schema {schema}";
    }

    private static void Execute(DbConnection connection, DbTransaction? transaction, string sql)
    {
        using var command = Command(connection, transaction, sql);
        command.ExecuteNonQuery();
    }

    private static DbCommand Command(DbConnection connection, DbTransaction? transaction, string sql)
    {
        var command = connection.CreateCommand();
        command.Transaction = transaction;
#pragma warning disable CA2100 // The texts come from this program; names of tables come from the database's own list and are quoted.
        command.CommandText = sql;
#pragma warning restore CA2100
        return command;
    }

    private static void Add(DbCommand command, string name, object value)
    {
        var parameter = command.CreateParameter();
        parameter.ParameterName = name;
        parameter.Value = value;
        command.Parameters.Add(parameter);
    }
}
