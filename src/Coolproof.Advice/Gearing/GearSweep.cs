using Coolproof.Evidence.Forecasts;
using Coolproof.Thermal;

namespace Coolproof.Advice.Gearing;

/// <summary>
/// From the lap to temperatures: each pinion and timing gives copper and iron heat over those of the notebook's gearing, draw by draw, and these go through the race day of the forecast.
/// </summary>
public static class GearSweep
{
    private const double LapShare = 0.4, DayShare = 0.3;

    /// <summary>Sweeps pinions and timings within the card.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="evidence">What the judged notebook says.</param>
    /// <param name="notes">What its runs tell of their laps.</param>
    /// <param name="progress">Told the share of the work that is done.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="LapException">Nothing within the card can be driven; the message says why.</exception>
    /// <exception cref="ArgumentException">The race day is beyond what can be forecast.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static GearAnswer Of(GearQuestion question, RaceEvidence evidence, IReadOnlyList<LapNote> notes, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        GearLaps laps = GearLaps.Of(question.Rig, question.Card, notes, question.Scenario.RaceS, new Part(progress, 0, LapShare), cancel);
        GearDraws draws = GearDraws.Of(evidence, laps.Grid, question.Draws, question.Seed);
        GearTelling telling = new(question, draws, laps);
        RaceHeat[][] heats = telling.Heats();
        CloseCalls close = new(question, draws, laps.Belief, laps.Grid);
        GearedLap[] gears = telling.Gears(heats);
        IReadOnlyList<GearedPeaks> day = GearedRaces.Of(draws.Evidence, question.Scenario, heats, question.Seed, new Part(progress, LapShare, DayShare), cancel);
        IReadOnlyList<GearedPeaks>? hotDay = telling.HotterDay is { } hotter ? GearedRaces.Of(draws.Evidence, hotter, heats, question.Seed, new Part(progress, LapShare + DayShare, 1 - LapShare - DayShare), cancel) : null;
        return new(gears, [.. day.Select((peaks, option) => telling.Option(
            peaks.Option, gears, close.Settled(option, gears, [.. gears.Select((_, i) => telling.Heat(peaks, i))], driven => telling.Heat(driven, 0), cancel), hotDay?[option]))], laps.Driven)
        { Contradicted = draws.Contradicted };
    }

    private sealed class Part(IProgress<double>? whole, double from, double share) : IProgress<double>
    {
        public void Report(double value) => whole?.Report(from + share * value);
    }
}
