using System.Text;
using Coolproof.Notebook.Journal;
using NodaTime;

namespace Coolproof.Store.Engines;

/// <summary>An entry as it stands in the database: only long and text, mapped by hand. Its seq is 0 before it is kept.</summary>
internal sealed record EntryRow(long Seq, string Id, string Device, string Kind, long AtMs, string About, string? Corrects, string Body, long KeptMs)
{
    public static EntryRow Of(NewEntry entry, long keptMs) => new(
        0, Text(entry.Entry.Id), Text(entry.Device), entry.Entry.Kind, entry.Entry.At.ToUnixTimeMilliseconds(), Text(entry.Entry.About),
        entry.Entry.Corrects is { } corrects ? Text(corrects) : null, entry.Entry.Body.Json(), keptMs);

    public StoredEntry Entry() => new(
        new Entry(Guid.ParseExact(Id, "D"), EntryReader.ReadKeptKind(Encoding.UTF8.GetBytes(Kind)), Instant.FromUnixTimeMilliseconds(AtMs), Guid.ParseExact(About, "D"), Corrects is { } corrects ? Guid.ParseExact(corrects, "D") : null, EntryReader.ReadKeptBody(Encoding.UTF8.GetBytes(Body))),
        Guid.ParseExact(Device, "D"), Seq, Instant.FromUnixTimeMilliseconds(KeptMs));

    private static string Text(Guid id) => id.ToString("D");
}

/// <summary>A photo as it stands in the database.</summary>
internal sealed record PhotoRow(string Id, string MediaType, byte[] Bytes, long KeptMs);
