using Coolproof.Thermal.FullModel;

namespace Coolproof.Rehearsal;

/// <summary>A race as it truly goes.</summary>
/// <param name="AirC">Air, °C.</param>
/// <param name="RaceS">Hard driving, s.</param>
/// <param name="BreakS">From halt to the next start, s.</param>
/// <param name="LogDayHeat">Deviation of that day's log heat from the rehearsal's mean.</param>
/// <param name="LogLoads">Deviation of log heat of each race in a row from the day's.</param>
/// <param name="LogConductance">Deviation of log conductance of that day and that refit.</param>
/// <param name="FanOn">Whether the option's fan runs in the breaks.</param>
public sealed record RaceConditions(double AirC, double RaceS, double BreakS, double LogDayHeat, IReadOnlyList<double> LogLoads, double LogConductance, bool FanOn)
{
    /// <summary>Gearing and timing; null: the rehearsal's own.</summary>
    public TrueGear? Gear { get; init; }
}

/// <summary>Where a race truly ends.</summary>
/// <param name="CanC">Can at the end of hard driving, °C.</param>
/// <param name="WindingC">Winding then, °C.</param>
/// <param name="HighestCanC">Highest can from the start to the next, °C.</param>
/// <param name="HighestRotorC">Highest rotor likewise, °C.</param>
public readonly record struct TrueStop(double CanC, double WindingC, double HighestCanC, double HighestRotorC);

public sealed partial class Truth
{
    private const double SoakStepS = 15, RollS = TruthRanges.RollInMeanS;

    /// <summary>Races in a row with one option, by the full model.</summary>
    /// <param name="option">Name of the option.</param>
    /// <param name="race">The day.</param>
    public IReadOnlyList<TrueStop> Races(string option, RaceConditions race)
    {
        TrueOption fitted = Options.First(o => o.Name == option);
        double[] t = [.. Enumerable.Repeat(race.AirC, HeatFlows.Nodes)];
        return [.. race.LogLoads.Select(load => One(fitted, race, load, t))];
    }

    /// <summary>The same rehearsal with the winding's own two constants drawn anew, slot and copper's share of the heat: what readings on the can hardly tell of.</summary>
    /// <param name="seed">Number of the draw.</param>
    public Truth WithOtherWinding(long seed)
    {
        RandomStream chance = new(seed, "winding");
        double slot = chance.About(MotorBody.OfMass(MotorMassKg).SlotWPerK, TruthRanges.SlotLogSd);
        World other = _world with { Body = _world.Body with { SlotWPerK = slot }, CopperShare = chance.SymmetricBeta(TruthRanges.CopperShareShape) };
        return new(other, Options, Runs, Hyperparameters, _fairLogHeat);
    }

    TrueStop One(TrueOption option, RaceConditions race, double load, double[] t)
    {
        CoolingOption cooling = option.Cooling.Times(Math.Exp(race.LogConductance));
        World world = race.Gear?.Of(_world) ?? _world;
        double pace = Evening.Pace(load) * (race.Gear?.Pace ?? 1), logHeat = _fairLogHeat + race.LogDayHeat + load + (race.Gear?.LogHeat(_world.CopperShare) ?? 0);
        FastPath.Advance(_world.Body, cooling, FairRun.Driving(world, logHeat, race.AirC, pace), race.RaceS, t);
        double[] stop = [.. t];
        FastPath.Advance(_world.Body, cooling, FairRun.RollingIn(world, logHeat, race.AirC, pace), RollS, t);
        double can = Math.Max(stop[(int)Node.Can], t[(int)Node.Can]), rotor = Math.Max(stop[(int)Node.Rotor], t[(int)Node.Rotor]);
        Phase standing = Evening.Standing(_world, option, cooling, race.AirC, race.FanOn, 0, shellOff: true);
        for (double at = 0; at < race.BreakS; at += SoakStepS)
        {
            FastPath.Advance(_world.Body, cooling, standing, Math.Min(SoakStepS, race.BreakS - at), t, afterEvent: at == 0);
            (can, rotor) = (Math.Max(can, t[(int)Node.Can]), Math.Max(rotor, t[(int)Node.Rotor]));
        }
        return new(stop[(int)Node.Can], stop[(int)Node.Winding], can, rotor);
    }
}
