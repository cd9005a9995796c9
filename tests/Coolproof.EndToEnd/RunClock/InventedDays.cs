using Coolproof.Notebook.Journal;
using NodaTime;

namespace Coolproof.EndToEnd.RunClock;

/// <summary>Days as bad as days get: three phones with wrong clocks, runs begun twice, presses too many, taken back, brought again, moved and corrected.</summary>
static class InventedDays
{
    static readonly Instant Start = Instant.FromUtc(2026, 6, 13, 15, 0);
    static readonly string[] Roles = ["driver", "clock", "gun", "any"];
    static readonly string[] Events = ["go", "stop", "halt", "power-off"];
    static readonly string[] Kinds =
    [
        "run.begin", "run.countdown", "run.countdown", "run.go", "run.go", "run.stop", "run.stop", "run.halt", "run.halt", "run.power-off", "run.down", "run.up", "run.lap", "run.fan-dead", "run.abandon", "run.fan", "run.set",
        "shot", "shot", "shot.read", "shot.read", "shot.photo", "shot.set", "weather", "cooldown.begin", "cooldown.end", "charge", "nudge", "nudge", "undo", "undo", "run.same", "run.two", "clock.choice", "clock.offset", "device.set", "remove",
    ];

    /// <summary>One day.</summary>
    public static MirrorDay One(Random chance)
    {
        var day = Id(chance, 4);
        Guid[] devices = [Id(chance, 4), Id(chance, 4), Id(chance, 4)], runs = [Id(chance, 7), Id(chance, 7)], shots = [Id(chance, 7), Id(chance, 7), Id(chance, 7)], coolings = [Id(chance, 7)], options = [Id(chance, 7), Id(chance, 7)];
        var one = new Making(chance, day, devices, runs, shots, coolings, options);
        foreach (var run in runs) one.Add("run.begin", run, ("day", day), ("number", chance.Next(1, 3)), ("option", One(chance, options)));
        for (int i = 0, count = chance.Next(3, 40); i < count; i++) one.AddAny(One(chance, Kinds));
        return new MirrorDay(day, Start + Duration.FromMilliseconds(chance.Next(0, 900_000)), chance.Next(1, 4), options, one.Entries);
    }

    static T One<T>(Random chance, IReadOnlyList<T> of) => of[chance.Next(of.Count)];

    static Guid Id(Random chance, int version)
    {
        var bytes = new byte[16];
        chance.NextBytes(bytes);
        bytes[6] = (byte)((bytes[6] & 0x0f) | (version << 4));
        bytes[8] = (byte)((bytes[8] & 0x3f) | 0x80);
        return new Guid(bytes, bigEndian: true);
    }

    sealed class Making(Random chance, Guid day, Guid[] devices, Guid[] runs, Guid[] shots, Guid[] coolings, Guid[] options)
    {
        public List<StoredEntry> Entries { get; } = [];

        public void Add(string kind, Guid about, params (string, object?)[] fields)
        {
            var of = kind is "run.stop" or "run.halt" or "run.go" && Entries.Count > 0 && chance.Next(6) == 0 ? Entries.FirstOrDefault(entry => entry.Entry.Kind == kind)?.Id : null;
            var at = Start + Duration.FromMilliseconds(chance.Next(-60_000, 840_000));
            Entries.Add(new StoredEntry(new Entry(Id(chance, 7), kind, at, about, of, EntryBody.Of(fields)), kind is "clock.offset" or "device.set" && devices.Contains(about) ? about : One(chance, devices), Entries.Count + 1, at));
        }

        public void AddAny(string kind)
        {
            var run = One(chance, runs);
            var shot = One(chance, shots);
            var device = One(chance, devices);
            // Of undos of undos there are to be some.
            var entry = (chance.Next(3) == 0 ? Entries.LastOrDefault(one => one.Entry.Kind is "undo" or "nudge") : null) ?? One(chance, Entries);
            switch (kind)
            {
                case "run.begin": Add(kind, run, ("day", day), ("kind", One(chance, ["test", "warm-up", "void"]))); break;
                case "run.countdown": Add(kind, run, ("seconds", (double)chance.Next(0, 30)), ("driveS", (double)chance.Next(10, 400))); break;
                case "run.go" or "run.halt": Add(kind, run, chance.Next(3) == 0 ? [("secondsAgo", chance.Next(0, 300) / 10.0)] : []); break;
                case "run.stop": Add(kind, run, ("by", One(chance, ["tap", "horn", "later"])), ("secondsAgo", chance.Next(0, 3000) / 1000.0)); break;
                case "run.abandon": if (chance.Next(4) == 0) Add(kind, run, ("because", "crash")); break;
                case "run.fan": Add(kind, run, ("when", One(chance, ["before", "after"])), ("turning", One<object?>(chance, [true, false, null]))); break;
                case "run.set": Add(kind, run, One<(string, object?)>(chance, [("number", chance.Next(1, 3)), ("option", One(chance, options)), ("option", null), ("kind", "void"), ("chargeBackMah", 900.0)])); break;
                case "shot": Add(kind, shot, ("run", run), ("spot", "can")); break;
                case "shot.read": Add(kind, shot, ("shot", shot), ("value", chance.Next(200, 900) / 10.0), ("unit", One(chance, ["c", "f"]))); break;
                case "shot.photo": Add(kind, shot, ("shot", shot), ("photo", Id(chance, 7))); break;
                case "shot.set": Add(kind, shot, One<(string, object?)>(chance, [("run", run), ("untimed", true), ("windingHotMohm", 30.5)])); break;
                case "weather": Add(kind, day, ("day", day), ("airC", chance.Next(15, 35) + 0.5)); break;
                case "cooldown.begin": Add(kind, coolings[0], ("run", run), ("way", "shade")); break;
                case "cooldown.end": Add(kind, coolings[0]); break;
                case "charge": Add(kind, run, ("run", run), ("mah", (double)chance.Next(100, 3000))); break;
                case "nudge": Add(kind, entry.Entry.About, ("of", entry.Id), ("seconds", (double)chance.Next(-3, 4))); break;
                case "undo": Add(kind, entry.Entry.About, ("of", entry.Id)); break;
                case "run.same" or "run.two": if (chance.Next(2) == 0) Add(kind, runs[0], ("other", runs[1])); break;
                case "clock.choice": Add(kind, run, ("run", run), ("event", One(chance, Events)), ("entry", entry.Id)); break;
                case "clock.offset": Add(kind, device, ("ms", (double)chance.Next(-200_000, 200_000))); break;
                case "device.set": Add(kind, device, ("role", One(chance, Roles))); break;
                case "remove": if (chance.Next(5) == 0) Add(kind, chance.Next(2) == 0 ? shot : run); break;
                default: Add(kind, run); break;
            }
        }
    }
}
