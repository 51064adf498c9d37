using System;
using System.IO;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Cataloguing;

/// <summary>A catalogue, open and at the newest schema. Each piece of work takes its own connection, so one catalogue serves several threads.</summary>
public sealed class Catalogue
{
    private Catalogue(CatalogueAddress address, TimeProvider clock, string? copyMade)
    {
        Address = address;
        CopyMade = copyMade;
        Intake = new Intake(NewContext, clock);
        Desk = new Desk(NewContext, clock);
        Search = new Search(NewContext);
        Health = new Health(NewContext, address);
        Archive = new Archive(NewContext);
        Likeness = new LikenessSource(NewContext);
    }

    /// <summary>Gets where the catalogue is.</summary>
    public CatalogueAddress Address { get; }

    /// <summary>Gets where the catalogue as it was before its schema was brought up to date lies; null where nothing had to be done.</summary>
    public string? CopyMade { get; }

    /// <summary>Gets what adds.</summary>
    public Intake Intake { get; }

    /// <summary>Gets what a user changes: corrections, descriptions, trash, and the way back.</summary>
    public Desk Desk { get; }

    /// <summary>Gets what finds.</summary>
    public Search Search { get; }

    /// <summary>Gets what checks.</summary>
    public Health Health { get; }

    /// <summary>Gets what exports and imports the whole.</summary>
    public Archive Archive { get; }

    /// <summary>Gets what hands out the embeddings of marks.</summary>
    public LikenessSource Likeness { get; }

    /// <summary>Opens a catalogue; a file that is not there is made.</summary>
    /// <param name="address">A file, or a PostgreSQL connection string.</param>
    /// <param name="clock">The clock.</param>
    /// <exception cref="InscriptionLabException">The catalogue cannot be opened.</exception>
    public static Catalogue Open(string address, TimeProvider clock)
    {
        ArgumentNullException.ThrowIfNull(clock);
        var parsed = CatalogueAddress.Parse(address);
        return new Catalogue(parsed, clock, new SchemaKeeper(parsed, SchemaStep.All, clock).BringUpToDate());
    }

    /// <summary>Opens a catalogue that is there already, to look into it.</summary>
    /// <param name="address">A file, or a PostgreSQL connection string.</param>
    /// <param name="clock">The clock.</param>
    /// <exception cref="InscriptionLabException">There is no such file, or the catalogue cannot be opened.</exception>
    public static Catalogue OpenExisting(string address, TimeProvider clock)
    {
        var parsed = CatalogueAddress.Parse(address);
        return parsed.Kind != StoreKind.Sqlite || File.Exists(parsed.Name)
            ? Open(address, clock)
            : throw new InscriptionLabException($"{parsed.Name}: there is no such catalogue; name one with --catalogue, or make it with ./lab examine PHOTO --catalogue {parsed.Name}.");
    }

    /// <summary>Gives a context for one piece of work.</summary>
    internal CatalogueContext NewContext() => new(Address);
}
