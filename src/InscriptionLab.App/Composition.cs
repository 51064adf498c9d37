using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Threading;
using System.Threading.Tasks;
using InscriptionLab.Advice;
using InscriptionLab.App.Examining;
using InscriptionLab.App.Measuring;
using InscriptionLab.App.Reports;
using InscriptionLab.Cells;
using InscriptionLab.Comparison;
using InscriptionLab.Evidence;
using InscriptionLab.Findings;
using InscriptionLab.Gathering;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.References;
using InscriptionLab.Reliefs;
using InscriptionLab.Tubes;
using InscriptionLab.Vision.Cameras;
using InscriptionLab.Vision.Cells;
using InscriptionLab.Vision.Light;
using InscriptionLab.Vision.Models;
using InscriptionLab.Vision.Native;
using InscriptionLab.Vision.Photos;
using InscriptionLab.Vision.Reading;
using InscriptionLab.Vision.Relief;
using InscriptionLab.Vision.Rings;
using InscriptionLab.Vision.Sizes;
using InscriptionLab.Vision.Strips;
using InscriptionLab.Vision.Tubes;
using InscriptionLab.Vision.Turns;

namespace InscriptionLab.App;

/// <summary>Builds the program by <c>new</c>, in one place. Owns what must be closed at the end; models are loaded once, when first needed.</summary>
internal sealed class Composition : IDisposable
{
    private readonly PhotoLimits _photoLimits = new();
    private readonly TubeFinderOptions _tubeOptions = new();
    private readonly UnrollerOptions _unrollerOptions = new();
    private readonly RingFinderOptions _ringFinderOptions = new();
    private readonly RingUnrollerOptions _ringOptions = new();
    private readonly InscriptionReaderOptions _readerOptions = new();
    private readonly TesseractReaderOptions _secondOptions = new();
    private readonly CellMeasurerOptions _cellOptions = new();
    private readonly GathererOptions _gathererOptions = new();
    private readonly TurnSetOptions _turnOptions = new();
    private readonly ReliefOptions _reliefOptions = new();
    private readonly ComparerOptions _comparerOptions = new();
    private readonly JudgeOptions _judgeOptions = new();
    private readonly EvidenceOptions _evidenceOptions = new();
    private readonly LampMeterOptions _lampOptions = new();
    private readonly AdviserOptions _adviserOptions = new();
    private readonly Lazy<ILineReader?> _second;
    private readonly Lazy<InscriptionReader> _reader;
    private readonly Lazy<TubeFinder> _tubeFinder;
    private readonly DecoderProcess _decoder = PhotoDecoding.Process();

    private int _workers = 1;
    private Task? _loading;

    internal Composition()
    {
        _second = new Lazy<ILineReader?>(StartSecond);
        _tubeFinder = new Lazy<TubeFinder>(() => new TubeFinder(_tubeOptions, ModelFolder.Present ? Shelf() : null));
        _reader = new Lazy<InscriptionReader>(() => new InscriptionReader(Shelf(), _readerOptions, _second.Value, _workers == 1 ? Environment.ProcessorCount : 1));
    }

    /// <summary>Gets the clock.</summary>
    internal TimeProvider Clock { get; } = TimeProvider.System;

    /// <summary>Gets the models that the readers use, with their hashes.</summary>
    internal ImmutableArray<ModelFact> Models { get; } = ModelFolder.Facts();

    /// <summary>Gets every stage's options.</summary>
    internal ImmutableArray<StageOptions> Options =>
    [
        new("photo", _photoLimits),
        new("tube", _tubeOptions),
        new("strip", _unrollerOptions),
        new("ring", _ringFinderOptions),
        new("ring strip", _ringOptions),
        new("reading", _readerOptions),
        new("second reading", _secondOptions),
        new("together", _gathererOptions),
        new("turns", _turnOptions),
        new("relief", _reliefOptions),
        new("comparison", _comparerOptions),
        new("finding", _judgeOptions),
        new("evidence", _evidenceOptions),
        new("light", _lampOptions),
        new("advice", _adviserOptions),
    ];

    /// <summary>Gets the options of a measurement.</summary>
    internal ImmutableArray<StageOptions> MeasuringOptions => [new("photo", _photoLimits), new("cell", _cellOptions)];

    public void Dispose()
    {
        // Native code must not be left loading while the program ends; whether it succeeded is no matter here.
        ((IAsyncResult?)_loading)?.AsyncWaitHandle.WaitOne();
        _decoder.Dispose();
        if (_reader.IsValueCreated)
        {
            _reader.Value.Dispose();
        }

        if (_tubeFinder.IsValueCreated)
        {
            _tubeFinder.Value.Dispose();
        }

        if (_second is { IsValueCreated: true, Value: { } second })
        {
            second.Dispose();
        }
    }

    /// <summary>Gets or sets what the user says of a scale beside the tube.</summary>
    internal MeasureRequest Beside { get; set; } = MeasureRequest.Nothing;

    /// <summary>Prepares for photos examined side by side, which share every model; before the first of them.</summary>
    /// <param name="workers">How many at a time.</param>
    internal void WorkSideBySide(int workers)
    {
        _workers = workers;
        ManyPhotos.Prepare(workers);
    }

    /// <summary>Builds the flow of an examination against a list.</summary>
    internal Examiner Examiner(ReferenceList list, Circumstances? known = null) => new(Stages(list, known), Clock, _workers == 1);

    /// <summary>Builds the flow for a photo whose tube a person marked.</summary>
    internal Examiner Examiner(ReferenceList list, PixelSegment first, PixelSegment second, Circumstances? known = null) =>
        new(Stages(list, known) with { FindTubes = (photo, _) => _tubeFinder.Value.Run(photo, first, second).Then<ImmutableArray<Tube>>(tube => new Outcome<ImmutableArray<Tube>>.Found([tube])), TubesAreMarked = true }, Clock);

    /// <summary>Builds the flow for a photo whose ring a person marked; no tube is looked for.</summary>
    internal Examiner Examiner(ReferenceList list, PixelEllipse rim, double? opening, Circumstances? known = null) =>
        new(Stages(list, known) with { FindTubes = (_, _) => new Outcome<ImmutableArray<Tube>>.Found([]), FindRing = (photo, _) => MarkRing(photo, rim, opening), RingIsMarked = true }, Clock);

    /// <summary>Gives the face of a ring that a person marked.</summary>
    internal Outcome<Strips.RingFace> MarkRing(Photo photo, PixelEllipse rim, double? opening) => new RingFinder(_ringFinderOptions).Run(photo, rim, opening);

    /// <summary>Builds the joint examination of several photos against a list.</summary>
    /// <param name="list">The list.</param>
    /// <param name="known">What the user says of the piece; null for nothing.</param>
    /// <param name="lamps">Gives where the lamp of a photo stood, or null where nobody said so; counts where it is known of all photos of a set, else the shading tells.</param>
    internal SetExaminer SetExaminer(ReferenceList list, Circumstances? known = null, Func<Photo, StatedLamp?>? lamps = null) => SetExaminer(Stages(list, known), lamps);

    /// <summary>Builds the joint examination of several photos over the stages of a single one.</summary>
    internal SetExaminer SetExaminer(ExaminingStages stages, Func<Photo, StatedLamp?>? lamps)
    {
        var turns = new TurnSet(_turnOptions);
        var relief = new ReliefBuilder(_reliefOptions, new Unroller(_unrollerOptions));
        Outcome<SurfaceRelief> Shape(IReadOnlyList<Photo> photos, Tube tube, PixelPoint? lettering, CancellationToken cancel) =>
            relief.Run(photos, tube, lettering, StatedLamp.Over(tube, photos, lamps), cancel);
        return new(stages, new SetStages(turns.Match, (photos, tubes, matches, cancel) => turns.Run(photos, tubes, matches, cancel), Shape, ReliefPictures.Grooves), new Gatherer(_gathererOptions), new PhotoSorter(_gathererOptions), new Stand(_gathererOptions));
    }

    /// <summary>Opens a photo.</summary>
    internal Photo Open(string file) => new PhotoReader(_photoLimits, _decoder).Read(file);

    /// <summary>Reads from a photo's header how many pixels it has.</summary>
    internal long PixelsOf(string file) => new PhotoReader(_photoLimits, _decoder).PixelsOf(file);

    /// <summary>Builds the flow of a measurement; with a calibration each photo is straightened first.</summary>
    internal Measurer Measurer(CameraCalibration? camera = null) => new(camera is null ? Open : file => Straightened(Open(file), camera), new CellMeasurer(_cellOptions).Run);

    /// <summary>Builds the stages of an examination against a list.</summary>
    /// <param name="list">The list.</param>
    /// <param name="known">What the user says of the piece; null for nothing.</param>
    internal ExaminingStages Stages(ReferenceList list, Circumstances? known = null)
    {
        Prepare();
        var tubeMeasurer = new TubeMeasurer(_cellOptions);
        var unroller = new Unroller(_unrollerOptions);
        var ringUnroller = new RingUnroller(_ringOptions);
        var comparer = new Comparer(list, _comparerOptions);
        var judge = new Judge(_judgeOptions);
        var weigher = new EvidenceWeigher(list, _evidenceOptions, comparer);
        known ??= Circumstances.None;
        var meter = new LetteringMeter(lamps: _lampOptions);
        var adviser = new Adviser(_adviserOptions);
        return new ExaminingStages(
            Open: Open,
            FindTubes: (photo, cancel) => _tubeFinder.Value.Find(photo, cancel),
            Unroll: (photo, tube, _) => unroller.Run(photo, tube),
            LayFlat: (photo, _) => unroller.Flat(photo),
            Read: (photo, strip, cancel) => ModelFolder.Present ? _reader.Value.Run(photo, strip, cancel) : new Readings.Reading("none", [], []),
            Compare: comparer.Compare,
            Judge: judge.Decide,
            Advise: (photo, tube, reading, cancel) => adviser.Advise(meter.Measure(photo, tube, reading, cancel)))
        {
            FindRing = new RingFinder(_ringFinderOptions).Run,
            UnrollRing = ringUnroller.Run,
            Size = (photo, tube, reading, cancel) => tubeMeasurer.Run(photo, tube, reading, Beside, cancel),
            Weigh = (reading, finding, seen) => weigher.Weigh(reading, finding, seen with { Construction = seen.Construction ?? known.Construction, Prior = seen.Prior ?? known.Prior }),
        };
    }

    /// <summary>Reads one line in a box that a person drew in the strip; null where nothing can be read there or this build has no models.</summary>
    internal Readings.LineReading? ReadAt(Photo photo, Strips.Strip strip, Quad box, CancellationToken cancel) =>
        ModelFolder.Present ? _reader.Value.ReadAt(photo, strip, box, cancel) : null;

    /// <summary>Starts what is to be ready by the time the first photo is. A model that cannot be loaded is complained of where it is first needed.</summary>
    private void Prepare()
    {
        _decoder.Start();
        if (ModelFolder.Present)
        {
            _loading ??= Task.Run(() => (_reader.Value, _tubeFinder.Value));
        }
    }

    private static ModelShelf Shelf() => new(ModelFolder.Path);

    private ReaderPool? StartSecond() => TesseractReader.TryStart(_secondOptions, out _) is { } first
        ? new ReaderPool(first, () => TesseractReader.TryStart(_secondOptions, out var reason) ?? throw new InscriptionLabException(reason))
        : null;

    private static Photo Straightened(Photo photo, CameraCalibration camera) =>
        camera.For(photo.Colour.Width, photo.Colour.Height) is { } fitting
            ? PhotoStraightener.Run(photo, fitting)
            : throw new InscriptionLabException($"{photo.File}: the photo has another shape or orientation than those of the camera's calibration; use photos as the camera gives them, or calibrate with photos like this one.");
}
