using System.IO;
using System.Linq;
using System.Text.Json.Nodes;
using InscriptionLab.Catalogue.Tests.Services;
using Xunit;

namespace InscriptionLab.Catalogue.Tests.Exchange;

/// <summary>Reads JSON-LD with another program's processor (Debian package python3-pyld): what a context does not know, it drops without a word.</summary>
internal static class JsonLd
{
    private const string Python = "/usr/bin/python3";

    private const string Program = """
        import json, sys
        from pyld import jsonld
        _, document, address, context = sys.argv
        def load(url, options):
            if url != address:
                raise Exception('no such context: ' + url)
            return {'contextUrl': None, 'documentUrl': url, 'document': json.load(open(context))}
        print(json.dumps(jsonld.expand(json.load(open(document)), {'documentLoader': load, 'base': 'https://brackhaven.example/'})))
        """;

    /// <summary>Writes a document out in full, every name as the address that it stands for.</summary>
    /// <param name="document">The file.</param>
    /// <param name="address">Address of its context.</param>
    /// <param name="context">File that holds the context.</param>
    internal static JsonArray Expanded(string document, string address, string context)
    {
        Assert.SkipUnless(File.Exists(Python) && ChildProcess.Output(Python, "-c", "import pyld").ExitCode == 0, "PyLD is not installed here (Debian package python3-pyld): JSON-LD was not read by another program.");
        var (code, output) = ChildProcess.Output(Python, "-c", Program, document, address, context);
        Assert.True(code == 0, output);
        return JsonNode.Parse(output)!.AsArray();
    }

    /// <summary>Counts the names in a document: as written, or as written out in full.</summary>
    internal static int Names(JsonNode? node) => node switch
    {
        JsonObject item => item.Sum(pair => (pair.Key is "@context" or "@graph" or "@value" || (pair.Key == "@type" && item.ContainsKey("@value")) ? 0 : 1) + (pair.Key == "@context" ? 0 : Names(pair.Value))),
        JsonArray items => items.Sum(Names),
        _ => 0,
    };
}
