using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text.Json.Nodes;
using InscriptionLab.Files;

namespace InscriptionLab.Exchange;

/// <summary>Packs a folder as a bag (BagIt, RFC 8493) whose payload is an RO-Crate 1.2: every file with its check sum, and a description of the whole that machines read.</summary>
internal static class BagExport
{
    private const string Payload = "data";
    private const string Metadata = "ro-crate-metadata.json";
    private const string Licence = "#licence";

    /// <summary>Version 1.2: the terms of 1.1 have no check sum, so that readers of JSON-LD would drop it.</summary>
    private const string Profile = "https://w3id.org/ro/crate/1.2";

    private static readonly string[] TagFiles = ["bag-info.txt", "bagit.txt", "manifest-sha256.txt"];

    /// <summary>Packs.</summary>
    /// <param name="bag">Folder of the bag; the payload lies in its folder <c>data</c> already.</param>
    /// <param name="name">Name of the whole.</param>
    /// <param name="description">What it is.</param>
    /// <param name="licence">Licence as the user gives it; null where none was given.</param>
    /// <param name="made">When it was packed.</param>
    internal static void Pack(string bag, string name, string description, string? licence, DateTimeOffset made)
    {
        var data = Path.Combine(bag, Payload);
        var files = Files(data).Where(file => file != Metadata).ToList();
        WholeFile.Write(Path.Combine(data, Metadata), ExchangeText.Json(Crate(data, files, name, description, licence, made)));
        var payload = Files(data).ToList();
        var bytes = payload.Sum(file => new FileInfo(Path.Combine(data, file)).Length);
        Write(bag, "bagit.txt", "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n");
        Write(bag, "bag-info.txt", string.Create(CultureInfo.InvariantCulture, $"Bagging-Date: {made.UtcDateTime:yyyy-MM-dd}\nPayload-Oxum: {bytes}.{payload.Count}\nExternal-Description: {description.ReplaceLineEndings(" ")}\n"));
        Write(bag, "manifest-sha256.txt", string.Concat(payload.Select(file => Sum(bag, $"{Payload}/{file}"))));
        Write(bag, "tagmanifest-sha256.txt", string.Concat(TagFiles.Select(file => Sum(bag, file))));
    }

    private static JsonObject Crate(string data, List<string> files, string name, string description, string? licence, DateTimeOffset made)
    {
        var graph = new JsonArray(
            new JsonObject
            {
                ["@id"] = Metadata,
                ["@type"] = "CreativeWork",
                ["about"] = Reference("./"),
                ["conformsTo"] = Reference(Profile),
            },
            new JsonObject
            {
                ["@id"] = "./",
                ["@type"] = "Dataset",
                ["name"] = name,
                ["description"] = description,
                ["datePublished"] = ExchangeText.Day(made),
                ["license"] = Reference(Licence),
                ["hasPart"] = new JsonArray([.. files.Select(file => Reference(Address(file)))]),
            },
            new JsonObject
            {
                ["@id"] = Licence,
                ["@type"] = "CreativeWork",
                ["name"] = licence ?? "not stated",
                ["description"] = licence is null ? "The owner of the photographs has not been asked yet; do not hand this on before." : "As the person who packed this states it.",
            });
        foreach (var file in files)
        {
            graph.Add(new JsonObject
            {
                ["@id"] = Address(file),
                ["@type"] = "File",
                ["name"] = Path.GetFileName(file),
                ["encodingFormat"] = MediaType(file),
                ["contentSize"] = new FileInfo(Path.Combine(data, file)).Length.ToString(CultureInfo.InvariantCulture),
                ["sha256"] = FileHash.Of(Path.Combine(data, file)),
            });
        }

        return new JsonObject { ["@context"] = Profile + "/context", ["@graph"] = graph };
    }

    private static JsonObject Reference(string id) => new() { ["@id"] = id };

    /// <summary>Gives the media type (IANA; that of Parquet since 2024) of the files that are packed here.</summary>
    private static string MediaType(string file) => Path.GetExtension(file) switch
    {
        ".csv" => "text/csv",
        ".html" => "text/html",
        ".json" => "application/json",
        ".md" => "text/markdown",
        ".parquet" => "application/vnd.apache.parquet",
        ".png" => "image/png",
        ".xml" => "application/xml",
        _ => "application/octet-stream",
    };

    private static string Address(string file) => string.Join('/', file.Split('/').Select(Uri.EscapeDataString));

    private static IEnumerable<string> Files(string folder) => Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
        .Select(file => Path.GetRelativePath(folder, file).Replace('\\', '/'))
        .Order(StringComparer.Ordinal);

    private static string Sum(string bag, string file) => $"{FileHash.Of(Path.Combine(bag, file))}  {file.Replace("%", "%25", StringComparison.Ordinal)}\n";

    private static void Write(string bag, string file, string text) => WholeFile.Write(Path.Combine(bag, file), text);
}
