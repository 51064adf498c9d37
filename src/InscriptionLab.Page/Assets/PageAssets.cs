using System;
using System.Collections.Frozen;
using System.Collections.Generic;
using System.IO;
using System.Security.Cryptography;

namespace InscriptionLab.Page.Assets;

/// <summary>The files of the page. They lie inside the program; a path that is not in the list leads nowhere.</summary>
internal sealed class PageAssets
{
    private const string Prefix = "page:";

    private readonly FrozenDictionary<string, PageAsset> _files = Load().ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>Gets the paths, each beginning with a slash.</summary>
    internal IEnumerable<string> Paths => _files.Keys;

    internal PageAsset? Find(string path) => _files.GetValueOrDefault(path == "/" ? "/index.html" : path);

    private static Dictionary<string, PageAsset> Load()
    {
        var files = new Dictionary<string, PageAsset>(StringComparer.Ordinal);
        var assembly = typeof(PageAssets).Assembly;
        foreach (var name in assembly.GetManifestResourceNames())
        {
            if (!name.StartsWith(Prefix, StringComparison.Ordinal))
            {
                continue;
            }

            using var stream = assembly.GetManifestResourceStream(name)!;
            var bytes = new byte[stream.Length];
            stream.ReadExactly(bytes);
            var path = "/" + name[Prefix.Length..].Replace('\\', '/');
            files[path] = new PageAsset(bytes, TypeOf(path), $"\"{Convert.ToHexStringLower(SHA256.HashData(bytes))}\"");
        }

        return files;
    }

    private static string TypeOf(string path) => Path.GetExtension(path) switch
    {
        ".html" => "text/html; charset=utf-8",
        ".css" => "text/css; charset=utf-8",
        ".js" => "text/javascript; charset=utf-8",
        ".svg" => "image/svg+xml",
        ".woff2" => "font/woff2",
        ".txt" => "text/plain; charset=utf-8",
        var other => throw new InvalidOperationException($"The page has a file of a kind it does not know: {other}."),
    };
}
