using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Gathering;
using InscriptionLab.Measures;
using InscriptionLab.Strips;
using Xunit;

namespace InscriptionLab.Core.Tests.Gathering;

public sealed class PhotoSorterTests
{
    private static readonly PhotoSorter Sorter = new();

    [Fact]
    public void Photos_of_two_views_and_one_of_something_else_are_told_apart()
    {
        ImmutableArray<GatheredPhoto> photos = [Photo(40, "Marlhaven"), Photo(200, "Tolliver"), Photo(42, "Marlhavcn"), Photo(90, "Port Tressick"), Photo(203, "Toiliver")];
        var sets = PhotoSorter.Sort(photos.Length, Sorter.TiesOfLettering(photos));

        Assert.Equal([[0, 2], [1, 4]], sets.Select(set => set.Photos.ToArray()));
        Assert.All(sets, set => Assert.Equal(SetKind.Raking, set.Kind));
        Assert.Contains("'Marlhaven'", sets[0].Ties[0].Reason, System.StringComparison.Ordinal);
    }

    [Fact]
    public void Short_lines_that_read_alike_tie_nothing() =>
        Assert.Empty(Sorter.TiesOfLettering([Photo(40, "No"), Photo(40, "No")]));

    [Fact]
    public void A_turn_between_photos_makes_them_a_turned_tube_even_where_some_show_one_view()
    {
        var ties = Sorter.TiesOfSurface([Match(0, 1, 0.8), Match(1, 2, 44.3), Match(3, 4, -0.5)]);
        var sets = PhotoSorter.Sort(6, ties);

        Assert.Equal([SetKind.Turns, SetKind.Raking], sets.Select(set => set.Kind));
        Assert.Equal([[0, 1, 2], [3, 4]], sets.Select(set => set.Photos.ToArray()));
        Assert.Contains("44.3 degrees", sets[0].Ties[1].Reason, System.StringComparison.Ordinal);
    }

    private static TurnMatch Match(int first, int second, double degrees) => new(first, second, Angle.FromDegrees(degrees), 0, 0.2, 9);

    private static GatheredPhoto Photo(double y, string text) => new(null, ReadLines.Of(ReadLines.At(0, y, text)));
}
