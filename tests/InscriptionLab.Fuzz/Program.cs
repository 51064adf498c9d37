using System;
using System.Globalization;
using System.IO;
using System.Linq;

namespace InscriptionLab.Fuzz;

internal static class Program
{
    private const string Usage = """
        fuzz targets                  the targets, one a line
        fuzz seeds FOLDER             writes what each target starts from into FOLDER/TARGET
        fuzz TARGET                   under afl-fuzz: one input after another
        fuzz replay TARGET FILE...    the files once, each with what came of it

        """;

    private static int Main(string[] arguments)
    {
        switch (arguments)
        {
            case ["targets"]:
                Console.Out.Write(string.Concat(Targets.All.Keys.Order(StringComparer.Ordinal).Select(name => name + "\n")));
                return 0;
            case ["seeds", var folder]:
                Seeds.Write(folder);
                return 0;
            case ["replay", var name, .. var files] when Targets.All.TryGetValue(name, out var target):
                return files.Select(file => Replay(target, file)).ToList().Contains(false) ? 1 : 0;
            case [var name] when Targets.All.TryGetValue(name, out var target):
                SharpFuzz.Fuzzer.Run((Stream stream) => Trial.Run(target, BytesOf(stream)));
                return 0;
            default:
                Console.Error.Write(Usage);
                return 2;
        }
    }

    private static bool Replay(Action<byte[]> target, string file)
    {
        try
        {
            Console.Out.WriteLine($"{file}: {Trial.Run(target, File.ReadAllBytes(file)) ?? "taken"}");
            return true;
        }
#pragma warning disable CA1031 // Whatever is thrown is what is looked for.
        catch (Exception found)
#pragma warning restore CA1031
        {
            Console.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{file}: FOUND {found}"));
            return false;
        }
    }

    private static byte[] BytesOf(Stream stream)
    {
        using var all = new MemoryStream();
        stream.CopyTo(all);
        return all.ToArray();
    }
}
