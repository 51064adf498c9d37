using System;
using System.Collections.Generic;
using System.Threading;
using InscriptionLab.Imaging;
using InscriptionLab.Vision.Pictures;

namespace InscriptionLab.Page.Bench;

/// <summary>A photo as square pieces at every size, so that the page only loads what it shows. Level 0 is the photo itself; each further level is half as large.</summary>
internal sealed class TilePyramid
{
    /// <summary>Side of a tile in pixels: about 50 kB as a JPEG, a dozen of them fill a screen.</summary>
    internal const int TileSide = 512;

    private readonly Lock _gate = new();
    private readonly List<ColourImage> _levels;

    internal TilePyramid(ColourImage photo)
    {
        _levels = [photo];
        Levels = 1;
        for (var side = Math.Max(photo.Width, photo.Height); side > TileSide; side = (side + 1) / 2)
        {
            Levels++;
        }
    }

    /// <summary>Gets the number of levels; the last one is a single tile.</summary>
    internal int Levels { get; }

    /// <summary>Gives a tile as a JPEG file, or null where there is none.</summary>
    internal byte[]? Tile(int level, int column, int row)
    {
        if (level < 0 || level >= Levels || column < 0 || row < 0)
        {
            return null;
        }

        var picture = Level(level);
        var (left, top) = ((long)column * TileSide, (long)row * TileSide);
        return left >= picture.Width || top >= picture.Height
            ? null
            : PictureEncoder.ToJpeg(PictureCutter.Cut(picture, (int)left, (int)top, TileSide, TileSide), TileSide);
    }

    private ColourImage Level(int level)
    {
        lock (_gate)
        {
            while (_levels.Count <= level)
            {
                _levels.Add(PictureCutter.Halve(_levels[^1]));
            }

            return _levels[level];
        }
    }
}
