using System;
using System.Collections.Generic;
using System.IO;
using InscriptionLab.Outcomes;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace InscriptionLab.Cataloguing;

/// <summary>Where a catalogue is: a file, or a PostgreSQL database.</summary>
public sealed record CatalogueAddress
{
    private CatalogueAddress(StoreKind kind, string connection, string name)
    {
        Kind = kind;
        Connection = connection;
        Name = name;
    }

    /// <summary>Gets the kind of database.</summary>
    public StoreKind Kind { get; }

    /// <summary>Gets the file, or the database without its password, for messages.</summary>
    public string Name { get; }

    /// <summary>Gets the connection string.</summary>
    internal string Connection { get; }

    /// <summary>Reads an address as the user writes it: a file name, or a PostgreSQL connection string such as <c>Host=localhost;Database=catalogue;Username=me</c>.</summary>
    /// <exception cref="InscriptionLabException">The text is neither.</exception>
    public static CatalogueAddress Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (string.IsNullOrWhiteSpace(text))
        {
            throw new InscriptionLabException("The catalogue has no name: give a file, for example --catalogue tubes.db.");
        }

        return text.Contains("Host=", StringComparison.OrdinalIgnoreCase) ? OfServer(text) : OfFile(text);
    }

    private static CatalogueAddress OfFile(string file)
    {
        if (Directory.Exists(file))
        {
            throw new InscriptionLabException($"{file}: this is a folder; name a file for the catalogue, for example {Path.Combine(file, "tubes.db")}.");
        }

        var connection = new SqliteConnectionStringBuilder { DataSource = Path.GetFullPath(file), ForeignKeys = true, DefaultTimeout = 30 };
        return new CatalogueAddress(StoreKind.Sqlite, connection.ToString(), file);
    }

    private static CatalogueAddress OfServer(string text)
    {
        try
        {
            var connection = new NpgsqlConnectionStringBuilder(text);
            return new CatalogueAddress(StoreKind.PostgreSql, connection.ToString(), $"{connection.Host}:{connection.Port}/{connection.Database}");
        }
        catch (Exception problem) when (problem is ArgumentException or KeyNotFoundException or FormatException or InvalidOperationException)
        {
            throw new InscriptionLabException("The connection string is not understood: write it like Host=localhost;Database=catalogue;Username=me.", problem);
        }
    }
}
