using Coolproof.Board;
using Coolproof.Notebook.Journal;
using NodaTime;

namespace Coolproof.Api;

/// <summary>Verdicts of days and questions over HTTP.</summary>
internal static class VerdictsApi
{
    /// <summary>GET /api/verdicts/{about}: asking has it judged and kept up to date; /api/live tells when it changes.</summary>
    public static void MapVerdicts(this IEndpointRouteBuilder routes) => routes.MapGet("/api/verdicts/{about:guid}", (Guid about, HttpContext context, NotebookBoard board, VerdictBoard verdicts, TimeProvider clock) =>
    {
        if (board.Notebook.Find<NotedDay>(about) is null && board.Notebook.Find<NotedQuestion>(about) is null)
            return Problems.Of(StatusCodes.Status404NotFound, "There is no such day or question.", "Ask with the UUID of a day or a question of this notebook.");
        context.Response.Headers.CacheControl = "no-store";
        return Results.Text(VerdictAnswers.Whole(verdicts.Of(about), Instant.FromDateTimeOffset(clock.GetUtcNow())), "application/json");
    }).WithTags("Verdicts").WithSummary("How the verdict of a day or a question stands; a verdict is as `compare --json` prints it, version 1.");
}
