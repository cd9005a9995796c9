using Coolproof.Notebook;

namespace Coolproof.Rehearsal;

/// <summary>A simulated day: what a person would have noted, and what is true.</summary>
/// <param name="Runs">Runs as noted, in the order of time.</param>
/// <param name="Truth">What is true.</param>
/// <param name="Stratum">What kind of day it is.</param>
/// <param name="Settings">What it was made of.</param>
public sealed record SimulatedDay(IReadOnlyList<Run> Runs, Truth Truth, Stratum Stratum, RehearsalSettings Settings)
{
    /// <summary>The true can of each evening, second by second; empty where it was not asked for.</summary>
    public IReadOnlyList<CanTrace> Traces { get; init; } = [];

    /// <summary>The day as a readings table that was understood.</summary>
    public ReadingsTable Table => new(Runs, [], [.. Runs.Select(r => r.Option).Distinct()]);
}
