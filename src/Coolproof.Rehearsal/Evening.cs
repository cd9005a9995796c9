using Coolproof.Thermal.FullModel;

namespace Coolproof.Rehearsal;

/// <summary>One evening by the full model: warm-up, wait, drive, roll in, stand, be read, cool down, and on to the next run.</summary>
/// <param name="World">Motor, lap, load.</param>
/// <param name="Options">The options.</param>
/// <param name="Habits">What people do alike.</param>
/// <param name="Air">The evening's air.</param>
/// <param name="LogHeat">Log heat of a run, all deviations in.</param>
/// <param name="LogDayConductance">Deviation of log conductance common to the evening.</param>
internal sealed record Evening(
    World World, IReadOnlyList<TrueOption> Options, Habits Habits, AirOfEvening Air, Func<DrawnRun, double> LogHeat, double LogDayConductance)
{
    /// <summary>Gearing of a run; null: the rehearsal's own.</summary>
    public Func<DrawnRun, TrueGear?> Gear { get; init; } = _ => null;

    // Air moves by tenths of a kelvin in this time.
    const double LongestPieceS = 300;

    /// <summary>Drives all runs of the evening.</summary>
    /// <param name="runs">The evening's runs in order.</param>
    /// <param name="driver">Which driver drives a run.</param>
    /// <param name="startOverAirK">All bodies over the air at the start, K.</param>
    internal IEnumerable<RunTruth> Drive(IReadOnlyList<DrawnRun> runs, Func<DrawnRun, int> driver, double startOverAirK)
    {
        double[] t = [.. Enumerable.Repeat(Air.AtC(0) + startOverAirK, HeatFlows.Nodes)];
        double now = -runs[0].WarmUpS - runs[0].WaitS;
        for (int i = 0; i < runs.Count; i++)
        {
            DrawnRun run = runs[i];
            TrueOption option = Options[run.Plan.Option];
            double logConductance = LogDayConductance + run.LogMounting;
            CoolingOption cooling = option.Cooling.Times(Math.Exp(logConductance));
            double before = t[(int)Node.Can];
            WarmUp(run, cooling, t, ref now);
            double go = now;
            double[] start = [.. t];
            DriveHard(run, cooling, t, ref now);
            double[] end = [.. t];
            RollIn(run, cooling, t, ref now);
            double[] halt = [.. t];
            double next = i + 1 < runs.Count ? runs[i + 1].WarmUpS + runs[i + 1].WaitS : 0;
            (double[] canAtReadings, double[] windingAtReadings) = Stand(run, cooling, run.CoolDownS - next, t, ref now);
            yield return new RunTruth(
                run.Plan.Evening, (run.Plan.Position + 1).ToString(System.Globalization.CultureInfo.InvariantCulture), option.Name,
                !run.Plan.IsVoid, driver(run), run.LogLoad, LogHeat(run), run.LogMounting, logConductance, Air.AtC(go + run.DriveS / 2), go,
                run.DriveS, run.RollInS, double.IsFinite(run.PowerOffS) ? run.PowerOffS : null, run.WarmUpS, start, end, halt, run.DelaysS,
                canAtReadings)
            { CanBeforeC = before, WindingAtReadingsC = windingAtReadings, Gear = Gear(run) };
        }
    }

    /// <summary>Speed over the lap's for a run's load deviation: who drives harder drives faster.</summary>
    internal static double Pace(double logLoad) => Math.Exp(TruthRanges.PaceExponent * logLoad);

    /// <summary>The can of the whole evening, filled while it is driven; null: it is not asked for. Days are then the same to a thousandth of a kelvin, since steps are cut shorter.</summary>
    internal CanTrace? Trace { get; init; }

    World WorldOf(DrawnRun run) => Gear(run)?.Of(World) ?? World;

    double PaceOf(DrawnRun run, double logLoad) => Pace(logLoad) * (Gear(run)?.Pace ?? 1);

    void WarmUp(DrawnRun run, CoolingOption cooling, double[] t, ref double now)
    {
        Phase laps = FairRun.Driving(WorldOf(run), LogHeat(run) + Math.Log(TruthRanges.WarmUpHeat), Air.AtC(now), 1);
        Advance(cooling, laps, run.WarmUpS, t, now);
        now += run.WarmUpS;
        Advance(cooling, Standing(run, cooling, Air.AtC(now), fan: true, pitFan: false, shellOff: false), run.WaitS, t, now);
        now += run.WaitS;
    }

    void DriveHard(DrawnRun run, CoolingOption cooling, double[] t, ref double now)
    {
        for (int s = 0; s < run.Stretches.Count; s++)
        {
            double seconds = DrawnRun.StretchS(s, run.DriveS), logFactor = Math.Log(run.Stretches[s]);
            Phase phase = FairRun.Driving(WorldOf(run), LogHeat(run) + logFactor, Air.AtC(now + seconds / 2), PaceOf(run, run.LogLoad + logFactor));
            Advance(cooling, phase, seconds, t, now, afterEvent: s == 0);
            now += seconds;
        }
    }

    void RollIn(DrawnRun run, CoolingOption cooling, double[] t, ref double now)
    {
        Advance(cooling, FairRun.RollingIn(WorldOf(run), LogHeat(run), Air.AtC(now), PaceOf(run, run.LogLoad)), run.RollInS, t, now);
        now += run.RollInS;
    }

    // From halt until the next run's warm-up: shell off, power off, readings and the pit fan each begin a new phase.
    (double[] Can, double[] Winding) Stand(DrawnRun run, CoolingOption cooling, double seconds, double[] t, ref double now)
    {
        double blownFrom = Habits.BlownS > 0 ? Math.Max(seconds - Habits.BlownS, run.DelaysS[^1] + 1) : double.PositiveInfinity;
        double[] events = [.. run.DelaysS.Concat([Habits.ShellOffS, run.PowerOffS, blownFrom, seconds]).Where(e => e <= seconds).Order()];
        double[] canAtReadings = new double[run.DelaysS.Count], windingAtReadings = new double[run.DelaysS.Count];
        double at = 0;
        int read = 0;
        bool moved = true;
        foreach (double next in events)
        {
            while (at < next)
            {
                double piece = Math.Min(next - at, LongestPieceS);
                Phase phase = Standing(run, cooling, Air.AtC(now + at + piece / 2), at < run.PowerOffS, at >= blownFrom, at >= Habits.ShellOffS);
                Advance(cooling, phase, piece, t, now + at, afterEvent: moved);
                moved = false;
                at = next - at > piece ? at + piece : next;
            }
            moved = !run.DelaysS.Contains(next);
            for (; read < canAtReadings.Length && run.DelaysS[read] <= at; read++)
                (canAtReadings[read], windingAtReadings[read]) = (t[(int)Node.Can], t[(int)Node.Winding]);
        }
        now += seconds;
        WaitWhileHot(run, cooling, TruthRanges.CoolDownMin.High * 60 - run.CoolDownS, t, ref now);
        return (canAtReadings, windingAtReadings);
    }

    // Minute by minute, and in the shade: who has a pit fan at hand has used it by now.
    void WaitWhileHot(DrawnRun run, CoolingOption cooling, double longestS, double[] t, ref double now)
    {
        for (double left = longestS; left > 0 && Habits.BlownS == 0 && t[(int)Node.Can] - Air.AtC(now) > TruthRanges.StillHotK; left -= 60)
        {
            double seconds = Math.Min(60, left);
            Phase shade = Standing(run, cooling, Air.AtC(now), double.IsPositiveInfinity(run.PowerOffS), pitFan: false, shellOff: true);
            Advance(cooling, shade, seconds, t, now, afterEvent: false);
            now += seconds;
        }
    }

    void Advance(CoolingOption cooling, in Phase phase, double seconds, double[] t, double from, bool afterEvent = true)
    {
        if (Trace is null) FastPath.Advance(World.Body, cooling, phase, seconds, t, afterEvent: afterEvent);
        else Trace.Along(World.Body, cooling, phase, seconds, t, from, afterEvent);
    }

    Phase Standing(DrawnRun run, CoolingOption cooling, double airC, bool fan, bool pitFan, bool shellOff) =>
        Standing(World, Options[run.Plan.Option], cooling, airC, fan, pitFan ? Habits.BlownWPerK : 0, shellOff);

    /// <summary>A car that stands with its power off.</summary>
    internal static Phase Standing(World world, TrueOption option, CoolingOption cooling, double airC, bool fan, double pitFanWPerK, bool shellOff)
    {
        double breeze = world.BreezeMS * (option.HasFan ? 1 : TruthRanges.BreezeReachesBareCan);
        return Phase.Steady(airC, 0, 0, breeze, fan && cooling.FanWPerK > 0 ? 1 : 0) with { PitFanWPerK = pitFanWPerK, ShellOff = shellOff };
    }
}
