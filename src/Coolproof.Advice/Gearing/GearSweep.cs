using Coolproof.Evidence;
using Coolproof.Evidence.Forecasts;
using Coolproof.Sampling;
using Coolproof.Thermal;
using MathNet.Numerics.Statistics;

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
        RaceEvidence thinned = evidence.Thinned(question.Draws);
        double raceS = question.Scenario.RaceS;
        GearRig rig = question.Rig;
        LapBelief belief = LapBelief.Of(rig, notes, raceS);
        double[][] z = Points(thinned.Draws.Count, question.Seed);
        LapGrid grid = LapGrid.Of(belief, question.Card, new Part(progress, 0, LapShare), cancel);
        LapTrust trust = grid.Trust(thinned, question.Seed);
        RaceHeat[][] heats = grid.Heats(z, trust);
        CloseCalls close = new(question, thinned, belief, z, grid, trust);
        GearedLap[] gears = [.. grid.Choices.Select((choice, i) => Lap(i, choice))];
        IReadOnlyList<GearedPeaks> day = GearedRaces.Of(thinned, question.Scenario, heats, question.Seed, new Part(progress, LapShare, DayShare), cancel);
        RaceScenario hotter = question.Scenario with { AirC = question.Scenario.AirC + question.HotterK };
        IReadOnlyList<GearedPeaks>? hotDay = Forecast.Refusal(hotter) is null ? GearedRaces.Of(thinned, hotter, heats, question.Seed, new Part(progress, LapShare + DayShare, 1 - LapShare - DayShare), cancel) : null;
        return new(gears, [.. day.Select((peaks, option) => Option(peaks, hotDay?[option], option))], Driven());

        GearedLap Lap(int i, GearChoice choice)
        {
            GearTrain train = new(choice.Pinion, choice.Spur, rig.InternalRatio);
            LapFigures[] laps = [.. z.Select(at => grid.At(i, at))];
            double[] charges = [.. laps.Select(l => l.BatteryA * raceS / 3600)];
            return new(
                choice, train.FinalDriveRatio, train.Rollout(rig.Car.TyreDiameterM), Summaries.Of([.. laps.Select(l => l.LapS)]), Summaries.Of([.. laps.Select((l, d) => l.LapS - grid.Driven(z[d]).LapS)]),
                Summaries.Of([.. heats[i].Select((h, d) => h.Factor(thinned.Draws[d].CopperShare))]), Summaries.Of(charges), charges.Quantile(0.95) <= rig.Pack.CapacityAh);
        }

        OptionGears Option(GearedPeaks peaks, GearedPeaks? hot, int option)
        {
            GearedHeat[] all = close.Settled(option, gears, [.. gears.Select((_, i) => Heat(peaks, i))], driven => Heat(driven, 0), cancel);
            int? best = Quickest(gears, i => all[i].OddsOfAny <= question.Demand.AcceptedOdds);
            int? onHotDay = best is { } b && hot is not null
                ? Quickest(gears, i => gears[i].Choice.TimingDeg == gears[b].Choice.TimingDeg && hot.OddsOfAny(question.Demand, i) <= question.Demand.AcceptedOdds)
                : null;
            return new(peaks.Option, all, best, onHotDay);
        }

        GearedHeat Heat(GearedPeaks peaks, int i) => new(
            peaks.Summary(LimitedPart.Can, i), peaks.Summary(LimitedPart.Winding, i), [.. question.Demand.Limits.Select(limit => peaks.Odds(limit, i))], peaks.OddsOfAny(question.Demand, i));

        DrivenFigures Driven()
        {
            GearRig there = belief.At(new double[belief.Axes.Count]);
            DrivenLap lap = there.Lap(rig.Driven, belief.DrawnAh, DrivenLap.UsualStepM);
            LapNote? note = notes.FirstOrDefault(n => n.Choice == rig.Driven);
            return new(lap.Seconds, lap.FullThrottleS / lap.Seconds, lap.HighestMS, lap.RmsMotorA, lap.MeanBatteryA, lap.Copper25W, lap.IronW, there.Track.LengthM, there.Car.Grip, note?.LapS, note?.ChargeA);
        }
    }

    /// <summary>Place of the quickest gear that is safe and that the pack lasts with; the first of equals. Null: none.</summary>
    internal static int? Quickest(IReadOnlyList<GearedLap> gears, Func<int, bool> safe)
    {
        int? best = null;
        for (int i = 0; i < gears.Count; i++)
            if (gears[i].PackLasts && safe(i) && (best is not { } b || gears[i].LapS.Q50 < gears[b].LapS.Q50))
                best = i;
        return best;
    }

    /// <summary>Points of what is believed of the lap, one a draw.</summary>
    internal static double[][] Points(int draws, long seed) => [.. Enumerable.Range(0, draws).Select(i =>
    {
        double[] z = new double[LapUnknowns.Count];
        new RandomStream(seed ^ 0x1a9, i).FillNormal(z);
        return z;
    })];

    private sealed class Part(IProgress<double>? whole, double from, double share) : IProgress<double>
    {
        public void Report(double value) => whole?.Report(from + share * value);
    }
}
