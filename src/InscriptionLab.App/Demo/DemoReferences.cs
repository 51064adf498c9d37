using System.IO;
using InscriptionLab.References;

namespace InscriptionLab.App.Demo;

/// <summary>The reference list of the invented port of Brackhaven, built into the program. Every house, street, date and source in it is invented.</summary>
internal static class DemoReferences
{
    /// <summary>Name of the CSV file, as messages and reports give it.</summary>
    internal const string CsvFile = "brackhaven.csv";

    /// <summary>Name of the JSON file with the same rows.</summary>
    internal const string JsonFile = "brackhaven.json";

    /// <summary>Gives the list.</summary>
    internal static ReferenceList Load() => new ReferenceListReader().Read(JsonFile, Bytes(JsonFile)).List;

    /// <summary>Gives the bytes of one of the two files, so that a user can save them as a start for a list of their own.</summary>
    internal static byte[] Bytes(string file)
    {
        using var stream = typeof(DemoReferences).Assembly.GetManifestResourceStream(typeof(DemoReferences), file)
            ?? throw new FileNotFoundException("The program was built without its demonstration list.", file);
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }
}
