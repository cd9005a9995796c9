using NodaTime;

namespace Coolproof.Notebook.Journal;

/// <summary>Finds what is left undone on a day.</summary>
public static class LooseEnds
{
    /// <summary>Air older than this is old: it drifts by a degree or two in half an hour (common practice, no source).</summary>
    public static readonly Duration AirHolds = Duration.FromMinutes(30);

    // A run this long past its planned drive was forgotten, not driven on.
    private static readonly Duration Forgotten = Duration.FromMinutes(3);
    private static readonly Duration LongestDrive = Duration.FromMinutes(30);

    /// <summary>Loose ends of a day in the order of its runs.</summary>
    /// <param name="notebook">The notebook.</param>
    /// <param name="day">The day.</param>
    /// <param name="now">The server's clock.</param>
    public static IReadOnlyList<LooseEnd> Of(PitNotebook notebook, NotedDay day, Instant now)
    {
        ArgumentNullException.ThrowIfNull(notebook);
        ArgumentNullException.ThrowIfNull(day);
        List<LooseEnd> ends = [];
        IReadOnlyList<NotedRun> runs = notebook.RunsOf(day.Id);
        foreach (NotedRun run in runs) ends.AddRange(OfRun(run, day, now));
        foreach (SameRunOffer offer in notebook.Offers(day.Id)) ends.Add(new(LooseEndKind.SameOrTwo, day.Id, offer.A, offer.B, $"two phones began run {offer.Number}: is it one run, or two?"));
        // Of a day that is over, only what its runs lack is worth a word.
        if (runs.Select(run => run.Go?.At).Max() is { } last && now - last < Duration.FromHours(3) && day.Weather.LastOrDefault(weather => weather.AirC is not null) is { } air && now - air.At > AirHolds)
        {
            ends.Add(new(LooseEndKind.AirOld, day.Id, null, null, $"the air was noted {(int)(now - air.At).TotalMinutes} minutes ago"));
        }

        return ends;
    }

    private static IEnumerable<LooseEnd> OfRun(NotedRun run, NotedDay day, Instant now)
    {
        LooseEnd Of(LooseEndKind kind, string says, Guid? shot = null) => new(kind, day.Id, run.Id, shot, $"run {Title(run)}: {says}");
        foreach (NotedShot shot in run.Shots.Where(shot => shot.OwesNumber)) yield return Of(LooseEndKind.ShotWithoutNumber, "a shot waits for its number", shot.Id);
        bool went = run.Go is { } go && go.At <= now;
        // A drive and a roll-in that were typed say what stamps would have said.
        bool typed = run.Fields.Number("driveS") is not null;
        if (!run.Abandoned && !typed && went && run.Stop is null && run.Halt is null && now > run.Go!.At + (run.Countdown is { } planned ? Duration.FromSeconds(planned.DriveS) + Forgotten : LongestDrive))
        {
            yield return Of(LooseEndKind.UnfinishedRun, "it went and was never stopped");
        }

        if (!run.Abandoned && run.Fields.Number("rollInS") is null && run.Stop is { } stop && run.Halt is null && now > stop.At + Forgotten) yield return Of(LooseEndKind.UnfinishedRun, "its halt was not noted");
        if (Contradicts(run)) yield return Of(LooseEndKind.ContradictingStamps, "its stamps contradict each other: a later one comes before an earlier one");
        bool drove = went || run.Fields.Number("driveS") is not null;
        if (!drove) yield break;
        if (run.Option is null) yield return Of(LooseEndKind.OptionOwed, "its cooling option was not noted");
        if ((run.Stop ?? run.Halt) is not null && run.Pack is not null && run.ChargeBackMah is null) yield return Of(LooseEndKind.ChargeOwed, "the charge of its pack is owed");
        if (RunAir.Of(run, day) is null) yield return Of(LooseEndKind.MissingAir, "no air was noted within half an hour");
    }

    private static bool Contradicts(NotedRun run)
    {
        Instant? latest = null;
        foreach (ClockedInstant? stamp in (ReadOnlySpan<ClockedInstant?>)[run.Go, run.Stop, run.Halt])
        {
            if (stamp is null) continue;
            if (stamp.At < latest) return true;
            latest = stamp.At;
        }

        return run.Halt is { } halt && run.Shots.Any(shot => shot.At < halt.At && shot.TypedStopToReadS is null);
    }

    private static string Title(NotedRun run) => run.Number?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? (run.Name.Length > 0 ? run.Name : "without a number");
}
