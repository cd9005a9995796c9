using System.Diagnostics;

namespace Coolproof.Bench.Taps;

/// <summary>`coolproof serve` as a process, and a key to it.</summary>
internal sealed class Served : IAsyncDisposable
{
    private readonly Process _process;

    private Served(Process process, Uri address, string cookie, TimeSpan readyAfter, TimeSpan workedUntilReady) =>
        (_process, Address, Cookie, ReadyAfter, WorkedUntilReady) = (process, address, cookie, readyAfter, workedUntilReady);

    /// <summary>The program as people run it, where ./coolproof has built it; else the one built beside this.</summary>
    public static string Program { get; } = FindProgram();

    public Uri Address { get; }

    public string Cookie { get; }

    /// <summary>From the start of the process to the first 200 of /health.</summary>
    public TimeSpan ReadyAfter { get; }

    /// <summary>Processor time that it took until then, of all cores: what it would take alone on the machine, at most.</summary>
    public TimeSpan WorkedUntilReady { get; }

    public static async Task<Served> StartAsync(string home, string place)
    {
        long from = Stopwatch.GetTimestamp();
        Process process = Process.Start(new ProcessStartInfo("dotnet", [Program, "serve", "--port", "0", "--store", place])
        {
            RedirectStandardOutput = true,
            Environment = { ["XDG_DATA_HOME"] = home },
        })!;
        string said = await process.StandardOutput.ReadLineAsync() ?? throw new InvalidOperationException("it did not serve");
        Uri address = new(said[said.IndexOf("http", StringComparison.Ordinal)..]);
        using HttpClient client = new(new SocketsHttpHandler { AllowAutoRedirect = false, UseCookies = false });
        while (!(await client.GetAsync(new Uri(address, "/health"))).IsSuccessStatusCode) await Task.Delay(5);
        TimeSpan ready = Stopwatch.GetElapsedTime(from);
        TimeSpan worked = process.TotalProcessorTime;
        using HttpResponseMessage entered = await client.GetAsync(address);
        return new Served(process, new Uri(address, "/"), entered.Headers.GetValues("Set-Cookie").Single().Split(';')[0], ready, worked);
    }

    private static string FindProgram()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            string built = Path.Combine(folder.FullName, ".build", "app", "coolproof.dll");
            if (File.Exists(built)) return built;
        }

        return Path.Combine(AppContext.BaseDirectory, "coolproof.dll");
    }

    public HttpClient Client()
    {
        HttpClient client = new(new SocketsHttpHandler { UseCookies = false }) { BaseAddress = Address };
        client.DefaultRequestHeaders.Add("Cookie", Cookie);
        return client;
    }

    public async ValueTask DisposeAsync()
    {
        _process.Kill();
        await _process.WaitForExitAsync();
        _process.Dispose();
    }
}
