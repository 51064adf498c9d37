using System;
using System.Collections.Immutable;
using System.Globalization;
using System.IO;
using System.Linq;
using InscriptionLab.Cataloguing;
using InscriptionLab.Imaging;

namespace InscriptionLab.Page.Tests;

/// <summary>A page with a catalogue of invented pieces.</summary>
public class OpenCatalogue : OpenPage
{
    private static readonly string[] Names = ["Kesselbrandt", "Pellowick", "Sallowby", "Drennavick", "Kesselbarndt"];
    private static readonly string[] Outcomes = ["agrees", "differs", "undecided"];

    /// <summary>Gets how many pieces.</summary>
    protected virtual int Pieces => 60;

    internal static Catalogue Filled(int pieces)
    {
        var catalogue = Catalogue.Open(Path.Combine(Directory.CreateTempSubdirectory("lab-catalogue-").FullName, "pieces.db"), TimeProvider.System);
        for (var i = 0; i < pieces; i++)
        {
            catalogue.Intake.Add(Entry(i), "A. Harbourer");
        }

        return catalogue;
    }

    /// <summary>Gets the catalogue's name.</summary>
    internal string Name { get; private set; } = string.Empty;

    internal override Catalogue? Shelf()
    {
        var catalogue = Filled(Pieces);
        Name = catalogue.Address.Name;
        return catalogue;
    }

    private static CatalogueEntry Entry(int i)
    {
        var name = Names[i % Names.Length];
        var letters = string.Join(',', name.Select(letter => $$"""{"char":"{{letter}}","probability":0.98,"alternatives":[],"quad":[[0,0],[9,0],[9,9],[0,9]]}"""));
        var record = $$"""{"file":"tube-{{i}}.jpg","sha256":"","tube":null,"lines":[{"text":"{{name}}","letters":[{{letters}}]}],"finding":{"outcome":"{{Outcomes[i % Outcomes.Length]}}","nearest":[{"form":"{{Names[(i % 4)]}}","maker":"{{Names[i % 4]}}","status":"attested","differences":[]}],"reasons":["Every letter was compared."]},"warnings":[]}""";
        var pixels = new byte[96 * 32];
        for (var p = 0; p < pixels.Length; p++)
        {
            pixels[p] = (byte)((((p % 96) * (i + 3) / 7) + (p / 96 * 5)) % 200);
        }

        var sha256 = i.ToString("x64", CultureInfo.InvariantCulture);
        return new CatalogueEntry(
            EntryKind.Examination,
            $"piece {i}",
            new PhotoFacts($"tube-{i}.jpg", sha256, 100, 100, null),
            new EntryVersions("test", "none", "list", "none"),
            new DateTimeOffset(2025, 1 + (i % 12), 1 + (i % 28), 0, 0, 0, TimeSpan.Zero),
            record,
            [new MarkEntry(0, new GrayImage(96, 32, pixels), [])],
            ImmutableArray.Create(new MeasurementEntry("outer", 20 + (i % 40), 0.1, 2, "rule", "a statement")));
    }
}
