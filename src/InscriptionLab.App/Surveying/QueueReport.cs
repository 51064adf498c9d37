using System;
using System.Globalization;
using System.IO;
using System.Threading;
using InscriptionLab.App.Cataloguing;
using InscriptionLab.App.Examining;
using InscriptionLab.Cataloguing;
using InscriptionLab.Surveys;
using InscriptionLab.Surveys.Queue;

namespace InscriptionLab.App.Surveying;

/// <summary>A survey over several machines: one program lists the photos, any number of workers examine them.</summary>
/// <param name="composition">The program.</param>
/// <param name="output">Results.</param>
/// <param name="error">What is waited for.</param>
internal sealed class QueueReport(Composition composition, TextWriter output, TextWriter error)
{
    /// <summary>Hands the photos of folders to the broker.</summary>
    internal void Feed(SurveyRequest request, string broker, string catalogueAddress, string? reference, CancellationToken cancel)
    {
        var references = ReferenceSource.Load(reference);
        var catalogue = Catalogue.Open(catalogueAddress, composition.Clock);
        var versions = new EntryMaker(composition.Models, references.List, composition.Clock).Versions();
        var (sent, known) = new QueueFeeder(broker, new QueueOptions(), catalogue, versions).FeedAsync(request, new SurveyOptions(), error.WriteLine, cancel).GetAwaiter().GetResult();
        output.WriteLine($"{sent} photos handed to the broker, {known} known already or with the bytes of another; start ./lab worker on each machine");
    }

    /// <summary>Works until stopped, or until the queue stays empty.</summary>
    internal void Work(string broker, string catalogueAddress, string? reference, int atATime, bool untilEmpty, CancellationToken cancel)
    {
        var references = ReferenceSource.Load(reference);
        composition.WorkSideBySide(atATime);
        var catalogue = Catalogue.Open(catalogueAddress, composition.Clock);
        var versions = new EntryMaker(composition.Models, references.List, composition.Clock).Versions();
        var start = composition.Clock.GetTimestamp();
        var worker = new QueueWorker(broker, new QueueOptions(), catalogue, versions, () => new ProgramExaminer(composition, references.List, new SurveyOptions().ThumbnailSide), composition.Clock);
        worker.RunAsync(atATime, untilEmpty, error.WriteLine, cancel).GetAwaiter().GetResult();
        var seconds = composition.Clock.GetElapsedTime(start).TotalSeconds;
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{worker.Kept} photos kept in {seconds:0.0} s ({worker.Kept / Math.Max(1e-3, seconds):0.00} a second)"));
    }
}
