using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace InscriptionLab.Catalogue.Tests.Exchange;

/// <summary>
/// Walks through a bag as RFC 8493 describes it, written from its text and not from the exporter: the declaration (2.1.1), the payload manifest complete both
/// ways (2.1.3, 3), its sums, the tag manifest (2.2.1), the metadata with its count of bytes and files (2.2.2), and the encoding of names (2.1.3).
/// </summary>
internal static partial class BagWalk
{
    private const string Payload = "data/";
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Gives what is wrong; nothing where the bag is valid.</summary>
    internal static IReadOnlyList<string> Faults(string bag)
    {
        var faults = new List<string>();
        foreach (var tag in Directory.GetFiles(bag))
        {
            faults.AddRange(Encoding(tag));
        }

        if (faults.Count > 0)
        {
            return faults;
        }

        if (!File.Exists(Path.Combine(bag, "bagit.txt")) || !Declaration().IsMatch(File.ReadAllText(Path.Combine(bag, "bagit.txt"))))
        {
            faults.Add("no declaration");
        }

        var there = Directory.GetFiles(bag, "*", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(bag, file).Replace('\\', '/')).ToHashSet(StringComparer.Ordinal);
        faults.AddRange(Listed(bag, "manifest-sha256.txt", there.Where(file => file.StartsWith(Payload, StringComparison.Ordinal)), name => name.StartsWith(Payload, StringComparison.Ordinal)));
        faults.AddRange(Listed(bag, "tagmanifest-sha256.txt", there.Where(file => !file.StartsWith(Payload, StringComparison.Ordinal) && !file.StartsWith("tagmanifest-", StringComparison.Ordinal)), name => !name.StartsWith(Payload, StringComparison.Ordinal) && !name.StartsWith("tagmanifest-", StringComparison.Ordinal)));
        faults.AddRange(Metadata(bag, there));
        return faults;
    }

    private static IEnumerable<string> Encoding(string file)
    {
        var bytes = File.ReadAllBytes(file);
        if (bytes.AsSpan().StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]))
        {
            yield return $"{Path.GetFileName(file)} begins with a byte-order mark";
        }

        var isText = true;
        try
        {
            Strict.GetString(bytes);
        }
        catch (ArgumentException)
        {
            isText = false;
        }

        if (!isText)
        {
            yield return $"{Path.GetFileName(file)} is not UTF-8";
        }
    }

    private static IEnumerable<string> Listed(string bag, string manifest, IEnumerable<string> there, Func<string, bool> belongs)
    {
        if (!File.Exists(Path.Combine(bag, manifest)))
        {
            yield return $"no {manifest}";
            yield break;
        }

        var listed = new HashSet<string>(StringComparer.Ordinal);
        foreach (var line in File.ReadAllText(Path.Combine(bag, manifest)).Split('\n').SkipLast(1))
        {
            if (Entry().Match(line) is not { Success: true } entry)
            {
                yield return $"{manifest}: a line is no entry: {line}";
                continue;
            }

            // Only line feed, carriage return and the percent sign are written as percent codes.
            var name = entry.Groups["name"].Value.Replace("%0A", "\n", StringComparison.OrdinalIgnoreCase).Replace("%0D", "\r", StringComparison.OrdinalIgnoreCase).Replace("%25", "%", StringComparison.Ordinal);
            if (!belongs(name) || name.Split('/').Any(part => part is "" or "." or ".."))
            {
                yield return $"{manifest}: {name} has no business there";
            }
            else if (!listed.Add(name))
            {
                yield return $"{manifest}: {name} is listed twice";
            }
            else if (!File.Exists(Path.Combine(bag, name)))
            {
                yield return $"{manifest}: {name} is not there";
            }
            else if (!string.Equals(Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(Path.Combine(bag, name)))), entry.Groups["sum"].Value, StringComparison.OrdinalIgnoreCase))
            {
                yield return $"{manifest}: {name} has another sum";
            }
        }

        foreach (var missing in there.Where(file => !listed.Contains(file)))
        {
            yield return $"{manifest}: {missing} is not listed";
        }
    }

    private static IEnumerable<string> Metadata(string bag, HashSet<string> there)
    {
        var info = Path.Combine(bag, "bag-info.txt");
        if (!File.Exists(info))
        {
            yield break; // It may be left out.
        }

        var elements = new List<(string Label, string Value)>();
        foreach (var line in File.ReadAllLines(info))
        {
            if (line.Length > 0 && char.IsWhiteSpace(line[0]) && elements.Count > 0)
            {
                elements[^1] = (elements[^1].Label, $"{elements[^1].Value} {line.Trim()}");
            }
            else if (Element().Match(line) is { Success: true } element)
            {
                elements.Add((element.Groups["label"].Value, element.Groups["value"].Value));
            }
            else
            {
                yield return $"bag-info.txt: a line is no element: {line}";
            }
        }

        var payload = there.Where(file => file.StartsWith(Payload, StringComparison.Ordinal)).ToList();
        var counted = string.Create(CultureInfo.InvariantCulture, $"{payload.Sum(file => new FileInfo(Path.Combine(bag, file)).Length)}.{payload.Count}");
        if (elements.Where(element => element.Label.Equals("Payload-Oxum", StringComparison.OrdinalIgnoreCase)).Select(element => element.Value).ToList() is [var said, ..] and { Count: var times } && (said != counted || times > 1))
        {
            yield return $"bag-info.txt: Payload-Oxum says {said}, counted {counted}";
        }

        if (elements.FirstOrDefault(element => element.Label == "Bagging-Date") is { Value: { } date } && !DateOnly.TryParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _))
        {
            yield return $"bag-info.txt: {date} is no date";
        }
    }

    [GeneratedRegex(@"^BagIt-Version: 1\.0\r?\nTag-File-Character-Encoding: UTF-8\r?\n?$", RegexOptions.CultureInvariant)]
    private static partial Regex Declaration();

    [GeneratedRegex(@"^(?<sum>[0-9a-fA-F]{64})[ \t]+\*?(?<name>[^ \t].*)$", RegexOptions.CultureInvariant | RegexOptions.Singleline)]
    private static partial Regex Entry();

    [GeneratedRegex(@"^(?<label>[^\s:][^:]*):[ \t](?<value>.*)$", RegexOptions.CultureInvariant)]
    private static partial Regex Element();
}
