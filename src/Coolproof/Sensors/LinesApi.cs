using Coolproof.Api;
using Coolproof.Live;
using Coolproof.Pairing;
using Coolproof.Traces.Live;

namespace Coolproof.Sensors;

/// <summary>Lines of sensors over HTTP, by docs/formats/live-lines.md.</summary>
internal static class LinesApi
{
    /// <summary>Largest body, bytes.</summary>
    public const int LargestBody = 256 * 1024;

    const int MostLines = 5000;
    const int LongestWord = 40;

    /// <summary>POST /api/live.</summary>
    public static void MapSensorLines(this IEndpointRouteBuilder routes) => routes.MapPost("/api/live", TakeAsync).WithTags("Live")
        .WithSummary("Lines of sensors: name, value, unit, perhaps a time. With session and first, which number the lines, the same may be sent again and is kept once.")
        .Accepts<string>("text/plain").Produces<LinesAnswer>().Produces(400).Produces(413).Produces(507);

    static async Task<IResult> TakeAsync(HttpContext context, SensorBoard board, TimeProvider clock, CancellationToken cancel, string? source = null, string? session = null, long? first = null)
    {
        if (Wrong(source) || Wrong(session)) return Bad($"source and session have 1 to {LongestWord} letters, digits and the signs - _ . each.");
        if (session is null != first is null) return Bad("session and first come together: they number the lines.");
        if (first is < 0 or > 1L << 53) return Bad("first is 0 or more.");
        if (await RequestBytes.ReadAsync(context.Request, LargestBody, cancel) is not { } bytes) return Large($"A body has at most {LargestBody} bytes.");
        var lines = LineSplitter.All(bytes.Span);
        if (lines.Count > MostLines) return Large($"A body has at most {MostLines} lines.");
        var sender = source ?? Plain(context.Features.Get<Caller>()?.Device.Name ?? "");
        try
        {
            var heard = board.HearAll($"http {(sender.Length > 0 ? sender : "sensor")}", lines, session, first ?? 0);
            return Results.Json(new LinesAnswer(heard.Kept, heard.Repeated, [.. heard.Bad], clock.GetUtcNow()));
        }
        catch (Exception cause) when (cause is IOException or UnauthorizedAccessException)
        {
            return Problems.Of(StatusCodes.Status507InsufficientStorage, $"The lines can't be kept: {cause.Message}", "Make room on the laptop, and send them again; with session and first none is kept twice.", "disk");
        }
    }

    static bool Wrong(string? word) => word is not null && (word.Length is 0 or > LongestWord || !word.All(letter => char.IsAsciiLetterOrDigit(letter) || letter is '-' or '_' or '.'));

    static string Plain(string name) => new([.. name.Take(LongestWord).Select(letter => char.IsLetterOrDigit(letter) ? letter : '-')]);

    static IResult Bad(string title) => Problems.Of(StatusCodes.Status400BadRequest, title, "POST /api/live?source=bench&session=WORD&first=NUMBER with lines as the body; all three may be left out.");

    static IResult Large(string title) => Problems.Of(StatusCodes.Status413PayloadTooLarge, title, "Send fewer lines at once; nothing of these was kept.");
}

/// <summary>What became of lines, for senders.</summary>
/// <param name="Kept">How many were kept.</param>
/// <param name="Repeated">How many had been kept before.</param>
/// <param name="Bad">Those that were not understood; to send them again doesn't help.</param>
/// <param name="ServerAt">The server's clock.</param>
internal sealed record LinesAnswer(int Kept, int Repeated, BadLine[] Bad, DateTimeOffset ServerAt);
