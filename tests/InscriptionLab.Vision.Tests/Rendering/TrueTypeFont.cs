using System;
using System.Buffers.Binary;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Tests.Rendering;

/// <summary>Outlines of the glyphs of a TrueType file (ISO/IEC 14496-22: head, hhea, hmtx, loca, glyf, and a cmap of format 4), in ems, y upward. Only what drawing letters needs.</summary>
internal sealed class TrueTypeFont
{
    /// <summary>Straight pieces that a curve is drawn with.</summary>
    private const int Pieces = 6;

    private readonly byte[] _file;
    private readonly Dictionary<string, int> _tables = [];
    private readonly double _em;
    private readonly bool _longOffsets;
    private readonly int _advances;

    private TrueTypeFont(byte[] file)
    {
        _file = file;
        for (var i = 0; i < U16(4); i++)
        {
            var row = 12 + (16 * i);
            _tables[System.Text.Encoding.ASCII.GetString(file, row, 4)] = (int)U32(row + 8);
        }

        _em = U16(_tables["head"] + 18);
        _longOffsets = U16(_tables["head"] + 50) == 1;
        _advances = U16(_tables["hhea"] + 34);
    }

    /// <summary>Reads one of the project's own typefaces, or any other file by its full path.</summary>
    internal static TrueTypeFont Of(string name)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "InscriptionLab.sln")))
        {
            folder = folder.Parent;
        }

        return new TrueTypeFont(File.ReadAllBytes(Path.Combine(folder!.FullName, "src/InscriptionLab.App/Reports/Fonts", name)));
    }

    /// <summary>Gives how far the next letter stands from this one.</summary>
    internal double Advance(char letter)
    {
        var glyph = Math.Min(GlyphOf(letter), _advances - 1);
        return U16(_tables["hmtx"] + (4 * glyph)) / _em;
    }

    /// <summary>Gives a letter's closed outlines; none for a space.</summary>
    internal List<PixelPoint[]> Outlines(char letter) => Glyph(GlyphOf(letter));

    private int GlyphOf(char letter)
    {
        var cmap = _tables["cmap"];
        for (var i = 0; i < U16(cmap + 2); i++)
        {
            var at = cmap + (int)U32(cmap + 4 + (8 * i) + 4);
            if (U16(at) != 4)
            {
                continue;
            }

            var twice = U16(at + 6);
            for (var segment = 0; segment < twice; segment += 2)
            {
                var start = U16(at + 16 + twice + segment);
                if (letter < start || letter > U16(at + 14 + segment))
                {
                    continue;
                }

                var place = at + 16 + (3 * twice) + segment;
                var delta = U16(at + 16 + (2 * twice) + segment);
                var glyph = U16(place) == 0 ? letter : U16(place + U16(place) + (2 * (letter - start)));
                return (glyph + delta) & 0xFFFF;
            }
        }

        throw new InvalidOperationException($"The typeface has no '{letter}'.");
    }

    private List<PixelPoint[]> Glyph(int glyph)
    {
        var (loca, from) = (_tables["loca"], 0);
        int Offset(int index) => _longOffsets ? (int)U32(loca + (4 * index)) : 2 * U16(loca + (2 * index));
        from = _tables["glyf"] + Offset(glyph);
        if (Offset(glyph + 1) == Offset(glyph))
        {
            return [];
        }

        var contours = (short)U16(from);
        return contours >= 0 ? Simple(from + 10, contours) : Compound(from + 10);
    }

    private List<PixelPoint[]> Compound(int at)
    {
        var all = new List<PixelPoint[]>();
        int flags;
        do
        {
            flags = U16(at);
            var parts = Glyph(U16(at + 2));
            var words = (flags & 1) != 0;
            var (x, y) = words ? ((short)U16(at + 4), (short)U16(at + 6)) : ((sbyte)_file[at + 4], (sbyte)_file[at + 5]);
            at += words ? 8 : 6;
            at += (flags & 0x08) != 0 ? 2 : (flags & 0x40) != 0 ? 4 : (flags & 0x80) != 0 ? 8 : 0;
            all.AddRange(parts.Select(part => Array.ConvertAll(part, point => new PixelPoint(point.X + (x / _em), point.Y + (y / _em)))));
        }
        while ((flags & 0x20) != 0);
        return all;
    }

    private List<PixelPoint[]> Simple(int at, int contours)
    {
        var ends = Enumerable.Range(0, contours).Select(i => U16(at + (2 * i))).ToArray();
        at += 2 * contours;
        at += 2 + U16(at);
        var count = contours == 0 ? 0 : ends[^1] + 1;
        var flags = new List<byte>();
        while (flags.Count < count)
        {
            var flag = _file[at++];
            var times = (flag & 8) != 0 ? _file[at++] + 1 : 1;
            flags.AddRange(Enumerable.Repeat(flag, times));
        }

        var xs = Coordinates(flags, 0x02, 0x10, ref at);
        var ys = Coordinates(flags, 0x04, 0x20, ref at);
        var outlines = new List<PixelPoint[]>();
        for (var (c, first) = (0, 0); c < contours; first = ends[c] + 1, c++)
        {
            outlines.Add(Curve([.. Enumerable.Range(first, ends[c] - first + 1).Select(i => (xs[i] / _em, ys[i] / _em, (flags[i] & 1) != 0))]));
        }

        return outlines;
    }

    private int[] Coordinates(List<byte> flags, int isShort, int sameOrPositive, ref int at)
    {
        var values = new int[flags.Count];
        var value = 0;
        for (var i = 0; i < flags.Count; i++)
        {
            if ((flags[i] & isShort) != 0)
            {
                value += (flags[i] & sameOrPositive) != 0 ? _file[at] : -_file[at];
                at++;
            }
            else if ((flags[i] & sameOrPositive) == 0)
            {
                value += (short)U16(at);
                at += 2;
            }

            values[i] = value;
        }

        return values;
    }

    /// <summary>Quadratic curves; between two points off the curve lies one on it.</summary>
    private static PixelPoint[] Curve(List<(double X, double Y, bool On)> points)
    {
        var full = new List<(double X, double Y, bool On)>();
        for (var i = 0; i < points.Count; i++)
        {
            var (here, next) = (points[i], points[(i + 1) % points.Count]);
            full.Add(here);
            if (!here.On && !next.On)
            {
                full.Add(((here.X + next.X) / 2, (here.Y + next.Y) / 2, true));
            }
        }

        var start = full.FindIndex(point => point.On);
        var drawn = new List<PixelPoint>();
        for (var i = 0; i < full.Count; i++)
        {
            var (before, here, after) = (full[(start + i + full.Count - 1) % full.Count], full[(start + i) % full.Count], full[(start + i + 1) % full.Count]);
            if (here.On)
            {
                drawn.Add(new PixelPoint(here.X, here.Y));
                continue;
            }

            for (var piece = 1; piece < Pieces; piece++)
            {
                var t = (double)piece / Pieces;
                var (a, b, c) = ((1 - t) * (1 - t), 2 * t * (1 - t), t * t);
                drawn.Add(new PixelPoint((a * before.X) + (b * here.X) + (c * after.X), (a * before.Y) + (b * here.Y) + (c * after.Y)));
            }
        }

        return [.. drawn];
    }

    private int U16(int at) => BinaryPrimitives.ReadUInt16BigEndian(_file.AsSpan(at));

    private uint U32(int at) => BinaryPrimitives.ReadUInt32BigEndian(_file.AsSpan(at));
}
