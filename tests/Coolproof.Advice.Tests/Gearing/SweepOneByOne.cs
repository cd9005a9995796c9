using Coolproof.Advice.Gearing;
using Coolproof.Evidence.Forecasts;
using Coolproof.Thermal;
using MathNet.Numerics.Statistics;

namespace Coolproof.Advice.Tests.Gearing;

/// <summary>
/// A sweep by brute force: for each draw every lap is driven at the usual step and every race day on the forecast's network, nothing is read off a parabola or a surface. The same draws of motor and
/// lap as the sweep that it is held against.
/// </summary>
/// <param name="LapS">Median lap time by choice, s.</param>
/// <param name="Odds">Odds of passing any limit by choice.</param>
/// <param name="Best">Place of the quickest safe choice that the pack lasts with; null: none.</param>
internal sealed record SweepOneByOne(double[] LapS, double[] Odds, int? Best)
{
    // A draw in which a lap can't be driven passes every limit.
    private static readonly LapFigures NoLap = new(1e3, 1e3, 1e3, 1e3);

    /// <summary>Sweeps by brute force.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="taken">The sweep's draws.</param>
    /// <param name="belief">What is believed of the lap.</param>
    /// <param name="told">What temperatures of several gearings and of several timings say.</param>
    /// <param name="span">Gearings and timings that slopes are taken across.</param>
    /// <param name="choices">All choices.</param>
    /// <param name="laps">Laps that were driven for another question to the same notebook, draw by draw; those that are missing are driven and kept there.</param>
    public static SweepOneByOne Of(
        GearQuestion question, GearDraws taken, LapBelief belief, (SlopeTold? Gearing, SlopeTold? Timing) told, GearSpan span, IReadOnlyList<GearChoice> choices, Dictionary<GearChoice, LapFigures[]> laps)
    {
        RaceEvidence evidence = taken.Evidence;
        int draws = evidence.Draws.Count;
        GearRig rig = question.Rig;
        foreach (GearChoice missing in choices.Concat(choices.Select(AtDrivenTiming)).Append(rig.Driven).Concat(span.All).Distinct().Where(c => !laps.ContainsKey(c)))
            laps[missing] = [.. taken.Z.Select(at => Lap(missing, at))];
        (double Gearing, double Timing)[] slopes = [.. evidence.Draws.Select((draw, d) => (
            span.Gearing(draw.CopperShare, laps[rig.Driven][d], laps[span.Low][d], laps[span.High][d]), span.Timing(draw.CopperShare, laps[rig.Driven][d], laps[span.Least][d], laps[span.Most][d])))];
        double[] gearTrust = HeatTrust.Scales(told.Gearing, evidence.GearingSlopes, [.. slopes.Select(s => s.Gearing)], timing: false, question.Seed),
            timingTrust = HeatTrust.Scales(told.Timing, evidence.TimingSlopes, [.. slopes.Select(s => s.Timing)], timing: true, question.Seed);
        RaceHeat[][] heats = [.. choices.Select(c => Enumerable.Range(0, draws).Select(d => Heat(c, d)).ToArray())];
        GearedPeaks peaks = GearedRaces.OneByOne(evidence, question.Scenario, heats, 0, question.Seed);
        double[] lapS = [.. choices.Select(c => laps[c].Select(l => l.LapS).Median())], odds = [.. choices.Select((_, i) => peaks.OddsOfAny(question.Demand, i))];
        int[] safe = [.. Enumerable.Range(0, choices.Count).Where(i => odds[i] <= question.Demand.AcceptedOdds
            && laps[choices[i]].Select(l => l.BatteryA * question.Scenario.RaceS / 3600).Quantile(0.95) <= rig.Pack.CapacityAh)];
        return new(lapS, odds, safe.Length == 0 ? null : safe.MinBy(i => lapS[i]));

        GearChoice AtDrivenTiming(GearChoice c) => c with { TimingDeg = rig.Driven.TimingDeg };

        LapFigures Lap(GearChoice choice, double[] at)
        {
            try
            {
                return LapFigures.Of(belief.At(at).Lap(choice, belief.DrawnAh, DrivenLap.UsualStepM));
            }
            catch (LapException)
            {
                return NoLap;
            }
        }

        RaceHeat Heat(GearChoice c, int d)
        {
            LapFigures driven = laps[rig.Driven][d], turned = laps[AtDrivenTiming(c)][d], lap = laps[c][d];
            double Trusted(double byGears, double byTiming) => Math.Pow(byGears, gearTrust[d]) * Math.Pow(byTiming, timingTrust[d]);
            return new(Trusted(turned.Copper25W / driven.Copper25W, lap.Copper25W / turned.Copper25W), Trusted(turned.IronW / driven.IronW, lap.IronW / turned.IronW));
        }
    }
}
