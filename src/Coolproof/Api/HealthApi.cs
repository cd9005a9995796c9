using Coolproof.Board;
using Coolproof.Pairing;

namespace Coolproof.Api;

/// <summary>Whether the pit table is ready: for whoever starts it by a script.</summary>
internal static class HealthApi
{
    /// <summary>GET /health: 200 once the notebook is read and kept up to date, 503 until then or when the store fails.</summary>
    public static void MapHealth(this IEndpointRouteBuilder routes) => routes.MapGet("/health", (NotebookBoard board) =>
        board.Ready && board.Trouble is null ? Results.Text("ready\n") : Results.Text("not ready\n", statusCode: StatusCodes.Status503ServiceUnavailable))
        .WithMetadata(new OpenToAllAttribute()).WithTags("Health").WithSummary("200 when ready.").Produces<string>(200, "text/plain").Produces<string>(503, "text/plain");
}
