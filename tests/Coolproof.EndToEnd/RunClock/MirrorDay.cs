using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Coolproof.Notebook.Journal;
using NodaTime;

namespace Coolproof.EndToEnd.RunClock;

/// <summary>Entries of a day, to be folded by bench and phone.</summary>
sealed record MirrorDay(Guid Day, Instant Now, int Shots, IReadOnlyList<Guid> Plan, IReadOnlyList<StoredEntry> Entries)
{
    /// <summary>It as the phone's modules take it.</summary>
    public JsonObject Request()
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream))
        {
            writer.WriteStartArray();
            foreach (var entry in Entries) EntryWriter.Write(writer, entry);
            writer.WriteEndArray();
        }
        return new JsonObject
        {
            ["day"] = Day.ToString("D"),
            ["now"] = Now.ToUnixTimeMilliseconds(),
            ["shots"] = Shots,
            ["plan"] = new JsonArray([.. Plan.Select(id => (JsonNode?)id.ToString("D"))]),
            ["entries"] = JsonNode.Parse(Encoding.UTF8.GetString(stream.ToArray())),
        };
    }

    /// <summary>What the bench makes of it.</summary>
    public MirrorAnswer OnTheBench()
    {
        var notebook = PitNotebook.Of(Entries);
        var runs = notebook.RunsOf(Day);
        return new MirrorAnswer(
            [.. runs.Select(run => MirrorRun.Of(run, RunNow.Of(run, Now, Shots)))], [.. (notebook.Find<NotedDay>(Day)?.Weather ?? []).Select(weather => weather.At.ToUnixTimeMilliseconds())],
            [.. notebook.Offers(Day).Select(offer => (IReadOnlyList<object>)[offer.Number, offer.A, offer.B])], notebook.NextNumber(Day));
    }
}

/// <summary>What a day adds up to, in the words of Scripts/mirror.mjs. Instants are ms since 1970.</summary>
sealed record MirrorAnswer(IReadOnlyList<MirrorRun> Runs, IReadOnlyList<long> Weather, IReadOnlyList<IReadOnlyList<object>> Offers, int Next)
{
    public static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web);
}

sealed record MirrorStamp(long At, Guid Entry, IReadOnlyList<Guid> Others, long Spread, bool Chosen)
{
    public static MirrorStamp? Of(ClockedInstant? stamp) =>
        stamp is null ? null : new(stamp.At.ToUnixTimeMilliseconds(), stamp.Counted.Entry, [.. stamp.Others.Select(other => other.Entry)], (long)Math.Round(stamp.SpreadS * 1000), stamp.Chosen);
}

sealed record MirrorShot(Guid Id, long? At, long? Read, Guid? Photo);

sealed record MirrorRun(
    Guid Id, IReadOnlyList<Guid> Ids, int? Number, Guid? Option, string? Kind, string Step, long Since, long? Left, int ShotsLeft, int Owed, MirrorStamp? Go, MirrorStamp? Stop, MirrorStamp? Halt, MirrorStamp? PowerOff,
    IReadOnlyList<IReadOnlyList<long?>> Stills, long? FanDead, string? Because, IReadOnlyList<long> Laps, bool? Before, double? Charge, IReadOnlyList<MirrorShot> Shots, IReadOnlyList<IReadOnlyList<long?>> Coolings)
{
    public static MirrorRun Of(NotedRun run, RunNow now) => new(
        run.Id, [run.Id, .. run.OtherIds], run.Number, run.Option, run.Fields.Text("kind"), now.Step.ToString(), Ms(now.SinceS), now.LeftS is { } left ? Ms(left) : null, now.ShotsLeft, now.NumbersOwed,
        MirrorStamp.Of(run.Go), MirrorStamp.Of(run.Stop), MirrorStamp.Of(run.Halt), MirrorStamp.Of(run.PowerOff), [.. run.StandStills.Select(still => (IReadOnlyList<long?>)[Ms(still.Down), Ms(still.Up)])], Ms(run.FanDeadAt),
        run.AbandonedBecause, [.. run.LapTimes.Select(lap => lap.ToUnixTimeMilliseconds())], run.FanTurnedBefore, run.ChargeBackMah,
        [.. run.Shots.Select(shot => new MirrorShot(shot.Id, Ms(shot.At), shot.ReadC is { } read ? Ms(read) : null, shot.Photo))],
        [.. run.CoolDowns.Select(cooling => (IReadOnlyList<long?>)[Ms(cooling.Begin), Ms(cooling.End)])]);

    // As JavaScript rounds: halves up.
    static long Ms(double seconds) => (long)Math.Floor((seconds * 1000) + 0.5);

    static long? Ms(Instant? instant) => instant?.ToUnixTimeMilliseconds();
}
