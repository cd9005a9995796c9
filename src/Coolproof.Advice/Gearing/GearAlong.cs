using Coolproof.Evidence;
using Coolproof.Evidence.Forecasts;
using Coolproof.Thermal;
using MathNet.Numerics.Statistics;

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
        RaceEvidence thinned = evidence.Thinned(question.Draws);
        double raceS = question.Scenario.RaceS;
        GearRig rig = laps.Rig;
        LapGrid grid = laps.Grid;
        double[][] z = GearSweep.Points(thinned.Draws.Count, question.Seed);
        RaceHeat[][] heats = grid.Heats(z, grid.Trust(thinned, question.Seed));
        GearedLap[] gears = [.. grid.Choices.Select((choice, i) => Lap(i, choice))];
        IReadOnlyList<GearedPeaks> day = GearedLines.Of(thinned, question.Scenario, heats, lines, nodes, question.Seed, cancel);
        RaceScenario hot = question.Scenario with { AirC = question.Scenario.AirC + question.HotterK };
        IReadOnlyList<GearedPeaks>? hotDay = hotter && Forecast.Refusal(hot) is null ? GearedLines.Of(thinned, hot, heats, lines, nodes, question.Seed, cancel) : null;
        return new(gears, [.. day.Select((peaks, option) => Option(peaks, hotDay?[option]))], laps.Driven);

        GearedLap Lap(int i, GearChoice choice)
        {
            GearTrain train = new(choice.Pinion, choice.Spur, rig.InternalRatio);
            LapFigures[] driven = [.. z.Select(at => grid.At(i, at))];
            double[] charges = [.. driven.Select(l => l.BatteryA * raceS / 3600)];
            return new(
                choice, train.FinalDriveRatio, train.Rollout(rig.Car.TyreDiameterM), Summaries.Of([.. driven.Select(l => l.LapS)]), Summaries.Of([.. driven.Select((l, d) => l.LapS - grid.Driven(z[d]).LapS)]),
                Summaries.Of([.. heats[i].Select((h, d) => h.Factor(thinned.Draws[d].CopperShare))]), Summaries.Of(charges), charges.Quantile(0.95) <= rig.Pack.CapacityAh);
        }

        OptionGears Option(GearedPeaks peaks, GearedPeaks? hotPeaks)
        {
            GearedHeat[] all = [.. gears.Select((_, i) => new GearedHeat(
                peaks.Summary(LimitedPart.Can, i), peaks.Summary(LimitedPart.Winding, i), [.. question.Demand.Limits.Select(limit => peaks.Odds(limit, i))], peaks.OddsOfAny(question.Demand, i)))];
            int? best = GearSweep.Quickest(gears, i => all[i].OddsOfAny <= question.Demand.AcceptedOdds);
            int? onHotDay = best is { } b && hotPeaks is not null
                ? GearSweep.Quickest(gears, i => gears[i].Choice.TimingDeg == gears[b].Choice.TimingDeg && hotPeaks.OddsOfAny(question.Demand, i) <= question.Demand.AcceptedOdds)
                : null;
            return new(peaks.Option, all, best, onHotDay);
        }
    }
}
