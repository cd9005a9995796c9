using Coolproof.Notebook.Journal.Folding;
using NodaTime;

namespace Coolproof.Notebook.Journal;

/// <summary>
/// What entries add up to: everything that is owned, asked, driven and read. Never changes; may be read by many at once. The notebook of the same entries is the same,
/// whatever the order they came in. Lists leave out what was removed; <see cref="Find{T}"/> finds that too.
/// </summary>
public sealed class PitNotebook
{
    private readonly Shelves _shelves;
    private readonly Lazy<IReadOnlyList<NotedDay>> _days;
    private readonly Lazy<IReadOnlyList<NotedRun>> _runs;
    private readonly Lazy<ILookup<Guid, NotedRun>> _runsByDay;
    private readonly Lazy<ILookup<Guid, NotedPhoto>> _photosByThing;

    internal PitNotebook(Shelves shelves, int entries, long cursor)
    {
        _shelves = shelves;
        Entries = entries;
        Cursor = cursor;
        _days = new(() => [.. Listed<NotedDay>(ThingType.Day).OrderBy(DayTime).ThenBy(day => day.Order ?? double.MaxValue).ThenBy(day => day.Id)]);
        _runs = new(() => [.. Listed<NotedRun>(ThingType.Run).Where(run => run.Day is not { } day || Find<NotedDay>(day)?.Removed != true).OrderBy(RunTime).ThenBy(run => run.Order ?? run.Number ?? double.MaxValue).ThenBy(run => run.Since).ThenBy(run => run.Id)]);
        _runsByDay = new(() => Runs.Where(run => run.Day is not null).ToLookup(run => run.Day!.Value));
        _photosByThing = new(() => Photos.Where(photo => photo.About is not null).ToLookup(photo => photo.About!.Value));
    }

    /// <summary>No entries.</summary>
    public static PitNotebook Empty { get; } = new(Shelves.Empty, 0, 0);

    /// <summary>The notebook of entries; for one that grows, keep a <see cref="NotebookFold"/>.</summary>
    public static PitNotebook Of(IEnumerable<StoredEntry> entries) => new NotebookFold().Add(entries);

    /// <summary>How many different entries it is made of.</summary>
    public int Entries { get; }
    /// <summary>The largest <see cref="StoredEntry.Seq"/> among them.</summary>
    public long Cursor { get; }

    /// <summary>Class cards.</summary>
    public IReadOnlyList<NotedClass> ClassCards => List<NotedClass>(ThingType.Class);
    /// <summary>Vehicles.</summary>
    public IReadOnlyList<NotedVehicle> Vehicles => List<NotedVehicle>(ThingType.Vehicle);
    /// <summary>Motors.</summary>
    public IReadOnlyList<NotedMotor> Motors => List<NotedMotor>(ThingType.Motor);
    /// <summary>Cooling options with their parts.</summary>
    public IReadOnlyList<NotedOption> Options => List<NotedOption>(ThingType.Option);
    /// <summary>Cooling options by time of making, removed ones too: the place in this list gives an option its colour and mark, and does not change when another is removed.</summary>
    public IReadOnlyList<NotedOption> OptionsEver => [.. _shelves.Of(ThingType.Option).Values.Cast<NotedOption>().OrderBy(option => option.Since).ThenBy(option => option.Id)];
    /// <summary>Instruments with their checks.</summary>
    public IReadOnlyList<NotedInstrument> Instruments => List<NotedInstrument>(ThingType.Instrument);
    /// <summary>Packs.</summary>
    public IReadOnlyList<NotedPack> Packs => List<NotedPack>(ThingType.Pack);
    /// <summary>Chargers.</summary>
    public IReadOnlyList<NotedCharger> Chargers => List<NotedCharger>(ThingType.Charger);
    /// <summary>Questions.</summary>
    public IReadOnlyList<NotedQuestion> Questions => List<NotedQuestion>(ThingType.Question);
    /// <summary>Readings after real races.</summary>
    public IReadOnlyList<NotedRaceReading> RaceReadings => List<NotedRaceReading>(ThingType.RaceReading);
    /// <summary>Photos.</summary>
    public IReadOnlyList<NotedPhoto> Photos => List<NotedPhoto>(ThingType.Photo);
    /// <summary>Devices that gave themselves a name or a role, or measured their clock.</summary>
    public IReadOnlyList<NotedDevice> Devices => List<NotedDevice>(ThingType.Device);
    /// <summary>Imports of readings tables.</summary>
    public IReadOnlyList<NotedImport> Imports => List<NotedImport>(ThingType.Import);
    /// <summary>Traces of loggers.</summary>
    public IReadOnlyList<NotedTrace> Traces => List<NotedTrace>(ThingType.Trace);
    /// <summary>The settings.</summary>
    public NotedSettings Settings => Find<NotedSettings>(Guid.Empty) ?? NotedSettings.None;
    /// <summary>Days in the order of time.</summary>
    public IReadOnlyList<NotedDay> Days => _days.Value;
    /// <summary>Runs in the order of time; those that have not gone yet last.</summary>
    public IReadOnlyList<NotedRun> Runs => _runs.Value;

    /// <summary>Runs of a day in the order of time.</summary>
    public IReadOnlyList<NotedRun> RunsOf(Guid day) => [.. _runsByDay.Value[day]];

    /// <summary>Runs of a day in no order, removed ones too: for whoever holds their entries and must learn of the removal.</summary>
    public IEnumerable<NotedRun> RunsEver(Guid day) => _shelves.Of(ThingType.Run).Values.Cast<NotedRun>().Where(run => run.Day == day);

    /// <summary>Photos of a thing.</summary>
    public IReadOnlyList<NotedPhoto> PhotosOf(Guid thing) => [.. _photosByThing.Value[thing]];

    /// <summary>Traces of a day.</summary>
    public IReadOnlyList<NotedTrace> TracesOf(Guid day) => [.. Traces.Where(trace => trace.Day == day)];

    /// <summary>A thing by its UUID (a run by any UUID that it goes by), removed or not; null when there is none.</summary>
    /// <typeparam name="T">Type of the thing.</typeparam>
    public T? Find<T>(Guid id) where T : NotedThing
    {
        ThingType type = TypeOf(typeof(T));
        if (type == ThingType.Run && _shelves.Groups.TryGetValue(id, out Guid[]? group)) id = group[0];
        return _shelves.Of(type).Find(id) as T;
    }

    /// <summary>The history of a thing (of a run: with its shots and coolings) in the order in which it was said.</summary>
    public IReadOnlyList<HistoryLine> History(Guid thing)
    {
        HashSet<Guid> things = [thing];
        if (_shelves.Groups.TryGetValue(thing, out Guid[]? group)) things.UnionWith(group);
        if (Find<NotedRun>(thing) is not null)
        {
            things.UnionWith(_shelves.Of(ThingType.Shot).Values.Where(shot => ((NotedShot)shot).Run is { } run && things.Contains(run)).Select(shot => shot.Id).ToArray());
            things.UnionWith(_shelves.Of(ThingType.CoolDown).Values.Where(cooling => ((NotedCoolDown)cooling).Run is { } run && things.Contains(run)).Select(cooling => cooling.Id).ToArray());
        }

        return HistoryLines.Of(things.SelectMany(id => _shelves.Lines.Find(id) ?? []));
    }

    /// <summary>Pairs of runs of one day that several devices began under one number, and nobody said yet whether they are one.</summary>
    public IReadOnlyList<SameRunOffer> Offers(Guid day)
    {
        List<SameRunOffer> offers = [];
        foreach (IGrouping<int, NotedRun> same in RunsOf(day).Where(run => run.Number is not null && !run.Abandoned).GroupBy(run => run.Number!.Value))
        {
            NotedRun[] runs = [.. same.OrderBy(run => run.Id)];
            for (int i = 0; i < runs.Length; i++)
            {
                for (int j = i + 1; j < runs.Length; j++)
                {
                    // A number used twice on one device is a slip of that person, not two phones at one run.
                    bool decided = _shelves.Decided.ContainsKey(RunGroups.Pair(runs[i].Id, runs[j].Id));
                    if (!decided && !runs[i].Devices.SequenceEqual(runs[j].Devices)) offers.Add(new SameRunOffer(day, same.Key, runs[i].Id, runs[j].Id));
                }
            }
        }

        return offers;
    }

    /// <summary>The number that the next run of a day takes.</summary>
    public int NextNumber(Guid day) => RunsOf(day).Select(run => run.Number ?? 0).DefaultIfEmpty(0).Max() + 1;

    /// <summary>Things as they stand in lists.</summary>
    internal static Comparer<NotedThing> InList { get; } = Comparer<NotedThing>.Create((a, b) =>
    {
        int by = (a.Order ?? double.MaxValue).CompareTo(b.Order ?? double.MaxValue);
        if (by == 0) by = a.Since.CompareTo(b.Since);
        return by != 0 ? by : a.Id.CompareTo(b.Id);
    });

    internal Shelves Shelves => _shelves;

    private List<T> List<T>(ThingType type) where T : NotedThing => [.. Listed<T>(type).Order<T>(InList)];

    private IEnumerable<T> Listed<T>(ThingType type) where T : NotedThing => _shelves.Of(type).Values.Where(thing => !thing.Removed).Cast<T>();

    private static Instant DayTime(NotedDay day) => day.Date is { } date ? date.AtMidnight().WithOffset(day.UtcOffset).ToInstant() : day.Since;

    // A run that was typed, with a start but without a stamp, takes its place by that.
    private Instant RunTime(NotedRun run)
    {
        if (run.Go is { } go) return go.At;
        return RunStart.Of(run, null) is { } start ? start.Local.WithOffset(start.Offset ?? (run.Day is { } day ? Find<NotedDay>(day)?.UtcOffset : null) ?? Offset.Zero).ToInstant() : Instant.MaxValue;
    }

    private static ThingType TypeOf(Type type) => type.Name switch
    {
        nameof(NotedClass) => ThingType.Class,
        nameof(NotedVehicle) => ThingType.Vehicle,
        nameof(NotedMotor) => ThingType.Motor,
        nameof(NotedOption) => ThingType.Option,
        nameof(NotedPart) => ThingType.Part,
        nameof(NotedInstrument) => ThingType.Instrument,
        nameof(NotedGunCheck) => ThingType.GunCheck,
        nameof(NotedPack) => ThingType.Pack,
        nameof(NotedCharger) => ThingType.Charger,
        nameof(NotedQuestion) => ThingType.Question,
        nameof(NotedDay) => ThingType.Day,
        nameof(NotedRun) => ThingType.Run,
        nameof(NotedShot) => ThingType.Shot,
        nameof(NotedCoolDown) => ThingType.CoolDown,
        nameof(NotedRaceReading) => ThingType.RaceReading,
        nameof(NotedPhoto) => ThingType.Photo,
        nameof(NotedDevice) => ThingType.Device,
        nameof(NotedSettings) => ThingType.Settings,
        nameof(NotedImport) => ThingType.Import,
        nameof(NotedTrace) => ThingType.Trace,
        _ => throw new ArgumentException($"{type.Name} is no type of thing that a notebook holds.", nameof(type)),
    };
}
