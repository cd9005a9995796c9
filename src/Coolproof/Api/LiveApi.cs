using System.Globalization;
using System.Text;
using System.Threading.Channels;
using Coolproof.Board;
using Coolproof.Live;
using Coolproof.Pairing;
using Coolproof.Sensors;
using Coolproof.Web;

namespace Coolproof.Api;

/// <summary>Server-sent events: that something was kept, and how the verdicts stand.</summary>
/// <remarks>
/// Who asks with ?sensors is told of the values of live sensors too, of all of them at once, about twice a second.
/// An event's id is "cursor-stamp": how far the listener knows the entries and the verdicts. Sent back as Last-Event-ID it brings what came meanwhile.
/// </remarks>
internal static class LiveApi
{
    static readonly TimeSpan KeepAlive = TimeSpan.FromSeconds(15);

    /// <summary>GET /api/live.</summary>
    public static void MapLive(this IEndpointRouteBuilder routes) => routes.MapGet("/api/live", ListenAsync).WithTags("Live")
        .WithSummary("Server-sent events: \"entries\" {cursor} when something was kept, \"verdict\" {about, state, …} while verdicts are worked out, \"rounds\" {about} while the days of a plan are simulated; with ?sensors \"sensors\" {shape, channels, sources} about twice a second.")
        .Produces<string>(200, "text/event-stream");

    static async Task ListenAsync(
        HttpContext context, NotebookBoard board, VerdictBoard verdicts, RoundsBoard rounds, PairedDevices paired, SensorBoard sensors, ThisDevice device, TimeProvider clock, IHostApplicationLifetime life)
    {
        using var ending = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted, life.ApplicationStopping);
        var cancel = ending.Token;
        var caller = context.Features.Get<Caller>();
        var response = context.Response;
        response.ContentType = "text/event-stream";
        response.Headers.CacheControl = "no-store";
        response.Headers["X-Accel-Buffering"] = "no"; // or a proxy holds events back
        var (cursor, stamp) = Known(context.Request.Headers["Last-Event-ID"].ToString());
        var reckoned = 0L; // whoever comes anew is told of all of them: there are few
        var rings = Channel.CreateBounded<bool>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });
        void Ring() => rings.Writer.TryWrite(true);
        board.Changed += Ring;
        verdicts.Changed += Ring;
        rounds.Changed += Ring;
        paired.Changed += Ring;
        var follows = context.Request.Query.ContainsKey("sensors");
        var seen = -1L;
        if (follows) sensors.Changed += Ring;
        await using var beat = clock.CreateTimer(_ => Ring(), null, KeepAlive, KeepAlive);
        try
        {
            await response.WriteAsync("retry: 2000\n\n", cancel);
            while (caller is null || paired.Holds(caller))
            {
                var text = new StringBuilder();
                var notebook = board.Notebook;
                if (notebook.Cursor != cursor)
                {
                    cursor = notebook.Cursor;
                    text.Append(CultureInfo.InvariantCulture, $"event: entries\nid: {cursor}-{stamp}\ndata: {{\"cursor\":{cursor}}}\n\n");
                }
                foreach (var state in verdicts.Since(stamp))
                {
                    stamp = state.Stamp;
                    text.Append(CultureInfo.InvariantCulture, $"event: verdict\nid: {cursor}-{stamp}\ndata: {VerdictAnswers.Line(state)}\n\n");
                }
                var (plans, now) = rounds.Since(reckoned);
                reckoned = now;
                foreach (var plan in plans) text.Append(CultureInfo.InvariantCulture, $"event: rounds\ndata: {{\"about\":\"{plan}\"}}\n\n");
                if (follows && sensors.Recent is var view && view.AtMs != seen)
                {
                    seen = view.AtMs;
                    text.Append(CultureInfo.InvariantCulture, $"event: sensors\ndata: {SensorLines.Of(view, device.Degrees)}\n\n");
                }
                await response.WriteAsync(text.Length > 0 ? text.ToString() : ": here\n\n", cancel);
                await response.Body.FlushAsync(cancel);
                await rings.Reader.ReadAsync(cancel);
            }
        }
        catch (OperationCanceledException)
        {
            // The listener has gone, or the server ends.
        }
        finally
        {
            board.Changed -= Ring;
            verdicts.Changed -= Ring;
            rounds.Changed -= Ring;
            paired.Changed -= Ring;
            sensors.Changed -= Ring;
        }
    }

    /// <summary>How far a listener knows; nothing of the entries, and of the verdicts only what comes, where it doesn't say.</summary>
    static (long Cursor, long Stamp) Known(string said)
    {
        var parts = said.Split('-');
        return parts.Length == 2
            && long.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var cursor)
            && long.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out var stamp) ? (cursor, stamp) : (-1, 0);
    }
}
