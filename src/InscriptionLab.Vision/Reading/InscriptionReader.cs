using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using System.Threading;
using InscriptionLab.Lines;
using InscriptionLab.Measures;
using InscriptionLab.Photos;
using InscriptionLab.Readings;
using InscriptionLab.Strips;
using InscriptionLab.Vision.Lines;
using InscriptionLab.Vision.Models;

namespace InscriptionLab.Vision.Reading;

/// <summary>The reading stage: finds the lines of a strip, turns them upright and reads them. Blank metal gives a reading without lines.</summary>
public sealed class InscriptionReader : IDisposable
{
    /// <summary>How often other traces are tried in place of those in which nothing could be read.</summary>
    private const int MostRounds = 2;

    private readonly InscriptionReaderOptions _options;
    private readonly LineDetector _detector;
    private readonly LineFinder _finder;
    private readonly LineCropper _cropper;
    private readonly EngravedReader _reader;
    private readonly ILineReader? _second;

    /// <summary>Loads the models.</summary>
    /// <param name="shelf">The models folder.</param>
    /// <param name="options">How to find and read; null for the defaults.</param>
    /// <param name="second">A second reader whose reading is kept beside the first, or null; not disposed here.</param>
    /// <param name="linesAtOnce">Most lines read at the same time; the reading is the same whatever it is.</param>
    /// <exception cref="Outcomes.InscriptionLabException">A model is absent, changed or of another shape.</exception>
    public InscriptionReader(ModelShelf shelf, InscriptionReaderOptions? options = null, ILineReader? second = null, int linesAtOnce = 1)
    {
        ArgumentNullException.ThrowIfNull(shelf);
        _options = options ?? new InscriptionReaderOptions();
        _second = second;
        _reader = new EngravedReader(shelf, _options.Reader, linesAtOnce);
        _detector = new LineDetector(shelf, linesAtOnce);
        _finder = new LineFinder(_detector, _options.Finder);
        _cropper = new LineCropper(_options.Crop);
    }

    /// <summary>Gets name and version of the reader.</summary>
    public string Name => _reader.Name;

    /// <inheritdoc/>
    public void Dispose()
    {
        _detector.Dispose();
        _reader.Dispose();
    }

    /// <summary>Reads all lettering of a strip.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="strip">The strip laid flat from it, or the photo itself.</param>
    /// <param name="cancel">Stops between steps.</param>
    public Readings.Reading Run(Photo photo, Strip strip, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(photo);
        ArgumentNullException.ThrowIfNull(strip);
        var traces = _finder.Find(strip, cancel);
        var legible = new List<Sighting>();
        for (var round = 0; round <= MostRounds; round++)
        {
            var next = _finder.Surest(traces, legible.Select(item => item.Trace));
            if (next.Count == 0)
            {
                break;
            }

            legible.AddRange(ReadUpright(photo, strip, next, cancel).Where(IsLegible));
            traces = [.. traces.Except(next)];
        }

        return Gather(legible, cancel);
    }

    /// <summary>Reads one line in a box that a person drew: read as drawn, whatever the reader thinks of its direction or of its being lettering.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="strip">The strip laid flat from it, or the photo itself.</param>
    /// <param name="box">The box in the strip, corners as a reader of the lettering sees them; a box whose corners run against the clock holds mirrored lettering.</param>
    /// <param name="cancel">Stops between steps.</param>
    /// <returns>The line, or null where the box has no extent or no letter was read.</returns>
    public LineReading? ReadAt(Photo photo, Strip strip, Quad box, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(photo);
        ArgumentNullException.ThrowIfNull(strip);
        var height = (box.TopLeft.DistanceTo(box.BottomLeft).Pixels + box.TopRight.DistanceTo(box.BottomRight).Pixels) / 2;
        var (start, end) = (Between(box.TopLeft, box.BottomLeft), Between(box.TopRight, box.BottomRight));
        if (!(height > 0) || !(start.DistanceTo(end).Pixels > 0))
        {
            return null;
        }

        var turn = ((end.X - start.X) * (box.BottomLeft.Y - box.TopLeft.Y)) - ((end.Y - start.Y) * (box.BottomLeft.X - box.TopLeft.X));
        var mirrored = turn < 0;
        var trace = mirrored ? new LineTrace(end, start, 0, height, 1) : new LineTrace(start, end, 0, height, 1);
        var line = _cropper.Cut(photo, strip, trace, mirrored, Probability.One);
        var sight = _reader.Network.Look([line.Crop], cancel)[0];
        line = line with { Lettering = Probability.From(sight.Lettering) };
        var reading = _reader.Read(line, sight);
        return reading.Letters.Any(IsInk) ? Beside([reading], cancel)[0] : null;
    }

    private static PixelPoint Between(PixelPoint one, PixelPoint other) => new((one.X + other.X) / 2, (one.Y + other.Y) / 2);

    /// <summary>Reads lines that are already traced.</summary>
    internal Readings.Reading Read(Photo photo, Strip strip, IReadOnlyList<LineTrace> traces, CancellationToken cancel) =>
        Gather(traces.Count == 0 ? [] : ReadUpright(photo, strip, traces, cancel).FindAll(IsLegible), cancel);

    /// <summary>Orders legible lines, lets the second reader look at them, and averages their styles.</summary>
    private Readings.Reading Gather(IReadOnlyList<Sighting> legible, CancellationToken cancel)
    {
        // Ordered only now: a stray line that was no lettering must not say which way the reader faces.
        var kept = ReadingOrder.Of(legible, item => item.Reading.Line.InStrip);
        var lines = kept.IsEmpty ? [] : Beside([.. kept.Select(item => item.Reading with { Style = Style([(item.Sight, 1)]) })], cancel);
        return new Readings.Reading(Name, lines, Style([.. kept.Select(item => (item.Sight, item.Reading.Letters.Length))]));
    }

    private List<Sighting> ReadUpright(Photo photo, Strip strip, IReadOnlyList<LineTrace> traces, CancellationToken cancel)
    {
        var seen = LookUpright(photo, strip, traces, cancel);
        var readings = _reader.Read(seen.ConvertAll(item => (item.Line, item.Sight)), cancel);
        return [.. seen.Zip(readings, (item, reading) => new Sighting(item.Origin, item.Sight, reading))];
    }

    private bool IsLegible(Sighting seen)
    {
        var ink = seen.Reading.Letters.Where(IsInk).ToList();
        return seen.Sight.Lettering >= _options.LetteringFrom.Value && ink.Count > 0 && ink.Average(letter => letter.Probability.Value) >= _options.MeanLetterFrom.Value;
    }

    private static bool IsInk(Letter letter) => !letter.IsSpace;

    /// <summary>Looks at each line in the orientation in which it reads.</summary>
    private List<(LetteringLine Line, LineSight Sight, LineTrace Origin)> LookUpright(Photo photo, Strip strip, IReadOnlyList<LineTrace> traces, CancellationToken cancel)
    {
        var views = new LineViews(_reader.Network, [.. traces.Select(trace => _cropper.Crop(photo, strip, trace))], _options.LetteringFrom.Value, cancel);
        var weights = traces.Select((_, line) => LineOrientation.Weigh(views.Of(line))).ToList();
        var mirrored = LineOrientation.IsMirrored(weights);
        var turned = LineOrientation.AreTurned(traces, weights, mirrored, _options.OwnTurnOdds);
        var upright = views.Upright([.. turned.Select(turn => (turn ? LineOrientation.Turned : 0) | (mirrored ? LineOrientation.Mirrored : 0))], cancel);
        return [.. traces.Select((trace, line) =>
            (_cropper.Place(strip, turned[line] ? trace.Turned() : trace, mirrored, Probability.From(upright[line].Sight.Lettering), upright[line].Crop), upright[line].Sight, trace))];
    }

    private ImmutableArray<LineReading> Beside(ImmutableArray<LineReading> first, CancellationToken cancel)
    {
        if (_second is null)
        {
            return first;
        }

        var second = _second.Read([.. first.Select(reading => reading.Line)], cancel);
        return [.. first.Zip(second, (one, other) => one with { Second = SecondReading.Beside(one.Letters, _second.Name, other.Text) })];
    }

    /// <summary>Averages the styles over all lines, each line by its number of letters.</summary>
    private ImmutableArray<StyleCandidate> Style(IReadOnlyList<(LineSight Sight, int Letters)> lines)
    {
        double letters = lines.Sum(line => line.Letters);
        return letters == 0 ? [] : [.. _reader.Network.Styles
            .Select((style, index) => new StyleCandidate(style, Probability.From(lines.Sum(line => line.Sight.Style[index] * line.Letters) / letters)))
            .OrderByDescending(candidate => candidate.Probability)];
    }

    /// <summary>A trace, and what was seen and read in it.</summary>
    private sealed record Sighting(LineTrace Trace, LineSight Sight, LineReading Reading);
}
