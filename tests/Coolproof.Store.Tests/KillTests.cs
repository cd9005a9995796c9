using System.Diagnostics;
using System.Globalization;
using Coolproof.Notebook.Journal;

namespace Coolproof.Store.Tests;

/// <summary>A process that is killed at any moment loses nothing that it acknowledged.</summary>
public sealed class KillTests(PostgresServer server, ITestOutputHelper output) : IDisposable
{
    private readonly Places _places = new(server);

    public void Dispose() => _places.Dispose();

    [Theory, InlineData(Places.Sqlite), InlineData(Places.Postgres)]
    public Task Killed_twenty_times_it_keeps_all_that_it_acknowledged_and_nothing_twice(string engine) => KillAsync(engine, 20);

    [Theory, InlineData(Places.Sqlite), InlineData(Places.Postgres)]
    [Trait("Suite", "long")]
    public Task Killed_two_hundred_times_it_keeps_all_that_it_acknowledged_and_nothing_twice(string engine) => KillAsync(engine, 200);

    private async Task KillAsync(string engine, int times)
    {
        string place = await _places.FreshAsync(engine);
        // The first opening makes the notebook; a kill while it is made is a test of its own.
        await using (await JournalStore.OpenAsync(place)) { }
        Random chance = new(times);
        HashSet<Guid> acknowledged = [];
        for (int i = 0; i < times; i++) acknowledged.UnionWith(await RunAndKillAsync(place, i, chance.Next(0, 30), chance.Next(0, 30)));
        Assert.True(acknowledged.Count > 5 * times, $"only {acknowledged.Count} acknowledged: the test shows little");

        await using JournalStore store = await JournalStore.OpenAsync(place);
        await store.CheckAsync();
        List<Guid> held = [];
        await foreach (StoredEntry stored in store.ReadAllAsync()) held.Add(stored.Id);
        Assert.Equal(held.Count, held.Distinct().Count());
        Assert.Empty(acknowledged.Except(held));
        output.WriteLine($"{engine}: {times} kills, {acknowledged.Count} acknowledged, {held.Count} held");
    }

    [Fact]
    public async Task Killed_while_the_notebook_is_made_it_is_made_at_the_next_start()
    {
        Random chance = new(3);
        for (int i = 0; i < 8; i++)
        {
            string place = await _places.FreshAsync(Places.Sqlite);
            using (Process child = Start(place, i))
            {
                await Task.Delay(chance.Next(30, 250));
                child.Kill();
                await child.WaitForExitAsync();
            }

            await using JournalStore store = await JournalStore.OpenAsync(place);
            await store.AppendAsync(Entries.Phone, Entries.Laps(20_000, 1));
        }
    }

    // Killed some milliseconds after some acknowledgements: by their number, so that a busy machine makes as many as an idle one.
    private static async Task<List<Guid>> RunAndKillAsync(string place, int seed, int lines, int milliseconds)
    {
        using Process child = Start(place, seed);
        string? first = await child.StandardOutput.ReadLineAsync();
        if (first != "open") throw new InvalidOperationException($"the appender said {first}: {await child.StandardError.ReadToEndAsync()}");
        List<string> said = [];
        for (int i = 0; i < lines; i++) said.Add(await child.StandardOutput.ReadLineAsync() ?? throw new InvalidOperationException(await child.StandardError.ReadToEndAsync()));
        Task<string> rest = child.StandardOutput.ReadToEndAsync();
        await Task.Delay(milliseconds);
        child.Kill(); // SIGKILL
        await child.WaitForExitAsync();
        string text = await rest;
        // What comes after the last line end was cut off by the kill.
        said.AddRange(text[..(text.LastIndexOf('\n') + 1)].Split('\n', StringSplitOptions.RemoveEmptyEntries));
        return [.. said.SelectMany(line => line.Split(' ')).Select(id => Guid.ParseExact(id, "D"))];
    }

    private static Process Start(string place, int seed) => Process.Start(new ProcessStartInfo(
        Environment.ProcessPath!, [.. Environment.ProcessPath!.EndsWith("dotnet", StringComparison.Ordinal) ? [typeof(KillTests).Assembly.Location] : Array.Empty<string>(), Appender.Word, place, seed.ToString(CultureInfo.InvariantCulture)])
    {
        RedirectStandardOutput = true,
        RedirectStandardError = true,
    })!;
}
