using Coolproof.Commands.Notebooks;
using Coolproof.Evidence;
using Coolproof.Json;
using Coolproof.Notebook;
using Coolproof.Notebook.Journal;
using Coolproof.Photos;
using Coolproof.Rehearsal;
using Coolproof.Reports;
using Coolproof.Screen;
using Coolproof.Store;
using Coolproof.Words;
using NodaTime;

namespace Coolproof.Commands;

/// <summary>What `coolproof report` was asked.</summary>
/// <param name="Table">A readings table; null: a day of the notebook.</param>
/// <param name="Day">Name, date or UUID of the day; null: a readings table.</param>
/// <param name="Store">The notebook's place; null: in the data folder.</param>
/// <param name="Out">The folder to be written.</param>
/// <param name="Question">The question in words; null: the day's own.</param>
/// <param name="AmbientC">Fair air, °C; null: the question's, or the median noted.</param>
/// <param name="DriveS">Fair seconds of driving; null: the question's, or the median.</param>
/// <param name="SameWithinK">Half-width of the "same" band, K; null: the question's, or 2.</param>
/// <param name="Seed">Random seed; null: 1.</param>
/// <param name="Pdf">Whether PDFs are wanted.</param>
/// <param name="Units">Degrees for people.</param>
/// <param name="Json">Whether to print JSON about what was written.</param>
internal sealed record ReportRequest(
    TableAsked? Table, string? Day, string? Store, string Out, string? Question, double? AmbientC, double? DriveS, double? SameWithinK, long? Seed, bool Pdf, TemperatureUnitChoice Units, bool Json);

/// <summary>`coolproof report` from the table or the notebook to the folder.</summary>
internal sealed class Reporting(Terminal terminal)
{
    /// <summary>Judges, then writes all files or none; a PDF that can't be made is said and leaves the others.</summary>
    /// <returns>The exit code.</returns>
    public async Task<int> RunAsync(ReportRequest request, CancellationToken cancel)
    {
        if (Directory.Exists(request.Out) || File.Exists(request.Out))
        {
            terminal.Error.WriteLine($"coolproof report: {Cells.Clean(request.Out)} is there already; name a new folder with --out. Nothing was written.");
            return Exit.BadInput;
        }
        if (await SubjectAsync(request, cancel) is not { } subject) return Exit.BadInput;
        ReportJudges judges = new((table, how) => TableJudging.Of(table, how, terminal, cancel), (table, before, alone, how) => TableJudging.Together(table, before, alone, how, terminal, cancel));
        var judging = ReportJudging.Of(subject, judges, ReportKept.None);
        if (judging.Whole is not Judged { Verdict: var verdict } whole) return TableJudging.Unjudged(judging.Whole, request.Units, terminal);
        var report = new Report(subject, verdict, judging.Alone, LocalDate.FromDateTime(TimeProvider.System.GetLocalNow().DateTime)) { Earlier = whole.Earlier, Wider = judging.Wider, NotTogether = judging.NotTogether };
        List<(string Path, byte[] Bytes)> files = [.. await ReportFiles.OfAsync(report)];
        var trouble = request.Pdf ? await PrintAsync(report, files, cancel) : null;
        Write(request.Out, files);
        Tell(request, files, trouble);
        return trouble is null ? Exit.Done : Exit.Failed;
    }

    async Task<ReportSubject?> SubjectAsync(ReportRequest request, CancellationToken cancel)
    {
        if (request.Table is not { } asked) return await NotedAsync(request, cancel) is { } noted ? noted with { Asked = request.Question ?? noted.Asked } : null;
        if (asked.Read("report", request.DriveS, terminal) is not { } read) return null;
        return new ReportSubject(read.Csv, read.Table, With(new JudgeSettings(request.AmbientC, request.DriveS), request))
        {
            Earlier = read.Earlier,
            EarlierFirst = true, // who names them asks for it, as of `compare`
            Units = request.Units,
            Asked = request.Question ?? "",
            MadeUp = read.Table.Runs.Any(run => run.Readings.Any(reading => reading.Note?.StartsWith(RehearsalFiles.MadeUp, StringComparison.Ordinal) == true)),
        };
    }

    async Task<ReportSubject?> NotedAsync(ReportRequest request, CancellationToken cancel)
    {
        var place = StoreOption.Place(request.Store);
        if (StoreOption.IsFile(place) && !File.Exists(place))
        {
            terminal.Error.WriteLine($"coolproof: there is no notebook {Cells.Clean(place)}. Name one with --store.");
            return null;
        }
        await using var store = await JournalStore.OpenAsync(place, TimeProvider.System, cancel);
        var held = new List<StoredEntry>();
        await foreach (var entry in store.ReadAllAsync(0, cancel)) held.Add(entry);
        var notebook = PitNotebook.Of(held);
        if (DayNamed.Of(notebook, request.Day!, terminal) is not { } day) return null;
        if (NotebookSubject.Of(notebook, day.Id, request.Units, new CostWords(notebook.Settings.Currency, MassUnitChoice.Gram)) is not { } subject)
        {
            terminal.Error.WriteLine($"coolproof report: {Cells.Clean(day.Name.Length > 0 ? day.Name : request.Day!)} has no run yet that can be judged. Nothing was written.");
            return null;
        }
        return subject with { Settings = With(subject.Settings, request), Photos = await NotebookSubject.PhotosAsync(subject, notebook, store, new Thumbnails(), cancel) };
    }

    static JudgeSettings With(JudgeSettings settings, ReportRequest request) => settings with
    {
        AmbientC = request.AmbientC ?? settings.AmbientC,
        DriveS = request.DriveS ?? settings.DriveS,
        SameWithinK = request.SameWithinK ?? settings.SameWithinK,
        Seed = request.Seed ?? settings.Seed,
    };

    static async Task<PdfException?> PrintAsync(Report report, List<(string Path, byte[] Bytes)> files, CancellationToken cancel)
    {
        try
        {
            foreach (var paper in Paper.All)
                files.Add((ReportFiles.Pdf(paper), await PdfPrinter.PrintAsync(await ReportHtml.OfAsync(report, paper), Environment.GetEnvironmentVariable, cancel)));
            return null;
        }
        catch (PdfException trouble)
        {
            return trouble;
        }
    }

    // Under another name first: a report that is there is whole.
    static void Write(string folder, IEnumerable<(string Path, byte[] Bytes)> files)
    {
        var beside = $"{Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder))}.{Path.GetRandomFileName()}";
        try
        {
            foreach (var (path, bytes) in files)
            {
                var whole = Path.Combine(beside, path);
                Directory.CreateDirectory(Path.GetDirectoryName(whole)!);
                File.WriteAllBytes(whole, bytes);
            }
            Directory.Move(beside, folder);
        }
        finally
        {
            if (Directory.Exists(beside)) Directory.Delete(beside, recursive: true);
        }
    }

    void Tell(ReportRequest request, IReadOnlyList<(string Path, byte[] Bytes)> files, PdfException? trouble)
    {
        if (request.Json) terminal.Out.Write(ReportJson.Text(new ReportFilesJson(ReportFilesJson.CurrentVersion, request.Out, [.. files.Select(file => file.Path)], request.Pdf && trouble is null)));
        else terminal.Out.Write($"Written in {Cells.Clean(request.Out)}: {string.Join(", ", files.Select(file => file.Path))}\n");
        terminal.Out.Flush();
        if (trouble is not null) terminal.Error.WriteLine($"coolproof report: {Cells.Clean(trouble.Message)} The other files are written.");
    }
}
