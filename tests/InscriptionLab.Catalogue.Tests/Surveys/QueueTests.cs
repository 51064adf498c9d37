using System;
using System.Collections.Concurrent;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using InscriptionLab.Catalogue.Tests.Cataloguing;
using InscriptionLab.Catalogue.Tests.Services;
using InscriptionLab.Outcomes;
using InscriptionLab.Surveys;
using InscriptionLab.Surveys.Queue;
using Xunit;
using Cat = InscriptionLab.Cataloguing.Catalogue;

namespace InscriptionLab.Catalogue.Tests.Surveys;

/// <summary>A survey over a real broker and a real database, both killed while it runs.</summary>
[Collection(PostgresTests.Name)]
public sealed class QueueTests(PostgresServer postgres, RabbitServer rabbit) : IDisposable
{
    private const int Photos = 240;
    private const int Damaged = 6;
    private static readonly QueueOptions Patient = new() { Wait = TimeSpan.FromMilliseconds(300), Quiet = TimeSpan.FromSeconds(2) };
    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public async Task Nothing_is_lost_and_nothing_doubled_while_workers_broker_and_database_are_killed()
    {
        var broker = rabbit.Address();
        var address = postgres.NewDatabase();
        var catalogue = Cat.Open(address, TimeProvider.System);
        var options = Patient with { Name = "survey-" + Guid.NewGuid().ToString("N") };
        MakePhotos();
        var cancel = TestContext.Current.CancellationToken;
        var (sent, _) = await new QueueFeeder(broker, options, catalogue, Entries.Versions).FeedAsync(Request(), new SurveyOptions(), _ => { }, cancel);
        Assert.Equal(Photos + Damaged, sent);

        var begun = new ConcurrentBag<string>();
        QueueWorker Worker() => new(broker, options, catalogue, Entries.Versions, () => new KeepingExaminer(begun), TimeProvider.System);
        var steady = Worker().RunAsync(2, untilEmpty: true, _ => { }, cancel);
        for (var kill = 0; kill < 3; kill++)
        {
            using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancel);
            var doomed = Worker().RunAsync(2, untilEmpty: false, _ => { }, stop.Token);
            await Task.Delay(700, cancel);
            await stop.CancelAsync();
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() => doomed);
        }

        postgres.Crash();
        await Task.Delay(500, cancel);
        postgres.Start();
        await Task.Delay(500, cancel);
        rabbit.Crash();
        await Task.Delay(500, cancel);
        rabbit.Start();
        await steady;
        await Worker().RunAsync(2, untilEmpty: true, _ => { }, cancel);

        using var context = catalogue.NewContext();
        TestContext.Current.TestOutputHelper?.WriteLine($"{begun.Count} examinations begun for {Photos + Damaged} photos");
        Assert.Equal(Photos, context.Examinations.Count());
        Assert.Equal(Photos, context.Photos.Select(photo => photo.Sha256).Distinct().Count());
        Assert.Equal(Damaged, context.Refusals.Count());
        Assert.Empty(catalogue.Health.Check());
        var aside = await AsideAsync(broker, options, cancel);
        Assert.Equal(Damaged, aside.Select(letter => letter.File).Distinct(StringComparer.Ordinal).Count());
        Assert.All(aside, letter => Assert.Contains("cut off", letter.Reason, StringComparison.Ordinal));
        Assert.Equal((0, Photos), await FedAgain(broker, options, catalogue, cancel));
    }

    [Fact]
    public async Task A_broker_address_that_is_none_is_refused_in_one_sentence()
    {
        var catalogue = Cat.Open(_scratch.At("catalogue.db"), TimeProvider.System);
        var worker = new QueueWorker("localhost", Patient, catalogue, Entries.Versions, () => new KeepingExaminer([]), TimeProvider.System);

        Assert.Contains("amqp://", (await Assert.ThrowsAsync<InscriptionLabException>(() => worker.RunAsync(1, true, _ => { }, TestContext.Current.CancellationToken))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_no_waiting_mends_at_the_broker_is_told_at_once_and_without_the_password()
    {
        var broker = rabbit.Address();
        var catalogue = Cat.Open(_scratch.At("catalogue.db"), TimeProvider.System);
        var options = Patient with { Name = "survey-" + Guid.NewGuid().ToString("N") };
        var cancel = TestContext.Current.CancellationToken;
        QueueWorker Worker(string address, QueueOptions own) => new(address, own, catalogue, Entries.Versions, () => new KeepingExaminer([]), TimeProvider.System);

        var refused = await Assert.ThrowsAsync<InscriptionLabException>(() => Worker(broker.Replace(":guest@", ":secret@", StringComparison.Ordinal), options).RunAsync(1, true, _ => { }, cancel));
        Assert.Contains("refuses the user or the password", refused.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("secret", refused.Message, StringComparison.Ordinal);

        await Worker(broker, options).RunAsync(1, true, _ => { }, cancel);
        var other = await Assert.ThrowsAsync<InscriptionLabException>(() => Worker(broker, options with { MostDeliveries = 7 }).RunAsync(1, true, _ => { }, cancel));
        Assert.Contains(options.Photos, other.Message, StringComparison.Ordinal);
        Assert.Contains("of another kind", other.Message, StringComparison.Ordinal);
    }

    /// <summary>Feeds the same folder again, damaged photos taken away: what the catalogue has is not sent.</summary>
    private async Task<(int Sent, int Known)> FedAgain(string broker, QueueOptions options, Cat catalogue, CancellationToken cancel)
    {
        foreach (var file in Directory.GetFiles(_scratch.At("photos"), "damaged-*"))
        {
            File.Delete(file);
        }

        return await new QueueFeeder(broker, options, catalogue, Entries.Versions).FeedAsync(Request(), new SurveyOptions(), _ => { }, cancel);
    }

    private SurveyRequest Request() => new([_scratch.At("photos")], _scratch.At("out"), 1, null, string.Empty);

    private void MakePhotos()
    {
        Directory.CreateDirectory(_scratch.At("photos"));
        for (var number = 0; number < Photos; number++)
        {
            File.WriteAllText(_scratch.At("photos", string.Create(CultureInfo.InvariantCulture, $"{number:000}.jpg")), string.Create(CultureInfo.InvariantCulture, $"agrees Maker {number}"));
        }

        for (var number = 0; number < Damaged; number++)
        {
            File.WriteAllText(_scratch.At("photos", string.Create(CultureInfo.InvariantCulture, $"damaged-{number}.jpg")), string.Create(CultureInfo.InvariantCulture, $"damaged {number}"));
        }
    }

    private static async Task<ConcurrentBag<(string File, string Reason)>> AsideAsync(string broker, QueueOptions options, CancellationToken cancel)
    {
        var letters = new ConcurrentBag<(string, string)>();
        await using var connection = await PhotoQueue.ConnectAsync(new Uri(broker), cancel);
        await using var channel = await connection.CreateChannelAsync(cancellationToken: cancel);
        while (await channel.BasicGetAsync(options.Aside, autoAck: true, cancel) is { } letter)
        {
            var reason = System.Text.Encoding.UTF8.GetString((byte[])letter.BasicProperties.Headers!["reason"]!);
            letters.Add((PhotoJob.From(letter.Body.Span)!.File, reason));
        }

        return letters;
    }

    /// <summary>Takes a little time for each photo and gives an entry to keep.</summary>
    private sealed class KeepingExaminer(ConcurrentBag<string> begun) : IPhotoExaminer
    {
        private readonly PretendExaminer _inner = new(begun);

        public PhotoResult Examine(SurveyFile file, CancellationToken cancel)
        {
            var result = _inner.Examine(file, cancel);
            cancel.WaitHandle.WaitOne(TimeSpan.FromMilliseconds(30));
            cancel.ThrowIfCancellationRequested();
            var text = File.ReadAllText(file.Path);
            var entry = Entries.Of(file.Path, result.Text, key: file.ObjectKey);
            return result with { Entry = entry with { Photo = entry.Photo with { Sha256 = Entries.Hash(text) } } };
        }

        public void Dispose() => _inner.Dispose();
    }
}
