using System.Globalization;
using Coolproof.Notebook.Tables;
using NodaTime;

namespace Coolproof.Notebook.Journal;

/// <summary>Makes the runs of one day into runs of the readings table.</summary>
internal sealed class DayTable(PitNotebook notebook, NotedDay day, string name, List<TableProblem> questions)
{
    // What a stopwatch shows; a drive shorter than that was a slip of the finger.
    private const double ShortestS = 0.01;

    private readonly HashSet<string> _names = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Runs that were driven, in the order of the table.</summary>
    public IEnumerable<TabledRun> Of(IReadOnlyList<NotedRun> runs)
    {
        TabledRun[] tabled = [.. runs.OrderBy(run => run.Order ?? run.Number ?? double.MaxValue).Select(OfRun).OfType<TabledRun>()];
        if (!Array.TrueForAll(tabled, run => run.Run.StartedAt is not null)) return tabled;
        bool offsets = Array.TrueForAll(tabled, run => run.Run.StartedOffset is not null);
        return tabled.OrderBy(run => run.Run.StartedAt!.Value.WithOffset(offsets ? run.Run.StartedOffset!.Value : Offset.Zero).ToInstant())
            .ThenBy(run => run.Run.Load.Vehicle, StringComparer.OrdinalIgnoreCase).ThenBy(run => run.Run.Name, StringComparer.OrdinalIgnoreCase);
    }

    private TabledRun? OfRun(NotedRun run)
    {
        List<Reading> readings = [.. run.Shots.Select(shot => Of(run, shot)).OfType<Reading>()];
        bool ended = run.Stop is not null || run.Halt is not null || run.Abandoned;
        bool driven = run.Fields.YesNo("typed") == true || run.Fields.Number("driveS") is not null || (run.Go is not null && ended) || readings.Count > 0;
        if (!driven) return null;
        NotedOption? option = run.Option is { } id ? notebook.Find<NotedOption>(id) : null;
        if (option is null || option.Name.Length == 0)
        {
            questions.Add(new TableProblem(0, "option", $"run {Title(run)} of {name} without a cooling option", "its option: without it the run, and the warmth that it left, are left out"));
            return null;
        }

        RunKind kind = run.Abandoned ? RunKind.Void : run.Kind;
        string? note = run.Note;
        if (readings.Count == 0 && kind is RunKind.Test or RunKind.Race)
        {
            // It warmed the motor all the same.
            kind = RunKind.Void;
            note ??= "no reading";
        }

        double? drive = run.DriveS >= ShortestS ? run.DriveS : null;
        if (run.DriveS is not null && drive is null) questions.Add(new TableProblem(0, "drive_s", $"run {Title(run)} of {name}: go and stop at the same instant", "a drive of seconds; one is assumed"));
        return new TabledRun(run.Id, Assembled(run, option, kind, note, drive, readings), run.Countdown?.DriveS, day.DriveS);
    }

    private Run Assembled(NotedRun run, NotedOption option, RunKind kind, string? note, double? drive, List<Reading> readings)
    {
        RunStart? start = RunStart.Of(run, day);
        RunAir? air = RunAir.Of(run, day);
        NotedWeather? weather = NearWeather(run);
        return new Run(
            name, NotebookTable.Unique(_names, Title(run)), option.Name, start?.Local, start?.Offset, kind, drive ?? 0, drive is null, run.RollInS,
            drive is { } known ? Math.Min(run.StoodS, known) : run.StoodS, Word<CutShort>(run, "cutShort", Field.CutShort) ?? (run.Abandoned ? CutShort.Other : CutShort.No), air?.AirC,
            air?.By ?? Word<AirSource>(run, "airBy", Field.AirBy) ?? AirSource.Thermometer, run.Fields.Number("startC"), run.Fields.YesNo("remounted"), FanOf(run, option), FanAfterOf(run, option), run.PowerOffS,
            LoadOf(run), new PackNotes(run.Pack is { } pack ? NameOf<NotedPack>(pack) : null, run.Fields.Number("packStartV"), run.ChargeBackMah), Ordered(readings))
        {
            Sky = Word<Sky>(run, "sky", Field.Sky) ?? weather?.Sky,
            Wind = Word<Wind>(run, "wind", Field.Wind) ?? weather?.Wind,
            Track = Word<TrackState>(run, "track", Field.Track) ?? weather?.Track,
            TrackC = run.Fields.Number("trackC") ?? weather?.TrackC,
            Laps = run.Fields.Whole("laps") ?? (run.LapTimes.Count > 0 ? run.LapTimes.Count : null),
            MeanLapS = run.Fields.Number("meanLapS") ?? MeanLap(run.LapTimes),
            Note = note,
        };
    }

    private Reading? Of(NotedRun run, NotedShot shot)
    {
        if (shot.ReadC is null && shot.Winding is null) return null;
        NotedInstrument? instrument = (shot.Instrument ?? day.Instrument) is { } id ? notebook.Find<NotedInstrument>(id) : null;
        return new Reading(
            0, shot.ReadC, run.StopToReadS(shot), instrument is { Name.Length: > 0 } ? instrument.Name : "gun", shot.EmissivitySet ?? instrument?.Emissivity, shot.Surface, shot.Spot, shot.Hold,
            shot.Winding, shot.ExcludedBecause, shot.Note);
    }

    private LoadNotes LoadOf(NotedRun run) => new(
        run.Fields.Text("driver") ?? day.Driver, run.Fields.Text("surface") ?? day.Surface, run.Fields.Text("venue") ?? day.Venue,
        (run.Fields.Id("vehicle") ?? day.Vehicle) is { } vehicle ? NameOf<NotedVehicle>(vehicle) : null, (run.Fields.Id("motor") ?? day.Motor) is { } motor ? NameOf<NotedMotor>(motor) : null,
        run.Fields.Text("tyres") ?? day.Fields.Text("tyres"), run.Fields.Text("controllerProfile") ?? day.Fields.Text("controllerProfile"),
        run.Fields.Whole("pinion") ?? day.Fields.Whole("pinion"), run.Fields.Whole("spur") ?? day.Fields.Whole("spur"), run.Fields.Number("timingDeg") ?? day.Fields.Number("timingDeg"));

    private static FanInRun FanOf(NotedRun run, NotedOption option) => Word<FanInRun>(run, "fan", Field.Fan)
        ?? (run.FanDeadAt is not null ? FanInRun.Failed : option.Fans == 0 ? FanInRun.None : run.FanTurnedBefore switch { true => FanInRun.Ok, false => FanInRun.Failed, null => FanInRun.Unknown });

    private static FanAfterStop FanAfterOf(NotedRun run, NotedOption option) => Word<FanAfterStop>(run, "fanAfterStop", Field.FanAfterStop)
        ?? (option.Fans == 0 ? FanAfterStop.None : run.FanTurnedAfter switch { true => FanAfterStop.On, false => FanAfterStop.Off, null => FanAfterStop.Unknown });

    private NotedWeather? NearWeather(NotedRun run) => run.Go is { } go
        ? day.Weather.Where(weather => Apart(weather.At, go.At) <= LooseEnds.AirHolds).OrderBy(weather => Apart(weather.At, go.At)).FirstOrDefault()
        : null;

    // Of the first lap nobody knows where on the track it began.
    private static double? MeanLap(IReadOnlyList<Instant> laps) => laps.Count >= 3 ? (laps[^1] - laps[0]).TotalSeconds / (laps.Count - 1) : null;

    private static List<Reading> Ordered(List<Reading> readings) =>
        readings.TrueForAll(reading => Time(reading) is not null) ? [.. readings.OrderBy(Time)] : readings;

    private static double? Time(Reading reading) => reading.StopToReadS ?? reading.Winding?.AtS;

    private static Duration Apart(Instant a, Instant b) => a > b ? a - b : b - a;

    private static T? Word<T>(NotedRun run, string field, Field column) where T : struct, Enum => NotedWords.Choice<T>(column, run.Fields.Text(field));

    private string? NameOf<T>(Guid id) where T : NotedThing => notebook.Find<T>(id) is { Name.Length: > 0 } thing ? thing.Name : null;

    private static string Title(NotedRun run) => run.Name.Length > 0 ? run.Name : run.Number?.ToString(CultureInfo.InvariantCulture) ?? "run";
}
