using System;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Net;
using System.Net.Sockets;
using Npgsql;
using Xunit;

namespace InscriptionLab.Catalogue.Tests.Services;

/// <summary>A PostgreSQL server of the system's own package, on the loopback address, for the tests of one collection. Tests are skipped, and say so, where the package is not installed.</summary>
public sealed class PostgresServer : IDisposable
{
    private const string Programs = "/usr/lib/postgresql";
    private readonly string? _programs = Directory.Exists(Programs)
        ? Directory.GetDirectories(Programs).Select(folder => Path.Combine(folder, "bin")).Where(folder => File.Exists(Path.Combine(folder, "initdb"))).Order(StringComparer.Ordinal).LastOrDefault()
        : null;

    private readonly string _folder = Directory.CreateTempSubdirectory("inscriptionlab-pg-").FullName;
    private readonly int _port = FreePort();
    private int _databases;
    private bool _running;

    /// <summary>Gives the connection string of a new, empty database; starts the server where it is not running.</summary>
    public string NewDatabase()
    {
        Assert.SkipWhen(_programs is null, "PostgreSQL is not installed here (Debian package postgresql).");
        Start();
        var name = string.Create(CultureInfo.InvariantCulture, $"catalogue_{++_databases}");
        using var connection = new NpgsqlConnection(Connection("postgres"));
        connection.Open();
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // The name is made two lines above.
        command.CommandText = $"CREATE DATABASE {name}";
#pragma warning restore CA2100
        command.ExecuteNonQuery();
        return Connection(name);
    }

    /// <summary>Starts the server, and waits until it answers.</summary>
    public void Start()
    {
        if (_running)
        {
            return;
        }

        var data = Path.Combine(_folder, "data");
        if (!Directory.Exists(data))
        {
            ChildProcess.Run("chmod", ["755", _folder]);
            Directory.CreateDirectory(data);
            if (Environment.UserName == "root")
            {
                ChildProcess.Run("chown", ["postgres:", data]);
            }

            Run("initdb", "-D", data, "-U", "postgres", "-A", "trust", "--no-sync", "-E", "UTF8", "--locale=C.UTF-8");
        }

        var options = string.Create(CultureInfo.InvariantCulture, $"-c listen_addresses=127.0.0.1 -c port={_port} -c unix_socket_directories={data} -c fsync=off -c max_connections=60");
        Run("pg_ctl", "-D", data, "-w", "-l", Path.Combine(data, "log"), "-o", options, "start");
        _running = true;
    }

    /// <summary>Stops the server at once, as a crash would: open transactions are lost, and it recovers at the next start.</summary>
    public void Crash()
    {
        Run("pg_ctl", "-D", Path.Combine(_folder, "data"), "-m", "immediate", "-w", "stop");
        _running = false;
        NpgsqlConnection.ClearAllPools();
    }

    public void Dispose()
    {
        NpgsqlConnection.ClearAllPools();
        if (_running)
        {
            Run("pg_ctl", "-D", Path.Combine(_folder, "data"), "-m", "fast", "-w", "stop");
        }

        Directory.Delete(_folder, recursive: true);
    }

    internal static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    private void Run(string program, params string[] arguments)
    {
        var file = Path.Combine(_programs!, program);
        if (Environment.UserName == "root")
        {
            ChildProcess.Run("runuser", ["-u", "postgres", "--", file, .. arguments]);
        }
        else
        {
            ChildProcess.Run(file, arguments);
        }
    }

    private string Connection(string database) =>
        string.Create(CultureInfo.InvariantCulture, $"Host=127.0.0.1;Port={_port};Database={database};Username=postgres;Maximum Pool Size=8;Timeout=15");
}
