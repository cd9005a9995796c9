using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using Coolproof.Notebook.Journal;
using Coolproof.Store;

namespace Coolproof.EndToEnd.Support;

/// <summary>The laptop on the pit table: a real `coolproof serve` on a store of its own, that can be stopped, killed and started again at the same address.</summary>
sealed class Bench : IAsyncDisposable
{
    readonly string folder = Directory.CreateTempSubdirectory("coolproof-bench-").FullName;
    readonly int port = FreePort();
    IReadOnlyList<string> arguments = [];
    Process? process;

    /// <summary>Where it answers, such as http://127.0.0.1:4711.</summary>
    public string Origin => $"http://127.0.0.1:{port}";

    /// <summary>The address that lets this machine's browsers in.</summary>
    public string Entrance { get; private set; } = "";

    /// <summary>Path of a file of this test, which goes with it.</summary>
    public string File(string name) => Path.Combine(folder, name);

    /// <summary>Starts it.</summary>
    public static Task<Bench> StartAsync() => StartAsync(_ => []);

    /// <summary>Starts it.</summary>
    /// <param name="more">What else is typed after `coolproof serve`.</param>
    public static async Task<Bench> StartAsync(Func<Bench, IReadOnlyList<string>> more)
    {
        var bench = new Bench();
        bench.arguments = more(bench);
        await bench.GoOnAsync();
        return bench;
    }

    /// <summary>Starts it (again) and waits until it is ready.</summary>
    public async Task GoOnAsync()
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "coolproof.dll"), "serve", "--port", $"{port}", "--store", Path.Combine(folder, "notebook.coolproof"), .. arguments])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            Environment = { ["XDG_DATA_HOME"] = folder, ["DISPLAY"] = "", ["WAYLAND_DISPLAY"] = "" },
        };
        process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        using var limit = new CancellationTokenSource(TimeSpan.FromMinutes(1));
        while (await process.StandardOutput.ReadLineAsync(limit.Token) is { } line)
        {
            if (line.Split(' ').FirstOrDefault(word => word.StartsWith("http", StringComparison.Ordinal)) is { } address) Entrance = address;
            if (line.Contains("Ctrl+C", StringComparison.Ordinal)) return;
        }
        throw new InvalidOperationException($"It does not serve: {await error}");
    }

    /// <summary>Ends it as an empty battery does (SIGKILL).</summary>
    public void Kill()
    {
        if (process is null) return;
        if (!process.HasExited) process.Kill();
        process.WaitForExit();
        process.Dispose();
        process = null;
    }

    /// <summary>What its store adds up to, read beside it.</summary>
    public async Task<PitNotebook> NotebookAsync() => PitNotebook.Of(await EntriesAsync());

    /// <summary>All entries of its store.</summary>
    public async Task<List<StoredEntry>> EntriesAsync()
    {
        await using var store = await JournalStore.OpenAsync(Path.Combine(folder, "notebook.coolproof"));
        return await store.ReadAllAsync().ToListAsync();
    }

    /// <summary>A photo of its store; null when it is not there.</summary>
    public async Task<StoredPhoto?> PhotoAsync(Guid id)
    {
        await using var store = await JournalStore.OpenAsync(Path.Combine(folder, "notebook.coolproof"));
        return await store.GetPhotoAsync(id);
    }

    /// <summary>Keeps entries as another device would.</summary>
    public async Task KeepAsync(Guid device, params Entry[] entries)
    {
        await using var store = await JournalStore.OpenAsync(Path.Combine(folder, "notebook.coolproof"));
        await store.AppendAsync(device, entries);
    }

    public ValueTask DisposeAsync()
    {
        Kill();
        Directory.Delete(folder, recursive: true);
        return ValueTask.CompletedTask;
    }

    internal static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
