using NodaTime;

namespace Coolproof.Notebook.Journal.Folding;

/// <summary>Folds a run out of the lines of all UUIDs that it goes by.</summary>
internal sealed class RunFold
{
    private readonly Line[] _live;
    private readonly Line[] _lines;
    private readonly Func<Guid, DeviceRole> _roleOf;
    // Of stamps that don't count; there are hardly ever any.
    private Dictionary<Guid, EventStanding>? _standing;

    private RunFold(Line[] lines, Func<Guid, DeviceRole> roleOf)
    {
        _lines = lines;
        _live = LeafFold.LiveOf(ThingType.Run, lines);
        _roleOf = roleOf;
    }

    /// <summary>The run; null where no live line makes one.</summary>
    /// <param name="ids">UUIDs that it goes by, the smallest first.</param>
    /// <param name="lines">Their lines in order, each once.</param>
    /// <param name="shots">Its shots.</param>
    /// <param name="coolDowns">Its coolings.</param>
    /// <param name="roleOf">What each device does.</param>
    public static NotedRun? Of(IReadOnlyList<Guid> ids, Line[] lines, IEnumerable<NotedShot> shots, IEnumerable<NotedCoolDown> coolDowns, Func<Guid, DeviceRole> roleOf) =>
        new RunFold(lines, roleOf).Run(ids, shots, coolDowns);

    private NotedRun? Run(IReadOnlyList<Guid> ids, IEnumerable<NotedShot> shots, IEnumerable<NotedCoolDown> coolDowns)
    {
        if (!Array.Exists(_live, line => line.Kind.StartsWith("run.", StringComparison.Ordinal) && line.Kind is not (EntryKind.RunSame or EntryKind.RunTwo))) return null;
        Countdown? countdown = Last(EntryKind.RunCountdown) is { } down ? new Countdown(down.At, down.Body.Number("seconds") ?? 0, down.Body.Number("driveS") ?? 0) : null;
        ClockedInstant? go = Clocked(EntryKind.RunGo, "go") ?? ByCountdown(countdown);
        ClockedInstant? stop = Clocked(EntryKind.RunStop, "stop");
        ClockedInstant? halt = Clocked(EntryKind.RunHalt, "halt");
        ClockedInstant? powerOff = Clocked(EntryKind.RunPowerOff, "power-off");
        Line? fanAfter = LastFan("after");
        return new NotedRun(ids[0], FieldMerge.Of(Live(EntryKind.RunBegin), Live(EntryKind.RunSet)), _live[0].Tapped, LeafFold.Removed(_lines))
        {
            OtherIds = [.. ids.Skip(1)],
            Devices = Devices(),
            Countdown = countdown,
            Go = go,
            Stop = stop,
            Halt = halt,
            PowerOff = powerOff,
            StandStills = StandStills((stop ?? halt)?.At),
            FanDeadAt = Live(EntryKind.RunFanDead) is [_, ..] dead ? dead.Min(line => line.At) : null,
            Abandoned = Last(EntryKind.RunAbandon) is not null,
            AbandonedBecause = Last(EntryKind.RunAbandon)?.Body.Text("because"),
            LapTimes = Laps(),
            FanTurnedBefore = LastFan("before")?.Body.YesNo("turning"),
            FanTurnedAfter = fanAfter?.Body.YesNo("turning"),
            FanAfterAnswered = fanAfter is not null,
            ChargeBackMah = ChargeBack(),
            Shots = Sorted(shots, OrderOfShots),
            CoolDowns = Sorted(coolDowns, OrderOfCoolDowns),
            Events = Events(),
        };
    }

    private Line[] Live(string kind) => Array.FindAll(_live, line => line.Kind == kind);

    private List<Guid> Devices()
    {
        List<Guid> devices = new(1);
        foreach (Line line in _live)
        {
            if (!devices.Contains(line.Stored.Device)) devices.Add(line.Stored.Device);
        }

        return devices;
    }

    private static T[] Sorted<T>(IEnumerable<T> things, Comparison<T> order) where T : NotedThing
    {
        T[] sorted = [.. things.Where(thing => !thing.Removed)];
        Array.Sort(sorted, order);
        return sorted;
    }

    private static int OrderOfShots(NotedShot a, NotedShot b)
    {
        int by = (a.At ?? Instant.MaxValue).CompareTo(b.At ?? Instant.MaxValue);
        return by != 0 ? by : PitNotebook.InList.Compare(a, b);
    }

    private static int OrderOfCoolDowns(NotedCoolDown a, NotedCoolDown b)
    {
        int by = a.Begin.CompareTo(b.Begin);
        return by != 0 ? by : a.Id.CompareTo(b.Id);
    }

    private Line? Last(string kind) => Array.FindLast(_live, line => line.Kind == kind);

    private Line? LastFan(string when) => Array.FindLast(_live, line => line.Kind == EntryKind.RunFan && line.Body.Text("when") == when);

    // One device's first press counts. Of several devices: the one that a person chose, else one whose role is the clock, else the earliest.
    private ClockedInstant? Clocked(string kind, string name)
    {
        Line[] all = Live(kind);
        if (all.Length == 0) return null;
        if (all.Length == 1) return new ClockedInstant(all[0].At, Event(all[0]), [], 0, ChoiceOf(all, name) is not null);
        Line[] firsts = [.. all.GroupBy(line => line.Stored.Device).Select(device => device.First())];
        Guid? choice = ChoiceOf(all, name);
        Line counted = choice is { } chosen
            ? all.First(line => line.Id == chosen)
            : firsts.OrderBy(line => _roleOf(line.Stored.Device) == DeviceRole.Clock ? 0 : 1).ThenBy(line => line.At).ThenBy(line => line.Id).First();
        foreach (Line line in all)
        {
            if (line.Id != counted.Id) (_standing ??= [])[line.Id] = line.Stored.Device == counted.Stored.Device ? EventStanding.PressedAgain : EventStanding.OtherDevice;
        }

        Line[] compared = [.. firsts.Select(line => line.Stored.Device == counted.Stored.Device ? counted : line)];
        double spreadS = (compared.Max(line => line.At) - compared.Min(line => line.At)).TotalSeconds;
        return new ClockedInstant(counted.At, Event(counted), [.. all.Where(line => line.Id != counted.Id).Order(Line.InOrderAt).Select(Event)], spreadS, choice is not null);
    }

    private Guid? ChoiceOf(Line[] stamps, string name) =>
        Array.FindLast(_live, line => line.Kind == EntryKind.ClockChoice && line.Body.Text("event") == name && Array.Exists(stamps, stamp => stamp.Id == line.Body.Id("entry")))?.Body.Id("entry");

    private ClockedInstant? ByCountdown(Countdown? countdown)
    {
        if (countdown is null || Last(EntryKind.RunCountdown) is not { } line) return null;
        return new ClockedInstant(countdown.Go, Event(line) with { At = countdown.Go }, [], 0, false);
    }

    // Two phones that both note it, or a press too many, make no second standstill.
    private List<StandStill> StandStills(Instant? end)
    {
        List<StandStill> stills = [];
        Instant? since = null;
        Line[] said = Array.FindAll(_live, line => line.Kind is EntryKind.RunDown or EntryKind.RunUp && (end is null || line.At <= end));
        Array.Sort(said, Line.OrderAt);
        foreach (Line line in said)
        {
            if (line.Kind == EntryKind.RunDown)
            {
                since ??= line.At;
            }
            else if (since is { } down)
            {
                stills.Add(new StandStill(down, line.At));
                since = null;
            }
        }

        if (since is { } still) stills.Add(new StandStill(still, end));
        return stills;
    }

    // Two phones may both count laps: the one that counted more missed fewer.
    private List<Instant> Laps() =>
        Live(EntryKind.RunLap).GroupBy(line => line.Stored.Device).OrderByDescending(device => device.Count()).ThenBy(device => device.Key).FirstOrDefault()?.Select(line => line.At).Order().ToList() ?? [];

    private double? ChargeBack()
    {
        Line? said = Array.FindLast(_live, line => line.Kind == EntryKind.Charge || (line.Kind == EntryKind.RunSet && line.Body.Has("chargeBackMah")));
        return said?.Body.Number(said.Kind == EntryKind.Charge ? "mah" : "chargeBackMah");
    }

    private RunEvent[] Events()
    {
        Line[] stamps = Array.FindAll(_lines, line => line.Type == ThingType.Run && IsStamp(line.Kind));
        Array.Sort(stamps, Line.OrderAt);
        return Array.ConvertAll(stamps, Event);
    }

    private static bool IsStamp(string kind) =>
        kind is not (EntryKind.RunSet or EntryKind.RunSame or EntryKind.RunTwo or EntryKind.ClockChoice or EntryKind.Charge);

    private RunEvent Event(Line line) => new(line.Id, line.Kind, line.Stored.Device, line.At, line.Tapped, line.NudgedS, StandingOf(line), line.Body);

    private EventStanding StandingOf(Line line) => line.Standing switch
    {
        LineStanding.TakenBack => EventStanding.TakenBack,
        LineStanding.Corrected => EventStanding.Corrected,
        _ => _standing?.GetValueOrDefault(line.Id, EventStanding.Counts) ?? EventStanding.Counts,
    };
}
