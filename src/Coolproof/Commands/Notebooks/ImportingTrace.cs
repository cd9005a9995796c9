using System.Globalization;
using Coolproof.Evidence.Words;
using Coolproof.Json;
using Coolproof.Loggers;
using Coolproof.Notebook.Journal;
using Coolproof.Pages.Forms;
using Coolproof.Pages.Shown;
using Coolproof.Screen;
using Coolproof.Store;
using Coolproof.Traces.Import;
using Coolproof.Traces.Kept;
using Coolproof.Web;
using NodaTime;

namespace Coolproof.Commands.Notebooks;

/// <summary>What `coolproof import --as trace` was asked.</summary>
/// <param name="File">Path of the logger's file; "-" for standard input.</param>
/// <param name="Day">Name, date or UUID of its day; null: the notebook's only one.</param>
/// <param name="Wish">What is said of its layout; null: nothing.</param>
/// <param name="Take">Whether to take its readings where it fits for sure.</param>
/// <param name="DryRun">Whether to keep nothing.</param>
/// <param name="Store">The notebook's place; null: in the data folder.</param>
/// <param name="Json">Whether to print JSON.</param>
internal sealed record ImportTraceRequest(string File, string? Day, LayoutWish? Wish, bool Take, bool DryRun, string? Store, bool Json);

/// <summary>`coolproof import --as trace` from the file to the exit code.</summary>
internal sealed class ImportingTrace(Terminal terminal)
{
    /// <summary>Reads the trace, keeps it, says where its runs lie.</summary>
    public async Task<int> RunAsync(ImportTraceRequest request, CancellationToken cancel)
    {
        var place = StoreOption.Place(request.Store);
        if (StoreOption.IsFile(place) && !File.Exists(place)) return Refuse($"there is no notebook {place}, so no day that a trace could belong to. Name one with --store.");
        if (request.File != TableFile.StandardInput && !File.Exists(request.File)) return Refuse($"there is no file {request.File}.");
        await using var store = await JournalStore.OpenAsync(place, TimeProvider.System, cancel);
        var notebook = await ReadAsync(store, cancel);
        var day = request.Day is { } asked ? DayNamed.Of(notebook, asked, terminal) : notebook.Days is [var only] ? only : null;
        if (day is null) return request.Day is not null ? Exit.BadInput : Refuse($"the notebook has {notebook.Days.Count} days; name the trace's with --day.");
        var dataFolder = DataFolder.Of(Environment.GetEnvironmentVariable);
        // Where nothing is to be kept, its columns go to a folder that is deleted.
        var folder = request.DryRun ? Directory.CreateTempSubdirectory("coolproof-trace").FullName : FoldersBeside.Of(place, dataFolder).Loggers;
        try
        {
            await using var stream = request.File == TableFile.StandardInput ? Console.OpenStandardInput() : new FileStream(request.File, FileMode.Open, FileAccess.Read, FileShare.Read, 0, FileOptions.SequentialScan);
            var brought = BroughtLog.Of(stream, folder, notebook, request.Wish, cancel);
            return await KeepAsync(request, brought, store, notebook, day, new LoggerFiles(folder), dataFolder, cancel);
        }
        catch (TraceRefusedException wrong)
        {
            return Refuse($"{request.File}: {wrong.Problem}. Nothing was kept.");
        }
        finally
        {
            if (request.DryRun) Directory.Delete(folder, true);
        }
    }

    async Task<int> KeepAsync(ImportTraceRequest request, BroughtLog brought, JournalStore store, PitNotebook notebook, NotedDay day, LoggerFiles files, string dataFolder, CancellationToken cancel)
    {
        var there = notebook.TracesOf(day.Id).FirstOrDefault(trace => trace.Sha256 == brought.Sha256);
        using var trace = files.Open(brought.Sha256) ?? throw new IOException($"{brought.Sha256} was kept and can't be read again.");
        var grid = files.GridOf(brought.Sha256, trace);
        IReadOnlyList<TraceFit> fits = there?.AheadMs is { } ms ? [TraceFit.At(notebook, day, trace, grid, ms / 1000)] : [.. TraceFit.Of(notebook, day, trace, grid).Where(fit => fit.Runs.Count > 0)];
        var name = request.File == TableFile.StandardInput ? "a logger's trace" : Path.GetFileName(request.File);
        var id = there?.Id ?? Guid.CreateVersion7();
        List<Said> said = there is null ? [new(EntryKind.TraceSet, id, brought.Body(day.Id, name))] : [];
        var channels = TracedReadings.CanChannels(trace);
        var taken = 0;
        if (request.Take && there?.Taken != true && fits.Count > 0 && fits[0].Sure && channels.Count > 0)
        {
            var noted = there ?? new NotedTrace(id, brought.Body(day.Id, name), SystemClock.Instance.GetCurrentInstant(), false);
            said.AddRange(TracedReadings.Take(notebook, noted, trace, fits[0], channels[0], Guid.CreateVersion7));
            taken = said.Count(one => one.Kind == EntryKind.ShotRead);
        }
        if (!request.DryRun && said.Count > 0)
        {
            var now = SystemClock.Instance.GetCurrentInstant();
            foreach (var batch in said.Select((one, i) => one.At(now + Duration.FromMilliseconds(i))).Chunk(EntryReader.LargestBatch)) await store.AppendAsync(MachineDevice.Of(dataFolder), batch, cancel);
        }
        IReadOnlyList<TracedLoad> loads = fits.Count > 0 ? TracedLoad.Of(trace, fits[0]) : [];
        return Tell(request, brought, trace, fits, loads, there is not null, taken, TimeWords.Day(day), store.Says);
    }

    static async Task<PitNotebook> ReadAsync(JournalStore store, CancellationToken cancel)
    {
        var held = new List<StoredEntry>();
        await foreach (var entry in store.ReadAllAsync(0, cancel)) held.Add(entry);
        return PitNotebook.Of(held);
    }

    int Tell(ImportTraceRequest request, BroughtLog brought, KeptTrace trace, IReadOnlyList<TraceFit> fits, IReadOnlyList<TracedLoad> loads, bool there, int taken, string day, string store)
    {
        var read = brought.Read;
        var fit = fits.Count > 0 ? fits[0] : null;
        if (request.Json)
        {
            terminal.Out.Write(NotebookJson.Text(new ImportTraceJson(
                NotebookJson.CurrentVersion, request.File, store, request.DryRun, there, day, brought.Sha256, read.Rows, (read.LastUs - read.FirstUs) / 1e6,
                [.. trace.About.Channels.Select(channel => new TraceChannelJson(channel.Name, channel.Unit, channel.Measures.ToString().ToLowerInvariant()))], read.Layout.Guessed, read.Problems.Count,
                [.. read.Problems.First.Select(problem => problem.ToString())],
                [.. fits.Select(one => new TraceFitJson(Math.Round(one.AheadS, 3), Math.Round(one.Odds, 4), one.Sure, [.. one.Runs.Select(run => new TracedRunJson(TimeWords.Run(run.Run), Math.Round(run.GoS, 3), Rounded(run.StopS), Rounded(run.HaltS), run.Seen))]))], taken,
                [.. loads.Select(load => new TracedLoadJson(TimeWords.Run(load.Run), load.Channel, Math.Round(load.Current.MeanA, 2), Math.Round(load.Current.RmsA, 2), load.OfPack ? Math.Round(load.Current.ChargeMah) : null))])));
            terminal.Out.Flush();
            return Exit.Done;
        }
        var kept = request.DryRun ? "Would be kept" : there ? "Kept already" : "Kept whole";
        terminal.Out.Write(string.Create(CultureInfo.InvariantCulture, $"{kept}: {read.Rows:#,0} rows over {TimeWords.MinutesSeconds((read.LastUs - read.FirstUs) / 1e6)} min, {string.Join(", ", trace.About.Channels.Select(channel => Cells.Clean($"{channel.Name} {channel.Unit}".Trim())))}\n"));
        if (brought.Remembered) terminal.Out.Write("Its layout is that of an earlier file with the same header.\n");
        foreach (var guess in read.Layout.Guessed) terminal.Out.Write($"  {Cells.Clean(guess)}\n");
        foreach (var problem in read.Problems.First) terminal.Out.Write($"  {Cells.Clean(problem.ToString())}\n");
        if (read.Problems.Count > read.Problems.First.Count) terminal.Out.Write($"  and {read.Problems.Count - read.Problems.First.Count} more\n");
        terminal.Out.Write(fit is null ? $"It fits no run of {Cells.Clean(day)}: set its clock on its page.\n"
            : $"{(fit.Sure ? "It holds" : "It may hold, but that isn't sure,")} {TimeWords.Count(fit.Runs.Count, "run")} of {Cells.Clean(day)}, {Odds.Say(fit.Odds)}; go or stop is seen in {fit.Runs.Count(run => run.Seen)}\n");
        foreach (var load in loads) terminal.Out.Write($"  {Cells.Clean($"{TimeWords.Run(load.Run)}: {load.Words()} ({load.Channel})")}\n");
        terminal.Out.Write(taken > 0 ? $"{(request.DryRun ? "Would be taken" : "Taken")}: {TimeWords.Count(taken, "reading")}\n"
            : request.Take ? "No readings were taken: there are some already, it doesn't fit for sure, or no channel is a temperature. Look at its page.\n" : "Next: look at it on the day's page, and take its readings there, or say --take.\n");
        terminal.Out.Flush();
        return Exit.Done;
    }

    static double? Rounded(double? seconds) => seconds is { } known ? Math.Round(known, 3) : null;

    int Refuse(string why)
    {
        terminal.Error.WriteLine($"coolproof: {Cells.Clean(why)}");
        return Exit.BadInput;
    }
}
