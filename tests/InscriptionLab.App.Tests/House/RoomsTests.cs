using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;
using Xunit;

namespace InscriptionLab.App.Tests.House;

/// <summary>The rooms of the house look one way only. The order is the list in DEVELOPERS.md, so that the page cannot say anything else than the code does.</summary>
public sealed partial class RoomsTests
{
    private static readonly Dictionary<string, int> Floors = ReadFloors();

    [Fact]
    public void No_room_looks_up()
    {
        var wrong = from file in Sources()
                    let text = File.ReadAllText(file)
                    let own = NamespaceLine().Match(text).Groups[1].Value
                    from Match used in UsingLine().Matches(text)
                    let room = used.Groups[1].Value
                    where FloorOf(room) > FloorOf(own)
                    select $"{Path.GetRelativePath(SampleImages.Root, file)}: {own} looks up to {room}";

        Assert.Empty(wrong);
    }

    [Fact]
    public void Every_namespace_is_on_the_list()
    {
        var rooms = Sources().Select(file => NamespaceLine().Match(File.ReadAllText(file)).Groups[1].Value).Distinct(StringComparer.Ordinal);

        Assert.All(rooms, room => Assert.True(FloorOf(room) >= 0, $"{room} is not in the list of rooms in DEVELOPERS.md"));
    }

    [Fact]
    public void Only_Vision_touches_natives()
    {
        string[] natives = ["using OpenCvSharp", "using Microsoft.ML", "using ImageMagick", "using SixLabors"];
        var wrong = Sources().Where(file => !file.Contains("InscriptionLab.Vision", StringComparison.Ordinal))
            .Where(file => natives.Any(File.ReadAllText(file).Contains));

        Assert.Empty(wrong);
    }

    /// <summary>Whatever decodes strangers' files natively does so where <c>DecoderProcess</c> can do it in a process of its own.</summary>
    [Fact]
    public void Only_NativeDecoder_decodes_files_natively() =>
        Assert.Equal(["NativeDecoder.cs"], Sources().Where(file => DecodingCall().IsMatch(File.ReadAllText(file))).Select(file => Path.GetFileName(file)));

    [Fact]
    public void No_file_is_longer_than_400_lines()
    {
        Assert.Empty(Sources().Where(file => File.ReadLines(file).Count() > 400).Select(file => Path.GetFileName(file)));
    }

    private static IEnumerable<string> Sources() => Directory.EnumerateFiles(Path.Combine(SampleImages.Root, "src"), "*.cs", SearchOption.AllDirectories)
        .Where(file => !file.Contains("/obj/", StringComparison.Ordinal) && !file.Contains("/bin/", StringComparison.Ordinal));

    /// <summary>Gives the floor of a room, or of the nearest room round it; -1 where the list has neither.</summary>
    private static int FloorOf(string room)
    {
        for (var name = room; name.Length > 0; name = name.Contains('.', StringComparison.Ordinal) ? name[..name.LastIndexOf('.')] : string.Empty)
        {
            if (Floors.TryGetValue(name, out var floor))
            {
                return floor;
            }
        }

        return -1;
    }

    private static Dictionary<string, int> ReadFloors()
    {
        var page = File.ReadAllLines(Path.Combine(SampleImages.Root, "DEVELOPERS.md"));
        var listed = page.SkipWhile(line => line != "```rooms").Skip(1).TakeWhile(line => line != "```").ToList();
        return listed
            .SelectMany((line, floor) => line.Split("  ", 2)[0].Split(", ").Select(room => (room, floor)))
            .ToDictionary(pair => pair.room, pair => pair.floor, StringComparer.Ordinal);
    }

    [GeneratedRegex(@"^namespace InscriptionLab\.?([\w.]*);", RegexOptions.Multiline)]
    private static partial Regex NamespaceLine();

    /// <summary>What OpenCV, ImageMagick and ImageSharp offer to make pixels of a file; headers (<c>Image.Identify</c>) are another matter.</summary>
    [GeneratedRegex(@"\b(?:ImDecode|ImRead)(?:Multi)?\b|\bImreadModes\b|\bMat\.From(?:Stream|ImageData)\b|\bVideoCapture\b|\bMagickImage(?:Collection|Info)?\b|\bImage\.Load")]
    private static partial Regex DecodingCall();

    [GeneratedRegex(@"^using (?:static )?InscriptionLab\.([\w.]*);", RegexOptions.Multiline)]
    private static partial Regex UsingLine();
}
