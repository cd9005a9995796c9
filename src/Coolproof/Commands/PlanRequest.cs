using Coolproof.Advice.Orders;
using Coolproof.Notebook;
using Coolproof.Rehearsal;

namespace Coolproof.Commands;

/// <summary>What `coolproof plan` was asked.</summary>
/// <param name="Options">The options.</param>
/// <param name="Limits">What the day allows.</param>
/// <param name="From">First go, minutes after midnight.</param>
/// <param name="Spot">Where all readings are taken.</param>
/// <param name="Days">Simulated days; 0: none.</param>
/// <param name="Known">A readings table to start from; null: none.</param>
/// <param name="SoFar">Today's readings table; null: the day has not begun.</param>
/// <param name="RainInS">Seconds until the day ends early, from now; null: it doesn't.</param>
/// <param name="SameWithinK">Half-width of the "same" band, K.</param>
/// <param name="Seed">Random seed.</param>
/// <param name="Picture">Where to draw the timeline; null: nowhere.</param>
/// <param name="Units">Degrees for people.</param>
/// <param name="Json">Whether to print JSON.</param>
internal sealed record PlanRequest(
    IReadOnlyList<RehearsalOption> Options, DayLimits Limits, int From, string? Spot, int Days, string? Known, string? SoFar, double? RainInS, double SameWithinK,
    long Seed, string? Picture, TemperatureUnitChoice Units, bool Json)
{
    /// <summary>Path of checks of the guns that took the readings; null: none.</summary>
    public string? GunChecks { get; init; }

    /// <summary>Names of the options.</summary>
    public IReadOnlyList<string> Names { get; } = [.. Options.Select(o => o.Name)];

    /// <summary>Clock time some seconds after the first go.</summary>
    public string Clock(double seconds) => FormattableString.Invariant($"{(From + (int)Math.Round(seconds / 60)) / 60 % 24:00}:{(From + (int)Math.Round(seconds / 60)) % 60:00}");
}
