using Coolproof.Notebook.Journal;
using Coolproof.Store.Engines;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace Coolproof.Store.Tests;

/// <summary>The notebook of version 1 (Data/version-1.coolproof): one made-up run. Made once, by this, with the scripts up to 0001; kept as it is from then on.</summary>
internal static class VersionOne
{
    public const string Word = "make-version-1";

    public static void Make(string file)
    {
        SqliteFile.Prepare(file, 1, "0001-entries.sql");
        using (SqliteConnection connection = SqliteFile.Connect(file, SqliteOpenMode.ReadWrite, 1, pooling: false))
        {
            using SqliteTransaction transaction = connection.BeginTransaction();
            SqliteRows.Insert(connection, transaction, [.. Entries().Select(entry => EntryRow.Of(new NewEntry(Tests.Entries.Phone, entry), 1_780_000_000_000))]);
            transaction.Commit();
        }

        SqliteFile.FoldLog(file, 1);
    }

    private static IEnumerable<Entry> Entries()
    {
        Guid bare = Tests.Entries.Id(50, 1), clamp = Tests.Entries.Id(50, 2), day = Tests.Entries.Id(50, 3), run = Tests.Entries.Id(50, 4), shot = Tests.Entries.Id(50, 5);
        int n = 100;
        Entry Say(double seconds, string kind, Guid about, params (string, object?)[] body) =>
            new(Tests.Entries.Id(50, n++), kind, Instant.FromUtc(2026, 6, 13, 15, 0) + Duration.FromMilliseconds((long)(seconds * 1000)), about, null, EntryBody.Of(body));
        yield return Say(0, EntryKind.OptionSet, bare, ("name", "bare can"));
        yield return Say(1, EntryKind.OptionSet, clamp, ("name", "clip-on finned clamp"), ("massG", 38));
        yield return Say(2, EntryKind.DaySet, day, ("name", "first evening"), ("date", "2026-06-13"), ("utcOffsetMin", 120));
        yield return Say(10, EntryKind.RunBegin, run, ("day", day), ("option", bare), ("kind", "test"), ("number", 1));
        yield return Say(20, EntryKind.RunGo, run);
        yield return Say(380, EntryKind.RunStop, run, ("by", "tap"));
        yield return Say(388, EntryKind.RunHalt, run);
        yield return Say(400, EntryKind.Shot, shot, ("run", run), ("spot", "can"), ("hold", "single"), ("surface", "tape"));
        yield return Say(405, EntryKind.ShotRead, shot, ("shot", shot), ("value", 61.5), ("unit", "c"));
    }
}
