using Coolproof.Evidence;
using Coolproof.Sampling;
using Coolproof.Thermal.FullModel;

namespace Coolproof.Advice.CoolDowns;

/// <summary>
/// How long until the core, not only the can, is ready: motors as they may be cool down in the full model, weighed by looks at the can. The promise covers the
/// hottest of winding, laminations and rotor.
/// </summary>
public static class CoolDown
{
    /// <summary>Longest that is reckoned, min.</summary>
    public const double LongestMin = 90;

    private const int Motors = 240, StepS = 30, Refinements = 3;
    private const double Soon = 0.1, Middle = 0.5, Promised = 0.9, LookSdK = 1.0;

    /// <summary>What each way of cooling promises; the own fan only where there is one.</summary>
    /// <param name="question">The question.</param>
    /// <param name="cancel">Stops the work.</param>
    public static IReadOnlyList<CoolDownPromise> Of(CoolDownQuestion question, CancellationToken cancel = default)
    {
        IReadOnlyList<MotorDraw> draws = question.Motors ?? PriorMotors.Draws(Motors, question.Seed);
        Hot[] hot = new Hot[Motors];
        Parallel.For(0, Motors, new ParallelOptions { CancellationToken = cancel }, i => hot[i] = Hot.Of(question, draws[(int)((long)i * draws.Count / Motors)], new(question.Seed, i)));
        CoolingBy[] ways = [.. Enum.GetValues<CoolingBy>().Where(by => by != CoolingBy.OwnFan || question.HasFan)];
        double[] weights = Weights(question, hot);
        List<CoolDownPromise> promises = [];
        foreach (CoolingBy by in ways)
        {
            Cooling[] cooled = new Cooling[Motors];
            Parallel.For(0, Motors, new ParallelOptions { CancellationToken = cancel }, i => cooled[i] = Cooling.Of(question, hot[i], by));
            promises.Add(Promise(by, cooled, weights));
        }
        return promises;
    }

    private static double[] Weights(CoolDownQuestion question, Hot[] hot)
    {
        double[] log = new double[hot.Length];
        Parallel.For(0, hot.Length, i =>
        {
            double[] t = [.. hot[i].HaltC];
            double now = 0;
            foreach (CanLook look in question.Looks.OrderBy(l => l.Minutes))
            {
                hot[i].Motor.Stand(hot[i].Motor.ForcedWPerK(question.LookedAtBy, question.HasFan), AirOf(question, question.LookedAtBy), 60 * look.Minutes - now, t, now == 0);
                now = 60 * look.Minutes;
                double missed = (look.CanC - hot[i].Motor.GunOffsetK - t[(int)Node.Can]) / LookSdK;
                log[i] -= 0.5 * missed * missed;
            }
        });
        double top = log.Max();
        double[] weights = [.. log.Select(l => Math.Exp(l - top))];
        double sum = weights.Sum();
        return [.. weights.Select(w => w / sum)];
    }

    private static double AirOf(CoolDownQuestion question, CoolingBy by) => question.AirC - (by == CoolingBy.CooledAir ? question.CooledByK : 0);

    private static CoolDownPromise Promise(CoolingBy by, Cooling[] cooled, double[] weights)
    {
        double Of(Func<Cooling, double> what, double share) => Quantile([.. cooled.Select(what)], weights, share);
        CoolDownPoint[] path = [.. Enumerable.Range(0, (int)(LongestMin * 60 / StepS) + 1).Where(s => s % (60 / StepS) == 0).Select(s => new CoolDownPoint(
            s * StepS / 60.0, Of(c => c.CanC[s], Middle), Of(c => c.CoreC[s], Middle), Of(c => c.CoreC[s], Promised)))];
        return new(by, Of(c => c.ReadyMin, Soon), Of(c => c.ReadyMin, Middle), Of(c => c.ReadyMin, Promised), Of(c => c.CanReadyMin, Middle), path,
            Of(c => c.InheritsK, Middle), Of(c => c.InheritsK, Promised));
    }

    /// <summary>Smallest value that at least a share of the weight does not exceed.</summary>
    private static double Quantile(double[] values, double[] weights, double share)
    {
        double sum = 0;
        foreach ((double value, double weight) in values.Zip(weights).OrderBy(v => v.First))
        {
            sum += weight;
            if (sum >= share - 1e-12)
                return value;
        }
        return values.Max();
    }

    /// <summary>A motor at the halt.</summary>
    private sealed record Hot(BelievedMotor Motor, double HeatW, double[] HaltC)
    {
        // Where the can was read, the heat is what brings it there.
        public static Hot Of(CoolDownQuestion question, MotorDraw draw, RandomStream chance)
        {
            BelievedMotor motor = BelievedMotor.Of(draw, question.Option, chance);
            double heat = motor.HeatW;
            double[] t = Driven(motor, heat, question);
            for (int i = 0; i < Refinements && question.CanC is { } read; i++)
            {
                double rise = Math.Max(read - motor.GunOffsetK - question.AirC, 1);
                heat *= rise / Math.Max(t[(int)Node.Can] - question.AirC, 0.1);
                t = Driven(motor, heat, question);
            }
            return new(motor, heat, t);
        }

        private static double[] Driven(BelievedMotor motor, double heat, CoolDownQuestion question)
        {
            double[] t = [.. Enumerable.Repeat(question.AirC, HeatFlows.Nodes)];
            motor.Drive(heat, question.AirC, question.DriveS, t);
            return t;
        }
    }

    /// <summary>A motor cooling down.</summary>
    private sealed record Cooling(double[] CanC, double[] CoreC, double ReadyMin, double CanReadyMin, double InheritsK)
    {
        public static Cooling Of(CoolDownQuestion question, Hot hot, CoolingBy by)
        {
            int steps = (int)(LongestMin * 60 / StepS);
            double[] t = [.. hot.HaltC], can = new double[steps + 1], core = new double[steps + 1], waited = t;
            double forced = hot.Motor.ForcedWPerK(by, question.HasFan), air = AirOf(question, by);
            for (int s = 0; s <= steps; s++)
            {
                (can[s], core[s]) = (t[(int)Node.Can], Math.Max(t[(int)Node.Winding], Math.Max(t[(int)Node.Laminations], t[(int)Node.Rotor])));
                if (s == (int)(question.WaitMin * 60 / StepS))
                    waited = [.. t];
                if (s < steps)
                    hot.Motor.Stand(forced, air, StepS, t, s == 0);
            }
            return new(can, core, hot.Motor.Longer(by, question.HasFan) * Ready(s => Math.Max(can[s], core[s])), Ready(s => can[s]), Inherited(question, hot, waited));

            double Ready(Func<int, double> temperature)
            {
                int last = steps;
                while (last >= 0 && temperature(last) - question.AirC <= question.WithinK)
                    last--;
                return last == steps ? double.PositiveInfinity : (last + 1) * StepS / 60.0;
            }
        }

        // The next run from here, less the same run from the air.
        private static double Inherited(CoolDownQuestion question, Hot hot, double[] from)
        {
            double[] warm = [.. from], fair = [.. Enumerable.Repeat(question.AirC, HeatFlows.Nodes)];
            hot.Motor.Drive(hot.HeatW, question.AirC, question.DriveS, warm);
            hot.Motor.Drive(hot.HeatW, question.AirC, question.DriveS, fair);
            return warm[(int)Node.Can] - fair[(int)Node.Can];
        }
    }
}
