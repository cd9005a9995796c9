using System.Diagnostics;
using System.Globalization;
using Coolproof.Notebook.Journal;
using Coolproof.Store;
using NodaTime;

namespace Coolproof.Bench.Taps;

/// <summary>A notebook of 1,000 days of eight runs with three shots each, about 100,000 entries: how long it takes to open, and the pit table to come.</summary>
internal static class ThousandDays
{
    private const int Days = 1000;
    private const int RunsADay = 8;
    private const int Looks = 30;

    public static async Task<string> MeasureAsync(string folder)
    {
        string file = Path.Combine(folder, "days.coolproof");
        long entries = await WriteAsync(file);
        await using Served served = await Served.StartAsync(folder, file);
        using HttpClient client = served.Client();
        List<double> times = [];
        int bytes = 0;
        for (int look = 0; look <= Looks; look++)
        {
            long from = Stopwatch.GetTimestamp();
            bytes = (await client.GetByteArrayAsync("/")).Length;
            if (look > 0) times.Add(Stopwatch.GetElapsedTime(from).TotalMilliseconds);
            else Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"first pit table after {Stopwatch.GetElapsedTime(from).TotalMilliseconds:0} ms"));
        }

        double[] sorted = [.. times.Order()];
        return string.Create(CultureInfo.InvariantCulture, $"{Days} days, {entries} entries: ready {served.ReadyAfter.TotalMilliseconds:0} ms after the start of the process ({served.WorkedUntilReady.TotalMilliseconds:0} ms of processor time); pit table of {bytes / 1000.0:0.0} kB in {Taps.At(sorted, 0.5):0.0} ms (half), {sorted[^1]:0.0} ms (worst of {Looks})");
    }

    private static async Task<long> WriteAsync(string file)
    {
        await using JournalStore store = await JournalStore.OpenAsync(file);
        Guid device = Guid.CreateVersion7();
        Guid[] options = [.. Enumerable.Range(0, 6).Select(_ => Guid.CreateVersion7())];
        Instant now = Instant.FromUtc(2023, 3, 1, 16, 0);
        List<Entry> entries = [];
        void Say(string kind, Guid about, params (string, object?)[] fields) => entries.Add(new Entry(Guid.CreateVersion7(), kind, now, about, null, EntryBody.Of(fields)));
        for (int i = 0; i < options.Length; i++) Say(EntryKind.OptionSet, options[i], ("name", $"option {i + 1}"));
        for (int d = 0; d < Days; d++)
        {
            Guid day = Guid.CreateVersion7();
            now = Instant.FromUtc(2023, 3, 1, 16, 0) + Duration.FromDays(d);
            Say(EntryKind.DaySet, day, ("date", now.InUtc().Date.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture)));
            Say(EntryKind.Weather, Guid.CreateVersion7(), ("day", day), ("airC", 20 + (d % 10)));
            for (int r = 0; r < RunsADay; r++)
            {
                Guid run = Guid.CreateVersion7();
                Say(EntryKind.RunBegin, run, ("day", day), ("option", options[r % options.Length]), ("number", r + 1));
                Say(EntryKind.RunCountdown, run, ("seconds", 3), ("driveS", 360));
                now += Duration.FromMinutes(7);
                Say(EntryKind.RunStop, run, ("by", "tap"));
                now += Duration.FromSeconds(9);
                Say(EntryKind.RunHalt, run);
                for (int s = 0; s < 3; s++)
                {
                    Guid shot = Guid.CreateVersion7();
                    now += Duration.FromSeconds(8);
                    Say(EntryKind.Shot, shot, ("run", run));
                    Say(EntryKind.ShotRead, shot, ("shot", shot), ("value", 80 - s + (r % 5)), ("unit", "c"));
                }

                Say(EntryKind.RunFan, run, ("when", "after"), ("turning", true));
                Say(EntryKind.RunSet, run, ("laps", 14));
                now += Duration.FromMinutes(20);
            }
        }

        await store.AppendAsync(device, entries);
        return entries.Count;
    }
}
