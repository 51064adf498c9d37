using System.Collections.Immutable;
using System.Globalization;
using System.IO;
using System.Linq;
using CsvHelper;

namespace InscriptionLab.Evidence;

/// <summary>The tables of evidence that the program carries; each row names its source.</summary>
public static class EvidenceTables
{
    /// <summary>Gets words that tell of a first year.</summary>
    public static ImmutableArray<DatedWording> Wordings { get; } = Read("dated-wordings.csv", row => new DatedWording(
        row.GetString("words"),
        row.GetString("where") == "line",
        int.Parse(row.GetString("not_before"), CultureInfo.InvariantCulture),
        row.GetString("basis"),
        row.GetString("source"),
        row.GetString("note")));

    /// <summary>Gets how probable observations are under the three propositions.</summary>
    public static ImmutableArray<FeatureWeight> Weights { get; } = Read("feature-weights.csv", row => new FeatureWeight(
        row.GetString("feature"),
        row.GetString("observation"),
        Number(row, "house"),
        Number(row, "period"),
        Number(row, "modern"),
        row.GetString("basis"),
        row.GetString("source"),
        row.GetString("would_change")));

    /// <summary>Gets the years of lettering styles.</summary>
    public static ImmutableArray<DatedStyle> Styles { get; } = Read("lettering-years.csv", row => new DatedStyle(
        row.GetString("style"),
        new DateInterval(Year(row, "from"), Year(row, "to")),
        Number(row, "coverage"),
        row.GetString("basis"),
        row.GetString("source")));

    /// <summary>Gives the row that weighs an observation.</summary>
    internal static FeatureWeight Weight(string feature, string observation) => Weights.Single(weight => weight.Feature == feature && weight.Observation == observation);

    private static int? Year(CsvReader row, string column) => row.GetString(column) is { Length: > 0 } year ? int.Parse(year, CultureInfo.InvariantCulture) : null;

    private static double Number(CsvReader row, string column) => double.Parse(row.GetString(column), CultureInfo.InvariantCulture);

    private static ImmutableArray<T> Read<T>(string name, System.Func<CsvReader, T> row)
    {
        using var stream = typeof(EvidenceTables).Assembly.GetManifestResourceStream(typeof(EvidenceTables), name)
            ?? throw new FileNotFoundException("The program was built without one of its tables.", name);
        using var reader = CsvReader.Create(stream, CsvReaderOptions.Default with { Separator = ',' });
        var rows = ImmutableArray.CreateBuilder<T>();
        while (reader.Read())
        {
            rows.Add(row(reader));
        }

        return rows.ToImmutable();
    }
}
