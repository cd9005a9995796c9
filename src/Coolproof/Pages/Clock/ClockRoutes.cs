using Coolproof.Board;
using Coolproof.Notebook.Journal;
using Coolproof.Pages.Home;
using Coolproof.Web;
using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;

namespace Coolproof.Pages.Clock;

/// <summary>The run clock's page and what it fetches.</summary>
internal static class ClockRoutes
{
    /// <summary>
    /// GET /clock/{day}: the page. GET /clock/{day}/entries?after=seq: what the notebook knows of the day. GET /clock/worker.js and /run-clock/{version}/…: its files.
    /// </summary>
    public static void MapRunClock(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/clock/{day:guid}", (Guid day, NotebookBoard board, RunClockFiles files, HttpContext context) => Page(day, board, files, context));
        routes.MapGet("/clock/{day:guid}/entries", (Guid day, long? after, NotebookBoard board, VerdictBoard verdicts, ThisDevice device, TimeProvider clock, HttpContext context) => Entries(day, after ?? 0, board, verdicts, device, clock, context));
        routes.MapGet("/clock/worker.js", (RunClockFiles files, HttpContext context) => files.GetWorker(context));
        routes.MapGet("/run-clock/{version}/{name}", (string version, string name, RunClockFiles files, HttpContext context) => files.Get(version, name, context));
    }

    static IResult Page(Guid day, NotebookBoard board, RunClockFiles files, HttpContext context)
    {
        context.Response.Headers.CacheControl = "no-cache";
        // Whoever comes by a link loads it whole: another page's scripts must not go on in it.
        context.Response.OnStarting(() =>
        {
            context.Response.Headers.Remove("blazor-enhanced-nav");
            return Task.CompletedTask;
        });
        var noted = board.Notebook.Find<NotedDay>(day);
        return new RazorComponentResult<ClockPage>(new { Id = day, Day = noted, Style = files.Address("run-clock.css"), Main = files.Address("main.js"), files.Modules }) { StatusCode = noted is null ? StatusCodes.Status404NotFound : StatusCodes.Status200OK };
    }

    static IResult Entries(Guid day, long after, NotebookBoard board, VerdictBoard verdicts, ThisDevice device, TimeProvider clock, HttpContext context)
    {
        var notebook = board.Notebook;
        var now = Instant.FromDateTimeOffset(clock.GetUtcNow());
        if (notebook.Find<NotedDay>(day) is not { } noted) return Results.NotFound();
        var json = ClockEntries.Json(notebook, noted, after, now, Advised(notebook, noted, verdicts, device, now));
        context.Response.Headers.CacheControl = "no-store";
        if (json.Length < 2000 || !context.Request.Headers.AcceptEncoding.ToString().Contains("gzip", StringComparison.Ordinal)) return Results.Bytes(json, "application/json");
        context.Response.Headers.ContentEncoding = "gzip";
        return Results.Bytes(RunClockFiles.Pack(json), "application/json");
    }

    // Where the round is hidden from whoever drives, the next option must not tell who leads: then it is the one with the fewest runs.
    static NotedOption? Advised(PitNotebook notebook, NotedDay day, VerdictBoard verdicts, ThisDevice device, Instant now) =>
        WhatNow.Left(notebook, day).Count > 0 ? null
            : WhatNow.Next(notebook, day, device.Hides(day) ? null : DaySteering.Advised(notebook, day, verdicts.Of(day.Id).Quick, now));
}
