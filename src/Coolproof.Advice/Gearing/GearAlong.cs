using Coolproof.Evidence.Forecasts;

namespace Coolproof.Advice.Gearing;

/// <summary>The sweep of <see cref="GearSweep"/> for who waits for it: laps are driven once for many questions, temperatures read off a few pinions of each timing, and close calls are not driven one by one.</summary>
public static class GearAlong
{
    /// <summary>The sweep of pinions and timings with laps that were driven before, and temperatures read off a few points along the pinions of each timing: within half a kelvin of the sweep in the middle (GearSweepTests), in a fraction of its time.</summary>
    /// <param name="question">What is asked; its rig and card are those of the laps.</param>
    /// <param name="evidence">What the judged notebook says.</param>
    /// <param name="laps">The laps.</param>
    /// <param name="nodes">Points along the pinions, 2 or more.</param>
    /// <param name="hotter">Whether the price of a hotter day is told.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="ArgumentException">The race day is beyond what can be forecast.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static GearAnswer Of(GearQuestion question, RaceEvidence evidence, GearLaps laps, int nodes, bool hotter, CancellationToken cancel = default)
    {
        IReadOnlyList<int>[] lines = [.. laps.Choices.Select((choice, i) => (choice, i)).GroupBy(one => one.choice.TimingDeg, one => one.i).Select(line => line.ToArray())];
        GearDraws draws = GearDraws.Of(evidence, laps.Grid, question.Draws, question.Seed);
        GearTelling telling = new(question, draws, laps);
        RaceHeat[][] heats = telling.Heats();
        GearedLap[] gears = telling.Gears(heats);
        IReadOnlyList<GearedPeaks> day = GearedLines.Of(draws.Evidence, question.Scenario, heats, lines, nodes, question.Seed, cancel);
        IReadOnlyList<GearedPeaks>? hotDay = hotter && telling.HotterDay is { } hot ? GearedLines.Of(draws.Evidence, hot, heats, lines, nodes, question.Seed, cancel) : null;
        return new(gears, [.. day.Select((peaks, option) => telling.Option(peaks.Option, gears, [.. gears.Select((_, i) => telling.Heat(peaks, i))], hotDay?[option]))], laps.Driven) { Contradicted = draws.Contradicted };
    }
}
