using System.Globalization;
using Coolproof.Notebook.Journal;
using NodaTime;

namespace Coolproof.Store.Tests;

/// <summary>A process that appends entries, says each acknowledged one on standard output, and goes on until it is killed.</summary>
internal static class Appender
{
    public const string Word = "append-until-killed";

    public static async Task<int> RunAsync(string place, int seed)
    {
        await using JournalStore store = await JournalStore.OpenAsync(place);
        await Console.Out.WriteLineAsync("open");
        await Task.WhenAll(Enumerable.Range(0, 8).Select(phone => AppendAsync(store, seed * 100 + phone)));
        return 0;
    }

    private static async Task AppendAsync(JournalStore store, int phone)
    {
        Guid device = Entries.Id(phone, 0);
        for (int n = 1; ; n++)
        {
            Entry[] batch = [.. Enumerable.Range(0, 1 + (n % 3)).Select(i => Entries.Lap(Entries.Id(phone, (10 * n) + i), Instant.FromUnixTimeMilliseconds(1_780_000_000_000 + n)))];
            Kept kept = await store.AppendAsync(device, batch);
            // One write for the whole line: a kill must not split it.
            await Console.Out.WriteAsync(string.Join(' ', kept.Ids.Select(id => id.ToString("D", CultureInfo.InvariantCulture))) + "\n");
            await Console.Out.FlushAsync();
            // The phone did not hear of it and sends it again.
            if (n % 5 == 0) await store.AppendAsync(device, batch);
        }
    }
}
