using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using Npgsql;

[assembly: AssemblyFixture(typeof(Coolproof.Store.Tests.PostgresServer))]

namespace Coolproof.Store.Tests;

/// <summary>
/// A real PostgreSQL server (Debian package postgresql) in a temporary folder on a free port of 127.0.0.1, for as long as the tests run. PostgreSQL refuses to run as root; then it
/// runs as the user that its package made.
/// </summary>
public sealed class PostgresServer : IAsyncLifetime
{
    private const string User = "pit";
    private const string Password = "p@ss/word: 1";
    private readonly string _folder = Path.Combine(Path.GetTempPath(), "coolproof-pg-" + Guid.NewGuid().ToString("N")[..8]);
    private int _port;
    private int _databases;

    /// <summary>Where the program files are; fails with what to do when there are none.</summary>
    private static string Programs { get; } = FindPrograms();

    public async ValueTask InitializeAsync()
    {
        Directory.CreateDirectory(_folder);
        string passwordFile = Path.Combine(_folder, "password");
        await File.WriteAllTextAsync(passwordFile, Password);
        await RunAsync("chmod", "755", _folder);
        if (IsRoot) await RunAsync("chown", "-R", "postgres", _folder);
        await RunAsUserAsync(Path.Combine(Programs, "initdb"), "-D", Data, "-U", User, "-A", "scram-sha-256", "--pwfile", passwordFile, "-E", "UTF8", "--locale=C.UTF-8", "--no-sync");
        _port = FreePort();
        await StartAsync();
    }

    /// <summary>Starts it, as after a crash.</summary>
    public Task StartAsync() => RunAsUserAsync(
        Path.Combine(Programs, "pg_ctl"), "-D", Data, "-w", "-t", "60", "-l", Path.Combine(_folder, "log"),
        "-o", $"-p {_port.ToString(CultureInfo.InvariantCulture)} -c listen_addresses=127.0.0.1 -c unix_socket_directories='' -c fsync=on -c max_connections=200", "start");

    /// <summary>Stops it at once, without a checkpoint.</summary>
    public Task StopAtOnceAsync() => RunAsUserAsync(Path.Combine(Programs, "pg_ctl"), "-D", Data, "-m", "immediate", "stop");

    /// <summary>The address of a fresh, empty database.</summary>
    public async Task<string> FreshAsync()
    {
        string name = "pit" + Interlocked.Increment(ref _databases).ToString(CultureInfo.InvariantCulture);
        await DoAsync("postgres", $"CREATE DATABASE {name}");
        return Url(name);
    }

    /// <summary>The address of a database.</summary>
    public string Url(string database, string? password = null) =>
        $"postgres://{User}:{Uri.EscapeDataString(password ?? Password)}@127.0.0.1:{_port.ToString(CultureInfo.InvariantCulture)}/{database}";

    /// <summary>Runs SQL in a database.</summary>
    public async Task DoAsync(string database, string sql)
    {
        await using NpgsqlConnection connection = new(Settings(database));
        await connection.OpenAsync();
        await using NpgsqlCommand command = new(sql, connection);
        await command.ExecuteNonQueryAsync();
    }

    /// <summary>Settings of a connection to a database.</summary>
    public string Settings(string database) => new NpgsqlConnectionStringBuilder
    {
        Host = "127.0.0.1",
        Port = _port,
        Username = User,
        Password = Password,
        Database = database,
        Pooling = false,
    }.ConnectionString;

    public async ValueTask DisposeAsync()
    {
        await StopAtOnceAsync();
        Directory.Delete(_folder, recursive: true);
    }

    private string Data => Path.Combine(_folder, "data");

    private static bool IsRoot => Environment.UserName == "root";

    private static string FindPrograms()
    {
        string? newest = Directory.Exists("/usr/lib/postgresql")
            ? Directory.GetDirectories("/usr/lib/postgresql").Select(folder => Path.Combine(folder, "bin")).Where(bin => File.Exists(Path.Combine(bin, "initdb"))).Max()
            : null;
        return newest ?? throw new InvalidOperationException("These tests need PostgreSQL: apt-get install postgresql (./test does so by itself).");
    }

    private static int FreePort()
    {
        using TcpListener listener = new(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    private static Task RunAsUserAsync(string program, params string[] arguments) =>
        IsRoot ? RunAsync("runuser", ["-u", "postgres", "--", program, .. arguments]) : RunAsync(program, arguments);

    private static async Task RunAsync(string program, params string[] arguments)
    {
        ProcessStartInfo start = new(program, arguments) { WorkingDirectory = "/" };
        // The server inherits what it is given, and would keep a pipe open for as long as it runs.
        start.RedirectStandardOutput = start.RedirectStandardError = !arguments.Contains("start");
        if (!start.RedirectStandardOutput) start = new ProcessStartInfo("/bin/sh", ["-c", "exec \"$0\" \"$@\" >/dev/null 2>&1", program, .. arguments]) { WorkingDirectory = "/" };
        using Process process = Process.Start(start)!;
        Task<string> said = start.RedirectStandardOutput ? process.StandardOutput.ReadToEndAsync() : Task.FromResult("");
        Task<string> complained = start.RedirectStandardError ? process.StandardError.ReadToEndAsync() : Task.FromResult("");
        await process.WaitForExitAsync();
        if (process.ExitCode != 0) throw new InvalidOperationException($"{program} {string.Join(' ', arguments)} ended with {process.ExitCode}: {await said} {await complained}");
    }
}
