using System;
using System.Collections.Generic;
using System.IO;
using System.Xml;
using System.Xml.Linq;
using System.Xml.Schema;
using Xunit;

namespace InscriptionLab.Catalogue.Tests.Exchange;

/// <summary>The published schemas of other standards, where the environment names their folder; tests that need them are skipped, and say so, where it does not.</summary>
internal static class Schemas
{
    private const string Variable = "INSCRIPTIONLAB_SCHEMAS";

    /// <summary>Gives a schema's file.</summary>
    internal static string At(params ReadOnlySpan<string> parts)
    {
        var folder = Environment.GetEnvironmentVariable(Variable);
        Assert.SkipWhen(folder is null || !Directory.Exists(folder), $"No published schemas here: {Variable} names no folder.");
        var file = Path.Combine([folder!, .. parts]);
        Assert.SkipUnless(File.Exists(file), $"{file} is not there.");
        return file;
    }

    /// <summary>Holds an XML file against an XML Schema and gives every fault.</summary>
    internal static List<string> Faults(string xml, string schemaFile)
    {
        var faults = new List<string>();
        var set = new XmlSchemaSet { XmlResolver = new XmlUrlResolver() };
        if (Path.Combine(Path.GetDirectoryName(schemaFile)!, "xml.xsd") is var attributes && File.Exists(attributes))
        {
            using var reader = XmlReader.Create(attributes, new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore });
            set.Add("http://www.w3.org/XML/1998/namespace", reader);
        }

        set.Add(null, schemaFile);
        set.Compile();
        XDocument.Load(xml).Validate(set, (_, fault) => faults.Add(fault.Message));
        return faults;
    }
}
