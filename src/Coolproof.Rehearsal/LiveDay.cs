using Coolproof.Thermal.FullModel;

namespace Coolproof.Rehearsal;

/// <summary>
/// A made-up motor that a person drives on the run clock: what it does follows from when they go, stop, halt, cool and shoot, and from the seed. Pure: the same presses
/// give the same numbers.
/// </summary>
public sealed class LiveDay
{
    // As in the evenings that are simulated whole: even load within half a minute, air in pieces of five.
    const double LongestPieceS = 300;
    const int Hours = 6;

    readonly RehearsalSettings _settings;
    readonly World _world;
    readonly IReadOnlyList<TrueOption> _options;
    readonly TrueGun _gun;
    readonly Hyperparameters _hyper;
    readonly Habits _habits;
    readonly AirOfEvening _air;
    readonly double _dayHeat, _dayConductance, _startOverAirK;

    /// <summary>Draws motor, options, gun and air.</summary>
    /// <param name="settings">What it is made of; the order and number of runs are the person's.</param>
    /// <exception cref="ArgumentException">Settings that no day can be made of; the message names them.</exception>
    public LiveDay(RehearsalSettings settings)
    {
        Rehearse.Refuse(settings);
        (_settings, _world) = (settings, World.Drawn(settings));
        (_options, double optionSd) = TrueOption.Drawn(_world, settings);
        _gun = TrueGun.Drawn(settings);
        _hyper = Rehearse.DrawnHyperparameters(settings, _world, _gun, optionSd);
        _habits = Habits.Drawn(settings, _world.MassScale);
        RandomStream chance = new(settings.Seed, "day", 0);
        _dayHeat = settings.Deviations * chance.Normal(_hyper.DayHeatSd);
        _dayConductance = settings.Deviations * chance.Normal(_hyper.DayConductanceSd);
        _startOverAirK = chance.Normal(TruthRanges.FirstStartSdK);
        _air = AirOfEvening.Drawn(settings, 0, Hours * 3600);
        Truth = new(_world, _options, [], _hyper, _world.MeanLogHeat);
    }

    /// <summary>What is true at fair conditions.</summary>
    public Truth Truth { get; }

    /// <summary>What a thermometer in the shade shows, °C to a tenth.</summary>
    /// <param name="seconds">From the day's first go.</param>
    public double AirNotedC(double seconds) =>
        Math.Round(_air.AtC(seconds) + _hyper.ThermometerOffsetK[0] + new RandomStream(_settings.Seed, "thermometer", (int)(seconds / 60)).Normal(_hyper.ThermometerSdK), 1);

    /// <summary>Drives the runs, one after the other.</summary>
    /// <param name="runs">In the order of time.</param>
    public IReadOnlyList<DrivenTruth> Drive(IReadOnlyList<DrivenRun> runs)
    {
        List<DrivenTruth> truths = [];
        if (runs.Count == 0) return truths;
        double[] t = [.. Enumerable.Repeat(_air.AtC(runs[0].GoS) + _startOverAirK, HeatFlows.Nodes)];
        double mounting = 0;
        for (int i = 0; i < runs.Count; i++)
        {
            RandomStream chance = new(_settings.Seed, "driven run", i);
            double refit = _settings.Deviations * chance.Normal(_hyper.MountingSd), load = _settings.Deviations * chance.Normal(_hyper.LoadSd);
            if (i == 0 || runs[i].Option != runs[i - 1].Option) mounting = refit;
            TrueOption option = _options[runs[i].Option];
            CoolingOption cooling = option.Cooling.Times(Math.Exp(_dayConductance + mounting));
            double air = _air.AtC(runs[i].GoS), logHeat = _world.MeanLogHeat + _dayHeat + load;
            double core = Math.Max(t[(int)Node.Winding], Math.Max(t[(int)Node.Laminations], t[(int)Node.Rotor])) - air, can = t[(int)Node.Can] - air;
            double[] fair = [.. Enumerable.Repeat(air, HeatFlows.Nodes)];
            Hard(runs[i], cooling, logHeat, load, fair);
            Hard(runs[i], cooling, logHeat, load, t);
            double stop = t[(int)Node.Can], inherited = stop - fair[(int)Node.Can];
            RollIn(runs[i], cooling, logHeat, load, t);
            double until = i + 1 < runs.Count ? runs[i + 1].GoS : runs[i].Shots.Select(shot => shot.AtS).Append(runs[i].HaltS).Max();
            truths.Add(new(Stand(runs[i], option, cooling, until, t), stop, core, can, inherited, air));
        }
        return truths;
    }

    void Hard(DrivenRun run, CoolingOption cooling, double logHeat, double load, double[] t)
    {
        double seconds = Math.Max(run.StopS - run.GoS, 0);
        FastPath.Advance(_world.Body, cooling, FairRun.Driving(_world, logHeat, _air.AtC(run.GoS + seconds / 2), Evening.Pace(load)), seconds, t);
    }

    void RollIn(DrivenRun run, CoolingOption cooling, double logHeat, double load, double[] t) =>
        FastPath.Advance(_world.Body, cooling, FairRun.RollingIn(_world, logHeat, _air.AtC(run.StopS), Evening.Pace(load)), Math.Max(run.HaltS - run.StopS, 0), t);

    // From halt to the next go: shots, the shell, the fan and what is done by hand each begin a new phase.
    double[] Stand(DrivenRun run, TrueOption option, CoolingOption cooling, double untilS, double[] t)
    {
        Dictionary<int, double> read = [];
        double[] events =
        [
            .. run.Shots.Select(shot => shot.AtS).Concat(run.Coolings.SelectMany(c => new[] { c.FromS, c.ToS })).Append(run.HaltS + _habits.ShellOffS).Append(run.FanOffS).Append(untilS)
                .Where(at => at > run.HaltS && at <= untilS).Distinct().Order(),
        ];
        double now = run.HaltS;
        bool moved = true;
        Shoot(run, now, t, read);
        foreach (double next in events)
        {
            while (now < next)
            {
                double piece = Math.Min(next - now, LongestPieceS), at = now;
                DrivenCooling by = run.Coolings.FirstOrDefault(c => c.FromS <= at && at < c.ToS);
                bool fan = option.HasFan && (now < run.FanOffS || by.Fan);
                Phase phase = Evening.Standing(_world, option, cooling, _air.AtC(now + piece / 2) - by.ColderK, fan, by.Pit ? _habits.BlownWPerK : 0, now >= run.HaltS + _habits.ShellOffS);
                FastPath.Advance(_world.Body, cooling, phase, piece, t, afterEvent: moved);
                moved = false;
                now = next - now > piece ? now + piece : next;
            }
            moved = true;
            Shoot(run, now, t, read);
        }
        return [.. run.Shots.Select(shot => read.GetValueOrDefault(shot.Key, double.NaN))];
    }

    void Shoot(DrivenRun run, double now, double[] t, Dictionary<int, double> read)
    {
        foreach (DrivenShot shot in run.Shots.Where(shot => shot.AtS <= now && !read.ContainsKey(shot.Key)))
            read[shot.Key] = _gun.Shot(t[(int)Node.Can], _air.AtC(now), new RandomStream(_settings.Seed, "driven shot", shot.Key)).ReadC;
    }
}
