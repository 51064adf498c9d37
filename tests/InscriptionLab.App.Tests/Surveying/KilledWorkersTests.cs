using System;
using System.Diagnostics;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using InscriptionLab.Catalogue.Tests.Services;
using InscriptionLab.Cataloguing;
using Npgsql;
using Xunit;
using Cat = InscriptionLab.Cataloguing.Catalogue;

namespace InscriptionLab.App.Tests.Surveying;

/// <summary>Workers, broker and database as processes of their own, killed by force in the middle of real examinations. Takes minutes: by hand.</summary>
public sealed class KilledWorkersTests : IDisposable
{
    private const int Damaged = 2;
    private const int WorkerKills = 8;
    private readonly TemporaryFolder _folder = new();
    private readonly PostgresServer _postgres = new();
    private readonly RabbitServer _rabbit = new();

    private static int Photos => int.TryParse(Environment.GetEnvironmentVariable("INSCRIPTIONLAB_PHOTOS"), out var count) ? count : 52;

    public void Dispose()
    {
        _rabbit.Dispose();
        _postgres.Dispose();
        _folder.Dispose();
    }

    [Fact(Explicit = true)]
    public async Task Nothing_is_lost_or_doubled_while_workers_broker_and_database_are_killed()
    {
        var (broker, database) = (_rabbit.Address(), _postgres.NewDatabase());
        await FeedAsync(broker, database, Damaged);
        var random = new Random(20260302);
        ProgramProcess Worker(int core) => ProgramProcess.Start(core, Working(broker, database));
        var cancel = TestContext.Current.CancellationToken;
#pragma warning disable CA2000 // Every worker is disposed of where it is killed or has ended.
        ProgramProcess[] workers = [Worker(0), Worker(1)];
#pragma warning restore CA2000
        var (kills, whileWorking) = (0, 0);
        for (; kills < WorkerKills; kills++)
        {
            await Task.Delay(random.Next(1500, 9000), cancel);
            if (kills == 2)
            {
                _postgres.Crash();
                await Task.Delay(random.Next(500, 4000), cancel);
                _postgres.Start();
            }

            if (kills == 5)
            {
                _rabbit.Crash();
                await Task.Delay(random.Next(500, 4000), cancel);
                _rabbit.Start();
            }

            whileWorking += workers[kills % 2].HasEnded ? 0 : 1;
            workers[kills % 2].Dispose();
            workers[kills % 2] = Worker(kills % 2);
        }

        await Task.WhenAll(workers.Select(worker => worker.EndAsync()));
        Array.ForEach(workers, worker => worker.Dispose());
        using var last = Worker(0);
        await last.EndAsync();

        var catalogue = Cat.OpenExisting(database, TimeProvider.System);
        var kept = catalogue.Search.Find(new SearchQuery { Most = int.MaxValue });
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{Photos} photos and {Damaged} damaged files; {whileWorking} of {kills} kills of a worker at work, database and broker killed once each; {kept.Length} kept, {kept.Select(hit => hit.File).Distinct(StringComparer.Ordinal).Count()} of them different, {Count(database, "refusals")} refused"));
        Assert.Equal(Photos, kept.Length);
        Assert.Equal(Photos, kept.Select(hit => hit.File).Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(Damaged, Count(database, "refusals"));
        Assert.Empty(catalogue.Health.Check());
        Assert.StartsWith("0 photos handed to the broker", await FeedAsync(broker, database, 0), StringComparison.Ordinal);
    }

    [Fact(Explicit = true)]
    public async Task Two_workers_of_one_core_each_beside_one()
    {
        var broker = _rabbit.Address();
        var (one, first, steadyOne) = await TimedAsync(broker, 1);
        var (two, second, steadyTwo) = await TimedAsync(broker, 2);

        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{Photos} photos: one worker on one core {one.TotalSeconds:0.0} s, two workers on one core each {two.TotalSeconds:0.0} s, {one / two:0.00} times as fast, start-up included; once every worker has kept its first two photos {steadyOne:0.000} and {steadyTwo:0.000} photos a second, {steadyTwo / steadyOne:0.00} times as fast; {first / Photos} bytes of database a photo; load of the machine {File.ReadAllText("/proc/loadavg").Split(' ')[0]} on {Environment.ProcessorCount} cores"));
        Assert.Equal(first, second, first * 0.2);
    }

    private async Task<(TimeSpan Time, double Bytes, double Steady)> TimedAsync(string broker, int count)
    {
        var database = _postgres.NewDatabase();
        await FeedAsync(broker, database, 0);
        var clock = Stopwatch.StartNew();
        ProgramProcess[] workers = [.. Enumerable.Range(0, count).Select(core => ProgramProcess.Start(core, Working(broker, database)))];
        var said = await Task.WhenAll(workers.Select(worker => worker.EndAsync()));

        // The wait for an empty queue at the end is the same for every worker and no work.
        var time = clock.Elapsed - new InscriptionLab.Surveys.Queue.QueueOptions().Quiet;
        Array.ForEach(workers, worker => worker.Dispose());
        Assert.Equal(Photos, said.Sum(line => int.Parse(line.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture)));
        return (time, Size(database), Steady(database));
    }

    private async Task<string> FeedAsync(string broker, string database, int damaged)
    {
        var photos = _folder.File("photos");
        if (Directory.Exists(photos))
        {
            Directory.Delete(photos, recursive: true);
        }

        ManyPhotos.Fill(photos, Photos, damaged);
        return await ProgramProcess.RunAsync("feed", photos, "--queue", broker, "--catalogue", database);
    }

    private static string[] Working(string broker, string database) => ["worker", "--queue", broker, "--catalogue", database, "--workers", "1", "--until-empty"];

    private static long Count(string database, string table) => Ask(database, $"SELECT count(*) FROM {table}");

    private static long Size(string database) => Ask(database, "SELECT pg_database_size(current_database()) - (SELECT pg_database_size('template1'))");

    /// <summary>
    /// Gives the photos a second between the time at which both workers, or the one, are past start and first photos and the time at which the queue runs empty:
    /// from the fifth photo kept to the last but one, the same for one worker and for two.
    /// </summary>
    private static double Steady(string database)
    {
        const int First = 4;
        var last = Photos - 2;
        var times = new[] { First, last }.Select(place => Ask(database, FormattableString.Invariant($"SELECT added_at FROM examinations ORDER BY added_at LIMIT 1 OFFSET {place}"))).ToArray();
        return (last - First) / ((times[1] - times[0]) / 1000.0);
    }

    private static long Ask(string database, string question)
    {
        using var connection = new NpgsqlConnection(database);
        connection.Open();
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // The question is the test's own.
        command.CommandText = question;
#pragma warning restore CA2100
        return (long)command.ExecuteScalar()!;
    }
}
