using Coolproof.Evidence;
using Coolproof.Sampling;
using Coolproof.Sampling.Uncertainty;
using Coolproof.Thermal;
using MathNet.Numerics.Distributions;

namespace Coolproof.Advice.Instruments;

/// <summary>A late temperature of a winding.</summary>
/// <param name="AtS">Seconds from power off.</param>
/// <param name="C">Temperature, °C.</param>
/// <param name="OwnK">Standard uncertainty that is its own, K.</param>
public sealed record LateReading(double AtS, double C, double OwnK);

/// <summary>What the shut-down rule of IEC 60034-1 (8.6.2.3; from memory) makes of readings of a machine up to 50 kW.</summary>
public enum ShutDownRule
{
    /// <summary>First reading within 30 s: it stands for the temperature at the stop.</summary>
    FirstStands,

    /// <summary>First reading within 60 s: several are plotted and taken back to 30 s.</summary>
    TakenBack,

    /// <summary>Readings rise: the highest stands.</summary>
    HighestStands,

    /// <summary>First reading later than 60 s: the rule doesn't cover it.</summary>
    TooLate,
}

/// <summary>
/// A winding brought back to the instant of the stop. Motors as they are believed to be (the joint model's priors) drive and stand in an exact network of winding, core and can; each
/// is weighed by how well its fall meets the late readings, its level left free. A single falling exponential is not enough: the copper falls to the core within seconds, the core to
/// the can within half a minute, both to the air within minutes.
/// </summary>
/// <param name="Temperature">Winding at the stop, °C.</param>
/// <param name="FellK">What it fell from the stop to the first reading, K.</param>
/// <param name="EffectiveDraws">How many motors' worth of draws carry the answer; below 50 the readings fall as hardly any motor believed would.</param>
/// <param name="Rule">What the shut-down rule says.</param>
/// <param name="ByRuleC">Temperature by it, °C; NaN where it gives none.</param>
public sealed record BackToTheStop(Summary Temperature, Summary FellK, double EffectiveDraws, ShutDownRule Rule, double ByRuleC)
{
    private const int Motors = 6000;

    /// <summary>Rise of a winding before any reading, K, and its sd: common practice, no source; wide beside any reading.</summary>
    private const double RiseK = 60, RiseSdK = 40;

    /// <summary>What the network misses of a real winding's fall, K. Common practice, no source: end turns cool otherwise than the slots.</summary>
    private const double MissedK = 0.5;

    /// <summary>Both shapes of the copper share's Beta distribution, as in the joint model.</summary>
    private const double CopperShape = 5;

    private const double FanOff = 0.25, FanOffLogSd = 0.3, FirstWithinS = 30;

    /// <summary>Brings readings back.</summary>
    /// <param name="readings">One at least, in the order of time.</param>
    /// <param name="sharedK">Standard uncertainty that moves all of them together, K.</param>
    /// <param name="airC">Air, °C.</param>
    /// <param name="driveS">Seconds driven hard before the stop, from about the air's temperature.</param>
    /// <param name="fanOn">Whether the fan runs on; null: unknown.</param>
    /// <param name="seed">Seed.</param>
    public static BackToTheStop Of(IReadOnlyList<LateReading> readings, double sharedK, double airC, double driveS, bool? fanOn, long seed = 1)
    {
        ArgumentOutOfRangeException.ThrowIfZero(readings.Count);
        RandomStream chance = new(seed, 1);
        MotorDraw[] motors = [.. PriorMotors.Draws(Motors, seed).Select(m => m with { CopperShare = Beta.InvCDF(CopperShape, CopperShape, chance.NextUniform()) })];
        double[] log = new double[Motors], stop = new double[Motors], fell = new double[Motors], left = new double[readings.Count];
        for (int m = 0; m < Motors; m++)
        {
            bool fan = fanOn ?? m % 2 == 0;
            Shares(motors[m], driveS, fan ? motors[m].StoppedFanOn : FanOff * Math.Exp(FanOffLogSd * chance.NextNormal()), readings, left);
            // The rise at the stop is normal given this motor's fall; its marginal likelihood weighs the motor.
            double precision = 1 / (RiseSdK * RiseSdK), pull = RiseK * precision, square = RiseK * RiseK * precision;
            for (int i = 0; i < left.Length; i++)
            {
                double per = 1 / (readings[i].OwnK * readings[i].OwnK + MissedK * MissedK), seen = readings[i].C - airC;
                (precision, pull, square) = (precision + left[i] * left[i] * per, pull + left[i] * seen * per, square + seen * seen * per);
            }
            log[m] = -0.5 * (square - pull * pull / precision) - 0.5 * Math.Log(precision);
            double rise = pull / precision + chance.NextNormal() / Math.Sqrt(precision);
            (stop[m], fell[m]) = (airC + rise + sharedK * chance.NextNormal(), rise * (1 - left[0]));
        }
        double top = log.Max();
        double[] weights = [.. log.Select(l => Math.Exp(l - top))];
        double sum = weights.Sum(), effective = sum * sum / weights.Sum(w => w * w);
        (ShutDownRule rule, double byRule) = ByShutDown(readings);
        return new(Weighed(stop, weights), Weighed(fell, weights), effective, rule, byRule);
    }

    /// <summary>The shut-down rule by itself, for a machine up to 50 kW: temperature it takes for that at the stop, °C; NaN for none.</summary>
    public static (ShutDownRule Rule, double C) ByShutDown(IReadOnlyList<LateReading> readings)
    {
        LateReading first = readings[0], highest = readings.MaxBy(r => r.C)!;
        if (first.AtS > 2 * FirstWithinS) return (ShutDownRule.TooLate, double.NaN);
        if (highest.C > first.C) return (ShutDownRule.HighestStands, highest.C);
        if (first.AtS <= FirstWithinS) return (ShutDownRule.FirstStands, first.C);
        if (readings.Count < 2) return (ShutDownRule.TakenBack, double.NaN);
        // Semi-logarithmic plot: the logarithm of the temperature on a straight line against time.
        CalibrationLine line = CalibrationLine.Fit([.. readings.Select(r => r.AtS)], [.. readings.Select(r => Math.Log(Math.Max(r.C, 1)))], [], FirstWithinS);
        return (ShutDownRule.TakenBack, Math.Exp(line.Intercept));
    }

    // Share of the winding's rise at the stop that is left at each reading.
    private static void Shares(MotorDraw motor, double driveS, double stopped, IReadOnlyList<LateReading> readings, double[] left)
    {
        double core = MotorScale.CoreJPerK, winding = Math.Min(motor.WindingShare, 0.8) * core, driving = core * motor.ConductancePerS[0], heat = core * motor.HeatKPerS;
        double[] capacities = [winding, core - winding, core / motor.CoreOverCan];
        Link[] links = [new(0, 1, core / motor.SlotS), new(1, 2, core * motor.CoreToCanPerS)];
        double[] at = new double[3], now = new double[3];
        new Network(capacities, links, [0, 0, driving]).Prepare().Step(at, [motor.CopperShare * heat, (1 - motor.CopperShare) * heat, 0], driveS, at);
        Stepper standing = new Network(capacities, links, [0, 0, stopped * driving]).Prepare();
        for (int i = 0; i < readings.Count; i++)
        {
            standing.Step(at, [0, 0, 0], readings[i].AtS, now);
            left[i] = now[0] / at[0];
        }
    }

    private static Summary Weighed(double[] values, double[] weights)
    {
        int[] order = [.. Enumerable.Range(0, values.Length).OrderBy(i => values[i])];
        double sum = weights.Sum(), mean = order.Sum(i => weights[i] * values[i]) / sum, variance = order.Sum(i => weights[i] * (values[i] - mean) * (values[i] - mean)) / sum;
        return new(mean, Math.Sqrt(variance), At(0.05), At(0.25), At(0.5), At(0.75), At(0.95));

        double At(double probability)
        {
            double passed = 0;
            foreach (int i in order)
                if ((passed += weights[i]) >= probability * sum) return values[i];
            return values[order[^1]];
        }
    }
}
