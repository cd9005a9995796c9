using System.Globalization;
using System.Text;
using Coolproof.Api;
using Coolproof.Board;
using Coolproof.Notebook.Journal;
using Coolproof.Traces.Live;

namespace Coolproof.Sensors;

/// <summary>Traces to take along.</summary>
internal static class TraceRoutes
{
    const long MostMs = 48 * 3_600_000L;

    /// <summary>GET /run/{id}/traces.csv and /api/traces.</summary>
    public static void MapTraces(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/run/{id:guid}/traces.csv", OfRun).ExcludeFromDescription();
        routes.MapGet("/api/traces", OfSpan).WithTags("Live").WithSummary("What the sensors told within a span of time (milliseconds since 1970-01-01 UTC, 48 h at most), as CSV: a line per sample.")
            .Produces<string>(200, "text/csv").Produces(400);
    }

    static IResult OfRun(Guid id, NotebookBoard board, TraceFolder folder) =>
        board.Notebook.Find<NotedRun>(id) is { } run && RunTraces.SpanOf(run) is { } span
            ? Table(folder, span.FromMs, span.ToMs, span.GoMs, $"traces-run-{run.Number?.ToString(CultureInfo.InvariantCulture) ?? "x"}.csv")
            : Problems.Of(StatusCodes.Status404NotFound, "There is no such run here, or it has no go and no end.", "Open it from its day's page.");

    static IResult OfSpan(TraceFolder folder, long from, long to) => from < 0 || to < from || to - from > MostMs
        ? Problems.Of(StatusCodes.Status400BadRequest, "from and to are instants in milliseconds since 1970-01-01 UTC, 48 h apart at most.", "Ask for shorter spans, one after the other.")
        : Table(folder, from, to, from, "traces.csv");

    static IResult Table(TraceFolder folder, long from, long to, long zero, string name) =>
        Results.File(Encoding.UTF8.GetBytes(TraceTable.Of(RunTraces.Of(folder, from, to), zero)), "text/csv; charset=utf-8", name);
}
