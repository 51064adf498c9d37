using System.Collections.Generic;
using System.Linq;
using System.Threading;
using InscriptionLab.Imaging;
using InscriptionLab.Vision.Lines;

namespace InscriptionLab.Vision.Reading;

/// <summary>
/// Line crops seen in some of the four orientations (numbers as in <see cref="LineOrientation"/>). Each is looked at as it was traced, then in the orientation that the network names;
/// where that does not settle it, in the others too.
/// </summary>
internal sealed class LineViews
{
    /// <summary>Probability at which the network's word on the orientation counts as sure.</summary>
    private const double SureFrom = 0.98;

    /// <summary>Mean peak of a clear reading: the right way round it is 0.8 to 1.0.</summary>
    private const double ClearFrom = 0.8;

    private readonly EngravedNetwork _network;
    private readonly IReadOnlyList<GrayImage> _crops;
    private readonly LineSight?[][] _sights;

    /// <summary>Looks at crops as they were traced, and further until each is settled or seen in all orientations.</summary>
    /// <param name="network">The reading network.</param>
    /// <param name="crops">Crops as traced.</param>
    /// <param name="letteringFrom">Probability of being lettering from which the word on the orientation counts.</param>
    /// <param name="cancel">Stops between runs.</param>
    internal LineViews(EngravedNetwork network, IReadOnlyList<GrayImage> crops, double letteringFrom, CancellationToken cancel)
    {
        (_network, _crops) = (network, crops);
        _sights = [.. crops.Select(_ => new LineSight?[LineOrientation.Count])];
        var all = Enumerable.Range(0, crops.Count).ToList();
        Look(all.Select(line => (line, 0)), cancel);
        var named = all.Select(line => Named(_sights[line][0]!, letteringFrom)).ToList();
        Look(all.Where(line => named[line] is not null).Select(line => (line, named[line]!.Value)), cancel);
        var open = all.Where(line => named[line] is not { } orientation || !IsSettled(_sights[line][orientation]!));
        Look(open.SelectMany(line => Enumerable.Range(0, LineOrientation.Count).Select(orientation => (line, orientation))), cancel);
    }

    /// <summary>Gets what was seen of a line in each orientation; null where it was not looked at.</summary>
    internal IReadOnlyList<LineSight?> Of(int line) => _sights[line];

    /// <summary>Gives crop and sight of each line in the orientation in which it reads.</summary>
    /// <param name="orientations">Orientation of each line.</param>
    /// <param name="cancel">Stops between runs.</param>
    internal IReadOnlyList<(GrayImage Crop, LineSight Sight)> Upright(IReadOnlyList<int> orientations, CancellationToken cancel)
    {
        Look(orientations.Select((orientation, line) => (line, orientation)), cancel);
        return [.. orientations.Select((orientation, line) => (CropTurns.To(orientation, _crops[line]), _sights[line][orientation]!))];
    }

    /// <summary>Gives the orientation that the network surely names, or null.</summary>
    private static int? Named(LineSight sight, double letteringFrom)
    {
        var best = Enumerable.Range(0, LineOrientation.Count).MaxBy(orientation => sight.Orientation[orientation]);
        return sight.Lettering >= letteringFrom && sight.Orientation[best] >= SureFrom ? best : null;
    }

    private static bool IsSettled(LineSight upright) => upright.Orientation[0] >= SureFrom && upright.MeanPeak >= ClearFrom;

    private void Look(IEnumerable<(int Line, int Orientation)> wanted, CancellationToken cancel)
    {
        var missing = wanted.Where(view => _sights[view.Line][view.Orientation] is null).ToList();
        var seen = _network.Look([.. missing.Select(view => CropTurns.To(view.Orientation, _crops[view.Line]))], cancel);
        foreach (var (view, sight) in missing.Zip(seen))
        {
            _sights[view.Line][view.Orientation] = sight;
        }
    }
}
