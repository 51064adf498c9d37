using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.IO;
using System.Text;
using Xunit;

namespace InscriptionLab.App.Tests.House;

/// <summary>What a run of the program loads, told by the runtime's own loader events (keyword 0x8 of Microsoft-Windows-DotNETRuntime).</summary>
public sealed class LoadedPartsTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void An_examination_without_a_catalogue_loads_no_database_and_no_broker()
    {
        var plain = Loaded("plain", "examine", SampleImages.PathOf(SampleImages.Blank), "--out", _folder.File("out"));
        var keeping = Loaded("keeping", "examine", SampleImages.PathOf(SampleImages.Blank), "--out", _folder.File("out"), "--catalogue", _folder.File("kept.db"));

        Assert.Contains("InscriptionLab.Vision, ", plain, StringComparison.Ordinal);
        Assert.All(
            (IEnumerable<string>)["Microsoft.EntityFrameworkCore, ", "Microsoft.Data.Sqlite, ", "Npgsql, ", "RabbitMQ.Client, ", "Parquet, ", "System.Net.Http, "],
            part => Assert.DoesNotContain(part, plain, StringComparison.Ordinal));
        Assert.Contains("Microsoft.EntityFrameworkCore, ", keeping, StringComparison.Ordinal);
        Assert.Contains("Microsoft.Data.Sqlite, ", keeping, StringComparison.Ordinal);
    }

    private string Loaded(string name, params string[] arguments)
    {
        var events = _folder.File(name + ".nettrace");
        var start = new ProcessStartInfo(Path.Combine(AppContext.BaseDirectory, "inscriptionlab"), arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["DOTNET_EnableEventPipe"] = "1";
        start.Environment["DOTNET_EventPipeConfig"] = "Microsoft-Windows-DotNETRuntime:0x8:4";
        start.Environment["DOTNET_EventPipeOutputPath"] = events;
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        _ = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, errors.Result);

        // Names stand in the file as UTF-16, at even and at odd places.
        var bytes = File.ReadAllBytes(events);
        return Encoding.Unicode.GetString(bytes) + Encoding.Unicode.GetString(bytes, 1, bytes.Length - 1);
    }
}
