using System.Globalization;
using System.Text;
using Coolproof.Board;
using Coolproof.Evidence;
using Coolproof.Notebook;
using Coolproof.Notebook.Journal;
using Coolproof.Pages;
using Coolproof.Pages.Shown;
using Coolproof.Photos;
using Coolproof.Store;
using Coolproof.Words;

namespace Coolproof.Reports;

/// <summary>What a report on a day or a question of the notebook is of.</summary>
internal static class NotebookSubject
{
    const int PhotoPx = 640;

    static readonly int Threads = Math.Clamp(Environment.ProcessorCount - 1, 1, 4); // pages are served beside it

    /// <summary>The subject without photos; null when the notebook has no such day or question, or nothing in its table can be handed on.</summary>
    /// <param name="notebook">The notebook.</param>
    /// <param name="about">UUID of the day or the question.</param>
    /// <param name="units">Degrees for people.</param>
    /// <param name="costs">Money and mass in words.</param>
    public static ReportSubject? Of(PitNotebook notebook, Guid about, TemperatureUnitChoice units, CostWords costs)
    {
        if (JudgeTask.Of(notebook, about, Threads) is not { } task) return null;
        var csv = Written(task.Table.Table);
        // Where no run noted its drive the table can't say it, and whoever judges it must.
        var assumed = task.Table.Table.Runs is [var first, ..] runs && runs.All(run => run.DriveAssumed) ? first.DriveS : (double?)null;
        var settings = task.Settings with { DriveS = task.Settings.DriveS ?? assumed };
        if (Read(csv, settings, task.Table.Table) is not { } table) return null;
        var question = AskedAbout.Of(notebook, about)?.Question;
        var earlier = notebook.Find<NotedDay>(about) is { } day ? EarlierDays.Of(notebook, day, table.Runs.Count) : [];
        return new ReportSubject(csv, table, settings)
        {
            Earlier = [.. from one in earlier let bytes = Written(one.Table) let read = Read(bytes, settings, one.Table) where read is not null select (bytes, read)],
            Units = units,
            Asked = question?.Text ?? "",
            Question = question,
            Options = notebook.Options,
            Costs = costs,
            Looks = OptionLooks.ByName(notebook),
            LeftOut = [.. task.Table.Table.Questions.Select(TableQuestions.Sentence)],
            MadeUp = Demo.Made(notebook, about),
        };
    }

    /// <summary>What of a page's judgements is of the very tables and settings of a subject: what is handed on is what was judged.</summary>
    public static ReportKept Kept(ReportSubject subject, VerdictState state)
    {
        if (state.Judgement is not Judged own || state.Mark != JudgeTask.MarkOf(subject.Table, subject.Settings)) return ReportKept.None;
        return new(own, state.Earlier is { Together: { } together } earlier && earlier.Mark == EarlierTask.MarkOf(state.Mark, subject.Earlier.Select(one => one.Table), subject.Settings) ? together : null);
    }

    static byte[] Written(ReadingsTable table)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        ReadingsTableWriter.Write(table, text);
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    // A readings table has no place for the checks of its guns: they go beside it.
    static ReadingsTable? Read(byte[] csv, JudgeSettings settings, ReadingsTable noted) =>
        ReadingsTableReader.Read(new MemoryStream(csv), settings.DriveS).Table is { } read ? read with { GunChecks = noted.GunChecks } : null;

    /// <summary>The latest photo of each option of a subject, made small; an option whose photo is not here has none.</summary>
    public static async Task<IReadOnlyDictionary<string, byte[]>> PhotosAsync(ReportSubject subject, PitNotebook notebook, JournalStore store, Thumbnails thumbnails, CancellationToken cancel)
    {
        Dictionary<string, byte[]> photos = new(StringComparer.OrdinalIgnoreCase);
        foreach (var name in subject.Table.Options)
        {
            if (subject.Noted(name) is not { } option || notebook.PhotosOf(option.Id) is not [.., var photo]) continue;
            if (await store.GetPhotoAsync(photo.Id, cancel) is { } kept && thumbnails.Of(photo.Id, PhotoPx, kept.Bytes) is { } small) photos[name] = small;
        }
        return photos;
    }
}
