using Coolproof.Evidence;
using Coolproof.Evidence.Forecasts;
using Coolproof.Thermal;
using MathNet.Numerics.Statistics;

namespace Coolproof.Advice.Gearing;

/// <summary>What is told of pinions and timings out of their laps, heats and peaks, whichever way the peaks were come by.</summary>
/// <param name="question">What is asked.</param>
/// <param name="draws">Draws of motor and lap.</param>
/// <param name="laps">The laps.</param>
internal sealed class GearTelling(GearQuestion question, GearDraws draws, GearLaps laps)
{
    /// <summary>Heat over the notebook's, choice × draw.</summary>
    public RaceHeat[][] Heats() => laps.Grid.Heats(draws.Z, draws.Trust);

    /// <summary>Laps of all choices.</summary>
    /// <param name="heats">Heat over the notebook's, choice × draw.</param>
    public GearedLap[] Gears(RaceHeat[][] heats) => [.. laps.Choices.Select((choice, i) => Lap(i, choice, heats[i]))];

    /// <summary>The race day with the air as much hotter as is asked about; null where that can't be forecast.</summary>
    public RaceScenario? HotterDay => question.Scenario with { AirC = question.Scenario.AirC + question.HotterK } is var hotter && Forecast.Refusal(hotter) is null ? hotter : null;

    /// <summary>Temperatures and odds of one gearing.</summary>
    public GearedHeat Heat(GearedPeaks peaks, int gearing) => new(
        peaks.Summary(LimitedPart.Can, gearing), peaks.Summary(LimitedPart.Winding, gearing), [.. question.Demand.Limits.Select(limit => peaks.Odds(limit, gearing))], peaks.OddsOfAny(question.Demand, gearing));

    /// <summary>One option: all gearings, the quickest that is safe, and the quickest at its timing on a hotter day.</summary>
    /// <param name="name">The option's name.</param>
    /// <param name="gears">Laps of all choices.</param>
    /// <param name="all">Temperatures and odds of all choices.</param>
    /// <param name="hot">Peaks of the hotter day; null: not asked, or not to be forecast.</param>
    public OptionGears Option(string name, GearedLap[] gears, GearedHeat[] all, GearedPeaks? hot)
    {
        int? best = Quickest(gears, i => all[i].OddsOfAny <= question.Demand.AcceptedOdds);
        int? onHotDay = best is { } b && hot is not null
            ? Quickest(gears, i => gears[i].Choice.TimingDeg == gears[b].Choice.TimingDeg && hot.OddsOfAny(question.Demand, i) <= question.Demand.AcceptedOdds)
            : null;
        return new(name, all, best, onHotDay);
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

    private GearedLap Lap(int i, GearChoice choice, RaceHeat[] heats)
    {
        GearTrain train = new(choice.Pinion, choice.Spur, laps.Rig.InternalRatio);
        LapFigures[] driven = [.. draws.Z.Select(at => laps.Grid.At(i, at))];
        double[] charges = [.. driven.Select(l => l.BatteryA * question.Scenario.RaceS / 3600)];
        return new(
            choice, train.FinalDriveRatio, train.Rollout(laps.Rig.Car.TyreDiameterM), Summaries.Of([.. driven.Select(l => l.LapS)]), Summaries.Of([.. driven.Select((l, d) => l.LapS - laps.Grid.Driven(draws.Z[d]).LapS)]),
            Summaries.Of([.. heats.Select((h, d) => h.Factor(draws.Evidence.Draws[d].CopperShare))]), Summaries.Of(charges), charges.Quantile(0.95) <= laps.Rig.Pack.CapacityAh);
    }
}
