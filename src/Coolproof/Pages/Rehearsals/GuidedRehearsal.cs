using System.Globalization;
using Coolproof.Notebook.Journal;
using Coolproof.Rehearsal;
using NodaTime;

namespace Coolproof.Pages.Rehearsals;

/// <summary>
/// A made-up evening that a person drives on the run clock, with time that runs faster: a day of its own whose name holds the seed. Everything that happened in it follows
/// from the seed and from what was pressed.
/// </summary>
internal static class GuidedRehearsal
{
    const string Named = "Guided rehearsal ";
    const double DriveS = 360, CooledByK = 8, AirC = 28, AirDriftK = -4;
    const int Rounds = 2, WeatherMin = 20;

    /// <summary>Its clock begins so long before it is begun: an evening of some hours is over before the bench's clock is there.</summary>
    static readonly Duration Length = Duration.FromHours(6);

    static readonly RehearsalOption[] Options = [new("bare can", HasFan: false), new("clip-on finned clamp", HasFan: false), new("rear blower")];

    /// <summary>The seed of a guided rehearsal; null where a day is none.</summary>
    public static long? SeedOf(PitNotebook notebook, NotedDay day) =>
        Demo.SeedOf(notebook, day, Named);

    /// <summary>When its clock begins: with the first note of its air, which is the earliest thing that is said of it.</summary>
    public static Instant BeginsAt(NotedDay day) => day.Since;

    /// <summary>The motor of a seed.</summary>
    public static LiveDay Motor(long seed) => new(new RehearsalSettings(seed, Options, Rounds) { DriveS = DriveS, AirFromC = [AirC], AirDriftK = AirDriftK });

    /// <summary>The entries that begin one: its day, its plan, its options (shared with what is made up already), and the air as the thermometer will show it.</summary>
    /// <param name="notebook">The notebook.</param>
    /// <param name="seed">Random seed.</param>
    /// <param name="now">The clock.</param>
    /// <param name="offset">Local time minus UTC.</param>
    /// <param name="day">UUID of its day.</param>
    public static IReadOnlyList<Entry> Begin(PitNotebook notebook, long seed, Instant now, Offset offset, out Guid day)
    {
        var motor = Motor(seed);
        var id = day = Guid.CreateVersion7(now.ToDateTimeOffset());
        List<Entry> entries = [];
        void Say(string kind, Guid about, params (string, object?)[] fields) =>
            entries.Add(new Forms.Said(kind, about, EntryBody.Of(fields)).At(now + Duration.FromMilliseconds(entries.Count)));
        var name = string.Create(CultureInfo.InvariantCulture, $"{Named}{seed}");
        Say(EntryKind.Import, Guid.CreateVersion7(now.ToDateTimeOffset()), ("name", $"{Demo.ImportName}: {name}"), ("sha256", Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(name)))), ("runs", 0));
        var options = Options.Select(option => notebook.Options.FirstOrDefault(there => there.Name == option.Name && Demo.Made(notebook, there.Id))?.Id ?? New(option)).ToArray();
        Guid New(RehearsalOption option)
        {
            var made = Guid.CreateVersion7(now.ToDateTimeOffset());
            Say(EntryKind.OptionSet, made, ("name", option.Name), ("fans", option.HasFan ? 1 : 0));
            return made;
        }
        var order = Coolproof.Advice.Orders.OrderSearch.Best(
            Coolproof.Advice.Orders.DayLimits.Plain(Options.Length, Length.TotalSeconds, 240) with { MostRounds = Rounds }, new Coolproof.Advice.Orders.RunNoise(), seed).Options;
        Say(EntryKind.DaySet, id, ("name", name), ("date", now.WithOffset(offset).Date.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture)), ("utcOffsetMin", offset.Seconds / 60), ("driveS", DriveS), ("shotsPerRun", 3),
            ("plan", order.Select(place => options[place]).ToArray()), ("note", "All made up: no motor was driven."));
        var from = now - Length;
        for (var minute = 0; minute <= Length.TotalMinutes; minute += WeatherMin)
            entries.Add(new Forms.Said(EntryKind.Weather, id, EntryBody.Of(("day", id), ("airC", motor.AirNotedC(60 * minute)), ("airBy", "thermometer"))).At(from + Duration.FromMinutes(minute)));
        return entries;
    }

    /// <summary>The runs as they were driven, with what truly happened; those that have not halted yet are left out.</summary>
    public static IReadOnlyList<(NotedRun Run, DrivenRun Driven, DrivenTruth Truth)> Driven(PitNotebook notebook, NotedDay day, long seed)
    {
        var begin = BeginsAt(day);
        NotedRun[] noted = [.. notebook.RunsOf(day.Id).Where(run => run is { Go: not null } && (run.Halt ?? run.Stop) is not null && Place(notebook, run) >= 0)];
        DrivenRun[] driven = [.. noted.Select(run => Of(notebook, run, Following(notebook, day, run), begin))];
        return [.. noted.Zip(driven, Motor(seed).Drive(driven))];
    }

    /// <summary>What the display showed at a shot; null where it can't be told yet.</summary>
    public static double? Read(PitNotebook notebook, NotedDay day, long seed, Guid shot)
    {
        foreach (var (run, driven, truth) in Driven(notebook, day, seed))
        {
            var place = run.Shots.Where(one => one.At is not null).Select(one => one.Id).ToList().IndexOf(shot);
            if (place >= 0 && double.IsFinite(truth.ReadC[place])) return truth.ReadC[place];
        }
        return null;
    }

    static int Place(PitNotebook notebook, NotedRun run) =>
        run.Option is { } id && notebook.Find<NotedOption>(id) is { } option ? Array.FindIndex(Options, one => string.Equals(one.Name, option.Name, StringComparison.OrdinalIgnoreCase)) : -1;

    static NotedRun? Following(PitNotebook notebook, NotedDay day, NotedRun run) => notebook.RunsOf(day.Id).SkipWhile(one => one.Id != run.Id).Skip(1).FirstOrDefault();

    static DrivenRun Of(PitNotebook notebook, NotedRun run, NotedRun? next, Instant begin)
    {
        double S(Instant at) => (at - begin).TotalSeconds;
        var halt = S((run.Halt ?? run.Stop)!.At);
        var stop = Math.Min(S((run.Stop ?? run.Halt)!.At), halt);
        return new DrivenRun(
            Place(notebook, run), S(run.Go!.At), Math.Max(stop, S(run.Go.At)), halt, run.PowerOff is { } off ? S(off.At) : double.PositiveInfinity,
            [.. run.Shots.Where(shot => shot.At is not null).Select(shot => new DrivenShot(S(shot.At!.Value), BitConverter.ToInt32(shot.Id.ToByteArray(), 12)))],
            [.. (next?.CoolDowns ?? []).Select(cooling => new DrivenCooling(
                S(cooling.Begin), cooling.End is { } end ? S(end) : double.PositiveInfinity, cooling.Way == "own-fan", cooling.Way is "pit-fan" or "cooled-air", cooling.Way == "cooled-air" ? CooledByK : 0))]);
    }
}
