using System.Text.Json;
using Coolproof.Notebook.Journal;
using Coolproof.Store;
using NodaTime;
using NodaTime.Text;

namespace Coolproof.Api;

/// <summary>Entries over HTTP by docs/formats/entries.md: a tap is acknowledged only after it was synced to disk.</summary>
internal static class EntriesApi
{
    const int UsualPage = 1000;
    static readonly InstantPattern Written = InstantPattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm:ss.fff'Z'");

    /// <summary>POST and GET /api/entries, GET /api/clock.</summary>
    public static void MapEntries(this IEndpointRouteBuilder routes)
    {
        routes.MapPost("/api/entries", KeepAsync).WithTags("Entries").WithSummary("Keeps a batch of entries: all of it or nothing. Repeats change nothing.")
            .Accepts<object>("application/json").Produces<KeptAnswer>().Produces<BatchProblem>(400, "application/problem+json").Produces(413).Produces(507);
        routes.MapGet("/api/entries", ReadAsync).WithTags("Entries").WithSummary("Entries after a cursor, in the order in which they were kept.")
            .Produces<PageAnswer>().Produces(400);
        routes.MapGet("/api/clock", Clock).WithTags("Entries").WithSummary("The server's clock, to measure a device's against.").Produces<ClockAnswer>();
    }

    static async Task<IResult> KeepAsync(HttpContext context, JournalStore store, CancellationToken cancel)
    {
        if (await RequestBytes.ReadAsync(context.Request, EntryReader.LargestBatchBytes, cancel) is not { } bytes)
            return Problems.Of(StatusCodes.Status413PayloadTooLarge, $"A batch has at most {EntryReader.LargestBatchBytes} bytes.", "Send fewer entries at once; nothing of this batch was kept.");
        var read = EntryReader.ReadBatch(bytes);
        if (!read.Understood) return Problems.Of(read.Faults);
        var kept = await store.AppendAsync(read.Batch.Device, read.Batch.Entries, cancel);
        return Json(writer =>
        {
            writer.WriteStartArray("kept");
            foreach (var id in kept.Ids) writer.WriteStringValue(id);
            writer.WriteEndArray();
            writer.WriteString("serverAt", Written.Format(kept.At));
            writer.WriteNumber("cursor", kept.Cursor);
        });
    }

    static async Task<IResult> ReadAsync(JournalStore store, CancellationToken cancel, long after = 0, int limit = UsualPage)
    {
        if (after < 0 || limit is < 1 or > JournalStore.LargestPage)
            return Problems.Of(StatusCodes.Status400BadRequest, $"after is 0 or more, and limit 1 to {JournalStore.LargestPage}.", "Ask with a cursor that an earlier answer gave.");
        var page = await store.ReadAfterAsync(after, limit, cancel);
        return Json(writer =>
        {
            writer.WriteStartArray("entries");
            foreach (var entry in page.Entries) EntryWriter.Write(writer, entry);
            writer.WriteEndArray();
            writer.WriteNumber("cursor", page.Cursor);
            writer.WriteBoolean("more", page.More);
        });
    }

    static IResult Clock(HttpContext context, TimeProvider clock)
    {
        context.Response.Headers.CacheControl = "no-store";
        return Json(writer => writer.WriteString("serverAt", Written.Format(Instant.FromDateTimeOffset(clock.GetUtcNow()))));
    }

    static IResult Json(Action<Utf8JsonWriter> members)
    {
        var held = new System.Buffers.ArrayBufferWriter<byte>(1024);
        using (var writer = new Utf8JsonWriter(held))
        {
            writer.WriteStartObject();
            members(writer);
            writer.WriteEndObject();
        }
        return Results.Bytes(held.WrittenMemory, "application/json");
    }
}

/// <summary>What was kept, for the description of the API.</summary>
internal sealed record KeptAnswer(Guid[] Kept, DateTimeOffset ServerAt, long Cursor);

/// <summary>Entries, for the description of the API.</summary>
internal sealed record PageAnswer(EntryAnswer[] Entries, long Cursor, bool More);

/// <summary>An entry, for the description of the API.</summary>
internal sealed record EntryAnswer(Guid Id, string Kind, DateTimeOffset At, Guid About, Guid? Corrects, object Body, Guid Device, long Seq, DateTimeOffset Kept);

/// <summary>The clock, for the description of the API.</summary>
internal sealed record ClockAnswer(DateTimeOffset ServerAt);

/// <summary>A refused batch, for the description of the API.</summary>
internal sealed record BatchProblem(string Title, int Status, string Detail, EntryFault[] Errors);
