using Coolproof.Bench.Taps;

// What a tap waits for on fifty phones at once, and how long a racer's life in days takes to open and to show. The real server, as a process of its own, synced to disk.
// dotnet run -c Release --project bench/Coolproof.Bench.Taps [postgres://…]
Console.WriteLine($"program: {Served.Program}; load {File.ReadAllText("/proc/loadavg").Trim()} on {Environment.ProcessorCount} cores");
var folder = Directory.CreateTempSubdirectory("coolproof-bench-").FullName;
try
{
    foreach (var place in (string[])[Path.Combine(folder, "taps.coolproof"), .. args])
    {
        await using var served = await Served.StartAsync(folder, place);
        var engine = place.Contains("://", StringComparison.Ordinal) ? "PostgreSQL" : "SQLite";
        Console.WriteLine(await Taps.MeasureAsync(served, $"{engine}, 50 phones, one tap each half second", TimeSpan.FromMilliseconds(500), 20));
        Console.WriteLine(await Taps.MeasureAsync(served, $"{engine}, 50 phones, each as fast as it is answered", TimeSpan.Zero, 100));
    }
    Console.WriteLine(await ThousandDays.MeasureAsync(folder));
}
finally
{
    Directory.Delete(folder, recursive: true);
}
