using System;
using System.IO;
using System.Threading.Tasks;
using InscriptionLab.Outcomes;
using InscriptionLab.Page.Bench;
using Xunit;

namespace InscriptionLab.Page.Tests.Bench;

/// <summary>How much lies on the bench at most.</summary>
public sealed class BenchTableTests : IDisposable
{
    private const long Each = 100;

    private readonly BenchTable _table = new(new BenchLimits { Pixels = 3 * Each, PhotosOfPiece = 5 }, TimeProvider.System);

    public void Dispose() => _table.Dispose();

    [Fact]
    public void Photos_that_wait_count_with_the_pixels_that_they_declare()
    {
        var piece = _table.Open("tube");
        for (var i = 0; i < 3; i++)
        {
            Add(piece, Each);
        }

        var file = Laid();
        var refused = Assert.Throws<InscriptionLabException>(() => _table.Add(piece, "a.jpg", file, 1));

        Assert.Contains("memory", refused.Message, StringComparison.Ordinal);
        Assert.Equal(3, piece.Photos.Length);
        Assert.False(File.Exists(file));
    }

    [Fact]
    public void A_photo_that_cannot_be_used_or_is_taken_away_makes_room()
    {
        var piece = _table.Open("tube");
        var (first, second) = (Add(piece, 2 * Each), Add(piece, Each));
        first.State = first.State with { Problem = "It is cut off." };
        Add(piece, 2 * Each);
        _table.Remove(piece, second);
        Add(piece, Each);

        Assert.Throws<InscriptionLabException>(() => Add(piece, 1));
    }

    [Fact]
    public void Photos_that_come_in_at_once_see_each_other()
    {
        var piece = _table.Open("tube");
        var refused = 0;
        Parallel.For(0, 40, _ =>
        {
            try
            {
                Add(piece, 2 * Each);
            }
            catch (InscriptionLabException)
            {
                System.Threading.Interlocked.Increment(ref refused);
            }
        });

        Assert.Equal((1, 39), (piece.Photos.Length, refused));
    }

    private PiecePhoto Add(Piece piece, long pixels) => _table.Add(piece, "a.jpg", Laid(), pixels);

    private string Laid()
    {
        var file = _table.NewFile();
        File.WriteAllBytes(file, [1]);
        return file;
    }
}
