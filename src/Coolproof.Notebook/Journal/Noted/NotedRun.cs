using NodaTime;

namespace Coolproof.Notebook.Journal;

/// <summary>A run as noted: its stamps, shots and fields.</summary>
/// <param name="Id">Its UUID; of runs declared the same, the smallest.</param>
/// <param name="Fields">Its fields; what was set goes before what it began with.</param>
/// <param name="Since">When its first entry was made.</param>
/// <param name="Removed">Whether it was taken out of lists.</param>
public sealed record NotedRun(Guid Id, EntryBody Fields, Instant Since, bool Removed) : NotedThing(Id, Fields, Since, Removed)
{
    /// <summary>Other UUIDs that it goes by: runs that were declared the same.</summary>
    public IReadOnlyList<Guid> OtherIds { get; init; } = [];
    /// <summary>Devices that noted anything of it.</summary>
    public IReadOnlyList<Guid> Devices { get; init; } = [];
    /// <summary>The latest countdown; null when there was none.</summary>
    public Countdown? Countdown { get; init; }
    /// <summary>Go; by the countdown where nobody stamped it.</summary>
    public ClockedInstant? Go { get; init; }
    /// <summary>The end of hard driving.</summary>
    public ClockedInstant? Stop { get; init; }
    /// <summary>The halt.</summary>
    public ClockedInstant? Halt { get; init; }
    /// <summary>Power off.</summary>
    public ClockedInstant? PowerOff { get; init; }
    /// <summary>Times that it lay or stood within the drive.</summary>
    public IReadOnlyList<StandStill> StandStills { get; init; } = [];
    /// <summary>When the fan was seen to have failed; null when it was not.</summary>
    public Instant? FanDeadAt { get; init; }
    /// <summary>Whether the run came to nothing.</summary>
    public bool Abandoned { get; init; }
    /// <summary>Why it came to nothing.</summary>
    public string? AbandonedBecause { get; init; }
    /// <summary>When laps were finished, in the order of time.</summary>
    public IReadOnlyList<Instant> LapTimes { get; init; } = [];
    /// <summary>Whether the fan turned before the run; null when it was not seen or not noted.</summary>
    public bool? FanTurnedBefore { get; init; }
    /// <summary>Whether the fan turned after the stop; null when it was not seen or not noted.</summary>
    public bool? FanTurnedAfter { get; init; }
    /// <summary>Whether the question of the fan after the stop was answered, be it by "not seen".</summary>
    public bool FanAfterAnswered { get; init; }
    /// <summary>Its shots in the order of time; removed ones left out.</summary>
    public IReadOnlyList<NotedShot> Shots { get; init; } = [];
    /// <summary>Coolings before it, in the order of time.</summary>
    public IReadOnlyList<NotedCoolDown> CoolDowns { get; init; } = [];
    /// <summary>Every stamp in the order of time, also those that don't count.</summary>
    public IReadOnlyList<RunEvent> Events { get; init; } = [];
    /// <summary>Charge that was put back, mAh; null when not noted.</summary>
    public double? ChargeBackMah { get; init; }

    /// <summary>The day.</summary>
    public Guid? Day => Fields.Id("day");
    /// <summary>The cooling option.</summary>
    public Guid? Option => Fields.Id("option");
    /// <summary>What it is for.</summary>
    public RunKind Kind => NotedWords.Choice<RunKind>(Tables.Field.Kind, Fields.Text("kind")) ?? RunKind.Test;
    /// <summary>Its number within the day.</summary>
    public int? Number => Fields.Whole("number");
    /// <summary>The pack.</summary>
    public Guid? Pack => Fields.Id("pack");

    /// <summary>From go to the end of hard driving, s: as typed, else by the stamps; null when unknown.</summary>
    public double? DriveS => Fields.Number("driveS") ?? Between(Go, Stop ?? Halt);
    /// <summary>From the end of hard driving to halt, s: as typed, else by the stamps; null when unknown.</summary>
    public double? RollInS => Fields.Number("rollInS") ?? Between(Stop, Halt);
    /// <summary>Stood still within the drive, s: as typed, else by down and up.</summary>
    public double StoodS => Fields.Number("stoodS") ?? StandStills.Sum(still => ((still.Up ?? Stop?.At ?? Halt?.At ?? still.Down) - still.Down).TotalSeconds);
    /// <summary>From halt to power off, s: as typed, else by the stamps; null when unknown.</summary>
    public double? PowerOffS => Fields.Number("powerOffS") ?? Between(Halt, PowerOff);
    /// <summary>From halt to a shot, s: as typed, else by the stamps; null when unknown.</summary>
    public double? StopToReadS(NotedShot shot)
    {
        ArgumentNullException.ThrowIfNull(shot);
        if (shot.TypedStopToReadS is { } typed) return typed;
        return Halt is { } halt && shot.At is { } at && at >= halt.At ? (at - halt.At).TotalSeconds : null;
    }

    // Stamps that contradict each other (halt before go) say nothing; they stay in Events and among the loose ends.
    private static double? Between(ClockedInstant? from, ClockedInstant? to) =>
        from is not null && to is not null && to.At >= from.At ? (to.At - from.At).TotalSeconds : null;
}
