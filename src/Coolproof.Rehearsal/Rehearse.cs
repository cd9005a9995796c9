namespace Coolproof.Rehearsal;

/// <summary>Simulates test days by the full model, to learn on and to test with.</summary>
public static class Rehearse
{
    /// <summary>Simulates a rehearsal of one or more evenings.</summary>
    /// <param name="settings">What it is made of.</param>
    /// <exception cref="ArgumentException">Settings that no day can be made of; the message names them.</exception>
    public static SimulatedDay Day(RehearsalSettings settings)
    {
        Refuse(settings);
        World world = World.Drawn(settings);
        (IReadOnlyList<TrueOption> options, double optionSd) = TrueOption.Drawn(world, settings);
        TrueGun gun = TrueGun.Drawn(settings);
        Hyperparameters hyper = DrawnHyperparameters(settings, world, gun, optionSd);
        Habits habits = Habits.Drawn(settings, world.MassScale);
        IReadOnlyList<PlannedRun> plan = PlannedRun.Plan(settings);
        IReadOnlyList<DrawnRun> drawn = DrawnRun.Drawn(settings, plan, hyper.MountingSd, world.Lap.Seconds, habits);
        double[] drivers = DrawnDrivers(settings);
        TrueGear[] gears = [.. settings.Laps is { } laps ? laps.Pinions.Select(p => laps.Of(p, laps.TimingDeg, settings.DriveS)) : []];
        List<RunTruth> runs = [];
        CanTrace[] traces = settings.Traced ? [.. Enumerable.Range(0, settings.Evenings).Select(_ => new CanTrace())] : [];
        for (int evening = 0; evening < settings.Evenings; evening++)
            runs.AddRange(Driven(settings, world, options, hyper, habits, [.. drawn.Where(r => r.Plan.Evening == evening)], drivers, gears, evening, settings.Traced ? traces[evening] : null));

        int fairDriver = runs.Where(r => r.CountsInRanking).GroupBy(r => r.Driver).OrderByDescending(g => g.Count()).ThenBy(g => g.Key).First().Key;
        Truth truth = new(world, options, runs, hyper, world.MeanLogHeat + drivers[fairDriver]);
        double batteryA = world.MassScale * new RandomStream(settings.Seed, "battery").In(TruthRanges.BatteryA);
        NotedRun noted = new(settings, options, gun, hyper, batteryA);
        return new(
            [.. runs.Select((r, i) => noted.Of(r, i, i == 0 || runs[i - 1].Evening != r.Evening))], truth, StratumOf(settings), settings)
        { Traces = traces };
    }

    static List<RunTruth> Driven(
        RehearsalSettings settings, World world, IReadOnlyList<TrueOption> options, Hyperparameters hyper, Habits habits,
        IReadOnlyList<DrawnRun> runs, double[] drivers, TrueGear[] gears, int evening, CanTrace? trace)
    {
        RandomStream chance = new(settings.Seed, "day", evening);
        double dayHeat = settings.Deviations * chance.Normal(hyper.DayHeatSd);
        double dayConductance = settings.Deviations * chance.Normal(hyper.DayConductanceSd);
        double slope = settings.Deviations * chance.Normal(hyper.TrendSd);
        double startOverAir = chance.Normal(TruthRanges.FirstStartSdK);
        AirOfEvening air = AirOfEvening.Drawn(settings, evening, runs.Sum(r => r.DriveS + r.RollInS + r.CoolDownS));
        int Driver(DrawnRun run) => TurnOf(settings, run.Plan);
        TrueGear? Gear(DrawnRun run) => gears.Length == 0 ? null : gears[(run.Plan.Position / settings.Options.Count + evening) % gears.Length];
        double LogHeat(DrawnRun run) =>
            world.MeanLogHeat + dayHeat + slope * DayPosition(run.Plan.Position, runs.Count) + drivers[Driver(run)] + run.LogLoad + (Gear(run)?.LogHeat(world.CopperShare) ?? 0);
        return [.. new Evening(world, options, habits, air, LogHeat, dayConductance) { Trace = trace, Gear = Gear }.Drive(runs, Driver, startOverAir).Select(r => r with { LogDriver = drivers[r.Driver] })];
    }

    // -1/2 at the first run, +1/2 at the last.
    static double DayPosition(int position, int runs) => runs > 1 ? (double)position / (runs - 1) - 0.5 : 0;

    // Drivers take turns; the turn moves on by one each round, or each would always drive the same options.
    static int TurnOf(RehearsalSettings settings, PlannedRun plan)
    {
        int drivers = Math.Max(1, settings.Drivers.Count);
        return settings.OneDriverAnEvening
            ? plan.Evening % drivers
            : (plan.Position + plan.Position / settings.Options.Count + plan.Evening) % drivers;
    }

    static double[] DrawnDrivers(RehearsalSettings settings)
    {
        if (settings.Drivers.Count == 0)
            return [0];
        RandomStream chance = new(settings.Seed, "drivers");
        return [.. settings.Drivers.Select(_ => settings.Deviations * chance.Normal(TruthRanges.DriverSd))];
    }

    internal static Hyperparameters DrawnHyperparameters(RehearsalSettings settings, World world, TrueGun gun, double optionSd)
    {
        RandomStream chance = new(settings.Seed, "sds");
        double mounting = chance.In(TruthRanges.MountingSd), dayHeat = chance.In(TruthRanges.DayHeatSd);
        double exponent = TruthRanges.ChargeExponents.Clamp(TruthRanges.ChargeExponent + chance.Normal(TruthRanges.ChargeExponentSd));
        double[] thermometer = [.. Enumerable.Range(0, settings.Evenings).Select(_ => chance.Normal(TruthRanges.ThermometerDaySdK))];
        return new(
            settings.LoadSd, mounting, dayHeat, TruthRanges.DayConductanceSd, TruthRanges.TrendSd, TruthRanges.DriverSd, optionSd,
            gun.ScatterK, TruthRanges.WildChance, TruthRanges.WildFactor, gun.AimLossMean, gun.OffsetK, gun.Gain, thermometer,
            TruthRanges.ThermometerSdK, world.MeanLogHeat, world.CopperShare, exponent,
            Math.Sqrt(TruthRanges.ChargeRelationSd * TruthRanges.ChargeRelationSd + TruthRanges.ChargerSd * TruthRanges.ChargerSd));
    }

    static Stratum StratumOf(RehearsalSettings s) => new(
        s.LoadSd, s.Hands, s.DelaysNoted >= 0.5, s.FanRunsOn, s.RunsPerOption, s.Order, s.ChargeNoted, s.ClockNoted, s.Options.Count,
        s.StartNoted, s.BlownDown, s.HoldMax, s.Options.Any(o => o.SameAs is not null));

    internal static void Refuse(RehearsalSettings s)
    {
        Refuse(s.Options.Count >= 1, nameof(s.Options), s.Options.Count, "at least one cooling option");
        Refuse(s.Options.Select(o => o.Name).Distinct(StringComparer.OrdinalIgnoreCase).Count() == s.Options.Count,
            nameof(s.Options), "one name twice", "a name of its own for each option");
        Refuse(s.Sequence is null || (s.Sequence.Count > 0 && s.Sequence.All(o => o >= 0 && o < s.Options.Count)),
            nameof(s.Sequence), "empty or beyond the options", "runs of options that are there");
        Refuse(s.RunsPerOption >= 1, nameof(s.RunsPerOption), s.RunsPerOption, "at least one run an option");
        Refuse(s.ReadingsPerRun is >= 1 and <= 20, nameof(s.ReadingsPerRun), s.ReadingsPerRun, "1 to 20 readings a run");
        Refuse(s.Evenings >= 1, nameof(s.Evenings), s.Evenings, "at least one evening");
        Refuse(s.AirFromC is null || s.AirFromC.Count == s.Evenings, nameof(s.AirFromC), s.AirFromC?.Count ?? 0, "one air temperature for each evening");
        Refuse(s.DriveS is >= 60 and <= 3600, nameof(s.DriveS), s.DriveS, "60 to 3600 s of hard driving");
        Refuse(s.LoadSd is >= 0 and < 1, nameof(s.LoadSd), s.LoadSd, "an sd of log heat from 0 to 1");
        Refuse(s.CoolDownMin is null or (>= 8 and <= 25), nameof(s.CoolDownMin), s.CoolDownMin ?? 0, "8 to 25 minutes between runs");
    }

    static void Refuse(bool right, string name, object found, string expected)
    {
        if (!right)
            throw new ArgumentException($"{name} is {found}; a rehearsal needs {expected}.", name);
    }
}
