namespace Coolproof.Notebook.Journal;

/// <summary>What is left undone.</summary>
public enum LooseEndKind
{
    /// <summary>A run that went and has no halt, long past its planned drive.</summary>
    UnfinishedRun,
    /// <summary>A shot whose number is still to be typed.</summary>
    ShotWithoutNumber,
    /// <summary>A run that ended, whose pack's charge was not noted.</summary>
    ChargeOwed,
    /// <summary>A run without any air noted near it.</summary>
    MissingAir,
    /// <summary>The day's latest air is older than half an hour.</summary>
    AirOld,
    /// <summary>Two runs that may be one.</summary>
    SameOrTwo,
    /// <summary>Stamps that contradict each other, such as a halt before go.</summary>
    ContradictingStamps,
    /// <summary>A run without its cooling option.</summary>
    OptionOwed
}

/// <summary>Something left undone on a day.</summary>
/// <param name="Kind">What.</param>
/// <param name="Day">The day.</param>
/// <param name="Run">The run; null when the day is meant.</param>
/// <param name="Shot">The shot, or the other run of two; null when the run is meant.</param>
/// <param name="Says">It in plain words.</param>
public sealed record LooseEnd(LooseEndKind Kind, Guid Day, Guid? Run, Guid? Shot, string Says);
