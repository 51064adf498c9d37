using System;
using System.IO;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Vision.Photos;
using Xunit;

namespace InscriptionLab.Vision.Tests.Photos;

/// <summary>A folder for picture files, and the reader that opens them.</summary>
internal sealed class PhotoFolder : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("photos-").FullName;
    private readonly PhotoReader _reader = new(new PhotoLimits());

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    internal string PathOf(string name) => Path.Combine(_folder, name);

    internal string Write(string name, byte[] bytes)
    {
        File.WriteAllBytes(PathOf(name), bytes);
        return PathOf(name);
    }

    internal Photo Read(string name, byte[] bytes) => _reader.Read(Write(name, bytes));

    /// <summary>Reads, and gives red, green and blue at a place.</summary>
    internal (int Red, int Green, int Blue) PixelOf(string name, byte[] bytes, int x, int y)
    {
        var photo = Read(name, bytes);
        var pixel = photo.Colour.Pixels.Slice(((y * photo.Colour.Width) + x) * 3, 3);
        return (pixel[2], pixel[1], pixel[0]);
    }

    /// <summary>The file must be refused with one sentence that names it.</summary>
    /// <returns>The sentence.</returns>
    internal string Refused(string file)
    {
        var refused = Assert.Throws<InscriptionLabException>(() => _reader.Read(file));
        Assert.StartsWith(file, refused.Message, StringComparison.Ordinal);
        Assert.EndsWith(".", refused.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', refused.Message);
        return refused.Message;
    }

    internal bool IsTaken(string name, byte[] bytes)
    {
        var file = Write(name, bytes);
        try
        {
            _reader.Read(file);
            return true;
        }
        catch (InscriptionLabException refused)
        {
            Assert.StartsWith(file, refused.Message, StringComparison.Ordinal);
            return false;
        }
    }
}
