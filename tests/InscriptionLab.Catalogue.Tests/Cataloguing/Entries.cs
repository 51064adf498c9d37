using System;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using InscriptionLab.Cataloguing;
using InscriptionLab.Imaging;

namespace InscriptionLab.Catalogue.Tests.Cataloguing;

/// <summary>Makes entries of invented makers, as an examination would give them.</summary>
internal static class Entries
{
    internal static readonly EntryVersions Versions = new("InscriptionLab 0.1.0", "reader-1", "brackhaven.csv", new string('b', 64));

    private static readonly JsonSerializerOptions AsWritten = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    internal static string Hash(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    internal static CatalogueEntry Of(string file, string text, string outcome = "agrees", string maker = "Tobias Brockwell", string? key = null, DateTimeOffset? madeAt = null) => new(
        EntryKind.Examination,
        key ?? file,
        new PhotoFacts(file, Hash(file), 1600, 1200, 0xF0F0F0F0F0F0F0F0),
        Versions,
        madeAt ?? new DateTimeOffset(2026, 3, 1, 12, 0, 0, TimeSpan.Zero),
        Record(file, text, outcome, maker),
        [new MarkEntry(0, Picture(text), Boxes(text.Split('\n')[0]))],
        []);

    internal static CatalogueEntry Measured(string file, string key, double millimetres, double expanded) => new(
        EntryKind.Measurement,
        key,
        new PhotoFacts(file, Hash(file), 1200, 900, null),
        Versions,
        new DateTimeOffset(2026, 3, 2, 12, 0, 0, TimeSpan.Zero),
        JsonSerializer.Serialize(new { file, sha256 = Hash(file), warnings = Array.Empty<string>() }, AsWritten),
        [],
        [new MeasurementEntry("outer", millimetres, expanded, 2, "checkerboard", string.Create(CultureInfo.InvariantCulture, $"D = ({millimetres} ± {expanded}) mm"))]);

    /// <summary>A record as the program writes it; "e" always has the alternative "o" here.</summary>
    internal static string Record(string file, string text, string outcome, string maker) => JsonSerializer.Serialize(
        new
        {
            file,
            sha256 = Hash(file),
            tube = new { axis = new[] { new[] { 10.0, 600 }, [1500.0, 600] }, silhouettes = Array.Empty<double[][]>(), diameter_px = 412.25 },
            lines = text.Split('\n').Select((line, row) => new { text = line, letters = Letters(line, row) }),
            finding = new
            {
                outcome,
                nearest = new[] { new { form = maker, maker, status = "attested", differences = outcome == "differs" ? new[] { new { attested = "o", read = "e", probability = 0.97 } } : [] } },
                reasons = new[] { "Every letter was weighed." },
            },
            warnings = new[] { "The focal length was assumed." },
        },
        AsWritten);

    internal static GrayImage Picture(string text)
    {
        var random = new Random(text.Sum(letter => letter));
        const int Width = 160;
        const int Height = 48;
        var pixels = new byte[Width * Height];
        random.NextBytes(pixels);
        return new GrayImage(Width, Height, pixels);
    }

    private static object[] Letters(string line, int row) => [.. line
        .Select((letter, place) => (letter, place))
        .Where(item => item.letter != ' ')
        .Select(item => (object)new
        {
            @char = item.letter.ToString(),
            probability = item.letter == '?' ? 0.3 : 0.93,
            alternatives = item.letter == 'e' ? new[] { new { @char = "o", probability = 0.06 } } : [],
            quad = new[]
            {
                new[] { 100.0 + (item.place * 20), 500 + (row * 40) },
                [116.0 + (item.place * 20), 500 + (row * 40)],
                [116.0 + (item.place * 20), 530 + (row * 40)],
                [100.0 + (item.place * 20), 530 + (row * 40)],
            },
        })];

    private static ImmutableArray<ImmutableArray<double>> Boxes(string line) => [.. line
        .Select((letter, place) => (letter, place))
        .Where(item => item.letter != ' ')
        .Select(item => ImmutableArray.Create(item.place * 4.0, 4, (item.place * 4.0) + 4, 44))];
}
