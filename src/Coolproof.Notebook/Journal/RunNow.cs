using NodaTime;

namespace Coolproof.Notebook.Journal;

/// <summary>What a run waits for.</summary>
public enum RunStep
{
    /// <summary>Begun; waits for the countdown or go.</summary>
    Ready,
    /// <summary>Counting down to go.</summary>
    CountingDown,
    /// <summary>Driving; waits for stop.</summary>
    Driving,
    /// <summary>Lying or standing within the drive; waits for up, or stop.</summary>
    Down,
    /// <summary>Rolling in; waits for halt.</summary>
    Rolling,
    /// <summary>Halted; waits for the first shot.</summary>
    Halted,
    /// <summary>Shooting; waits for shots or their numbers.</summary>
    Shooting,
    /// <summary>Nothing is owed but the charge.</summary>
    Done,
    /// <summary>Came to nothing.</summary>
    Abandoned
}

/// <summary>Where a run is at an instant, and what is next: a pure function of its entries and the clock.</summary>
/// <param name="Step">What it waits for.</param>
/// <param name="SinceS">Seconds in this step; negative for none.</param>
/// <param name="LeftS">Seconds left: to go while counting down, of the planned drive while driving (negative: overdue, so a stop may have been forgotten); null where nothing is planned.</param>
/// <param name="ShotsLeft">Shots still wanted after the halt.</param>
/// <param name="NumbersOwed">Shots whose numbers are still to be typed.</param>
public sealed record RunNow(RunStep Step, double SinceS, double? LeftS, int ShotsLeft, int NumbersOwed)
{
    /// <summary>After this long a halted motor's readings say little more, and the shots that were taken must do, s (common practice, no source).</summary>
    public const double ShootingS = 180;

    /// <summary>Where a run is.</summary>
    /// <param name="run">The run.</param>
    /// <param name="now">The server's clock.</param>
    /// <param name="shotsWanted">Shots wanted after a run: <see cref="NotedDay.ShotsPerRun"/>.</param>
    public static RunNow Of(NotedRun run, Instant now, int shotsWanted = 3)
    {
        ArgumentNullException.ThrowIfNull(run);
        int owed = run.Shots.Count(shot => shot.OwesNumber);
        int left = Math.Max(0, shotsWanted - run.Shots.Count);
        RunNow At(RunStep step, Instant? since, double? leftS = null) => new(step, since is { } from ? Seconds(from, now) : -1, leftS, left, owed);
        if (run.Abandoned) return At(RunStep.Abandoned, run.Events.LastOrDefault(stamp => stamp is { Kind: EntryKind.RunAbandon, Standing: EventStanding.Counts })?.At);
        if (run.Halt is { } halt) return At(Shot(run, halt.At, now, left, owed), halt.At);
        // Shots of a run that nobody stamped were typed afterwards: there is nothing left to stamp.
        if (run.Stop is null && run.Go is null && run.Shots.Count > 0) return At(owed > 0 ? RunStep.Shooting : RunStep.Done, null);
        if (run.Stop is { } stop) return run.Shots.Count > 0 ? At(Shot(run, stop.At, now, left, owed), stop.At) : At(RunStep.Rolling, stop.At);
        if (run.Go is not { } go) return At(RunStep.Ready, run.Since);
        if (now < go.At) return At(RunStep.CountingDown, run.Countdown?.At, Seconds(now, go.At));
        double? driveLeft = run.Countdown is { } countdown ? countdown.DriveS - Seconds(go.At, now) : null;
        return run.StandStills is [.., { Up: null } still] ? At(RunStep.Down, still.Down, driveLeft) : At(RunStep.Driving, go.At, driveLeft);
    }

    private static RunStep Shot(NotedRun run, Instant halt, Instant now, int left, int owed)
    {
        if (run.Shots.Count == 0) return Seconds(halt, now) > ShootingS ? RunStep.Done : RunStep.Halted;
        return owed > 0 || (left > 0 && Seconds(halt, now) <= ShootingS) ? RunStep.Shooting : RunStep.Done;
    }

    private static double Seconds(Instant from, Instant to) => (to - from).TotalSeconds;
}
