using System.Globalization;
using Coolproof.Board;
using Coolproof.Loggers;
using Coolproof.Notebook.Journal;
using Coolproof.Pages.Forms;
using Coolproof.Pages.Shown;
using Coolproof.Traces.Import;
using Coolproof.Traces.Kept;
using Coolproof.Web;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace Coolproof.Pages.Traced;

/// <summary>What the pages of traces send: a logger's file, the tap that takes its readings, the tap that takes them out, a clock set by hand.</summary>
internal static class LogRoutes
{
    /// <summary>Largest file that a page takes; `coolproof import --as trace` takes any.</summary>
    public const long LargestBytes = 500_000_000;

    /// <summary>Maps them. Each asks for the antiforgery token of its form.</summary>
    public static void MapLogs(this IEndpointRouteBuilder routes)
    {
        routes.MapPost("/trace-file/{day:guid}", BringAsync).ExcludeFromDescription().WithFormOptions(multipartBodyLengthLimit: LargestBytes).WithMetadata(new RequestSizeLimitAttribute(LargestBytes));
        routes.MapPost("/trace/{id:guid}/take", TakeAsync).ExcludeFromDescription();
        routes.MapPost("/trace/{id:guid}/out", OutAsync).ExcludeFromDescription();
    }

    static async Task<IResult> BringAsync(Guid day, [FromForm] IFormFile? file, [FromForm] IFormCollection form, NotebookBoard board, LoggerFiles loggers, ThisDevice device, TimeProvider clock, CancellationToken cancel)
    {
        if (board.Notebook.Find<NotedDay>(day) is null) return Results.LocalRedirect($"/day/{day}");
        if (file is null || file.Length == 0) return NotBroughtIn(day, "There is no file in what was sent, or it is empty.", "Choose the logger’s file, as text (CSV), and bring it in again.");
        BroughtLog brought;
        try
        {
            await using var stream = file.OpenReadStream();
            var wish = WishOf(form);
            brought = await Task.Run(() => BroughtLog.Of(stream, loggers.Folder, board.Notebook, wish, cancel), cancel);
        }
        catch (TraceRefusedException wrong)
        {
            return NotBroughtIn(day, $"{TimeWords.Capital(wrong.Problem.ToString())}.", "Nothing was kept. If the file is right, say under “Its layout is unusual” which column is time, and in what unit.");
        }
        catch (FormatException wrong)
        {
            return NotBroughtIn(day, wrong.Message, "Nothing was kept.");
        }
        // The same again is the same trace: its readings must not count twice.
        if (board.Notebook.TracesOf(day).FirstOrDefault(trace => trace.Sha256 == brought.Sha256) is { } there)
        {
            loggers.Told(there.Id, brought.Read);
            return Results.LocalRedirect($"/trace/{there.Id}");
        }
        var id = Guid.CreateVersion7(clock.GetUtcNow());
        await SayAsync(board, device.Id(), [new(EntryKind.TraceSet, id, brought.Body(day, Path.GetFileName(file.FileName)))], clock, cancel);
        loggers.Told(id, brought.Read);
        return Results.LocalRedirect($"/trace/{id}");
    }

    static async Task<IResult> TakeAsync(Guid id, [FromForm] IFormCollection form, NotebookBoard board, LoggerFiles loggers, ThisDevice device, TimeProvider clock, CancellationToken cancel)
    {
        var notebook = board.Notebook;
        if (notebook.Find<NotedTrace>(id) is not { Day: { } dayId } noted || notebook.Find<NotedDay>(dayId) is not { } day) return Results.LocalRedirect("/");
        using var trace = loggers.Open(noted.Sha256);
        if (trace is null) return Results.LocalRedirect($"/trace/{id}");
        if (AheadOf(form, notebook, day, trace) is not { } ahead)
            return Refused("The clock was not set", $"When the first run went: “{form["after"]}” is no time after the trace’s begin.", "Type minutes and seconds, such as 12:30. Nothing was changed.", $"/trace/{id}", "Back to the trace");
        var channels = TracedReadings.CanChannels(trace);
        var fit = TraceFit.At(notebook, day, trace, loggers.GridOf(noted.Sha256!, trace), ahead);
        var channel = channels.FirstOrDefault(one => one == form["channel"]) ?? (channels.Count > 0 ? channels[0] : null);
        IReadOnlyList<Said> said = form["do"] == "clock" || channel is null
            ? [new(EntryKind.TraceSet, id, EntryBody.Of(("aheadMs", Math.Round(1000 * ahead))))]
            : TracedReadings.Take(notebook, noted, trace, fit, channel, () => Guid.CreateVersion7(clock.GetUtcNow()));
        await SayAsync(board, device.Id(), said, clock, cancel);
        return Results.LocalRedirect($"/trace/{id}");
    }

    // The trace's clock minus the notebook's, s: as it was found, or by when the first run went after the trace's begin.
    static double? AheadOf(IFormCollection form, PitNotebook notebook, NotedDay day, KeptTrace trace)
    {
        if (!form.ContainsKey("after")) return double.TryParse(form["ahead"], NumberStyles.Float, CultureInfo.InvariantCulture, out var ahead) && Math.Abs(ahead) < 1e10 ? ahead : null;
        return GoAfter.Read(form["after"]) is { } after && TraceFit.FirstGo(notebook, day) is var (goS, _) ? (trace.About.FirstUs / 1e6) + after - goS : null;
    }

    static async Task<IResult> OutAsync(Guid id, NotebookBoard board, ThisDevice device, TimeProvider clock, [FromForm] IFormCollection form, CancellationToken cancel)
    {
        if (board.Notebook.Find<NotedTrace>(id) is { } noted) await SayAsync(board, device.Id(), [.. TracedReadings.Out(board.Notebook, noted)], clock, cancel);
        return Results.LocalRedirect($"/trace/{id}");
    }

    /// <summary>What a form says of a layout; null: nothing, so that it is guessed or remembered.</summary>
    static LayoutWish? WishOf(IFormCollection form)
    {
        string Text(string name) => form[name].ToString().Trim();
        var (time, unit, step) = (Text("time"), Text("timeUnit"), Text("step"));
        if (time.Length == 0 && unit.Length == 0 && step.Length == 0) return null;
        double? seconds = null;
        if (step.Length > 0)
        {
            if (!double.TryParse(step.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var typed) || !(typed > 0)) throw new FormatException($"Seconds between rows: “{step}” is no number of seconds, such as 0.1.");
            seconds = typed;
        }
        return new LayoutWish(time.Length > 0 ? time : null, Enum.TryParse<TimeForm>(unit, out var told) ? told : null, seconds);
    }

    static RazorComponentResult<TroublePage> NotBroughtIn(Guid day, string reason, string remedy) => Refused("The file was not brought in", reason, remedy, $"/traces/{day}", "Bring in another file");

    static RazorComponentResult<TroublePage> Refused(string title, string reason, string remedy, string back, string backTo) =>
        new(new Dictionary<string, object?> { ["Title"] = title, ["Reason"] = reason, ["Remedy"] = remedy, ["Back"] = back, ["BackTo"] = backTo }) { StatusCode = StatusCodes.Status422UnprocessableEntity };

    static async Task SayAsync(NotebookBoard board, Guid author, IReadOnlyList<Said> said, TimeProvider clock, CancellationToken cancel)
    {
        var now = clock.Now();
        Entry[] entries = [.. said.Select((one, i) => one.At(now + NodaTime.Duration.FromMilliseconds(i)))];
        foreach (var batch in entries.Chunk(EntryReader.LargestBatch)) await board.KeepAsync(author, batch, cancel);
    }
}
