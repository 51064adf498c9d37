using System;
using InscriptionLab.Cataloguing;
using InscriptionLab.Outcomes;
using Xunit;

namespace InscriptionLab.Catalogue.Tests.Likeness;

/// <summary>Room for the embeddings of very many marks, reckoned without taking it.</summary>
public sealed class LikenessSourceTests
{
    private const int Gibi = 1 << 30;

    [Fact]
    public void Room_doubles_until_an_array_can_hold_no_more()
    {
        Assert.Equal(128 * 1024, LikenessSource.Room(0, 0, 128));
        Assert.Equal(2 * 128 * 1024, LikenessSource.Room(128 * 1024, 128 * 1024, 128));
        Assert.Equal(Array.MaxLength, LikenessSource.Room(Gibi, Gibi, 128));
    }

    [Fact]
    public void More_marks_than_an_array_holds_are_refused_with_a_sentence()
    {
        var refused = Assert.Throws<InscriptionLabException>(() => LikenessSource.Room(Array.MaxLength, Array.MaxLength - 100, 128));
        Assert.EndsWith(".", refused.Message, StringComparison.Ordinal);
    }
}
