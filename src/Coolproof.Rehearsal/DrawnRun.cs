namespace Coolproof.Rehearsal;

/// <summary>One run with everything that chance decides about it.</summary>
/// <param name="Plan">Its place in the plan.</param>
/// <param name="LogLoad">Deviation of log heat of this run alone.</param>
/// <param name="LogMounting">Deviation of log conductance of this refit.</param>
/// <param name="Stretches">Factors on the heat, one for each stretch of even load, mean 1 over the run.</param>
/// <param name="DriveS">Hard driving, s.</param>
/// <param name="RollInS">Roll-in, s.</param>
/// <param name="WarmUpS">Warm-up laps before go that nobody notes, s.</param>
/// <param name="WaitS">Wait before go, s.</param>
/// <param name="CoolDownS">From halt to the next go, s.</param>
/// <param name="DelaysS">From halt to each reading, s.</param>
/// <param name="PowerOffS">From halt to the fan's stop, s; infinite where it runs until the next go.</param>
internal sealed record DrawnRun(
    PlannedRun Plan, double LogLoad, double LogMounting, IReadOnlyList<double> Stretches, double DriveS, double RollInS, double WarmUpS,
    double WaitS, double CoolDownS, IReadOnlyList<double> DelaysS, double PowerOffS)
{
    /// <summary>Draws all runs; refits share their mounting from run to run.</summary>
    internal static IReadOnlyList<DrawnRun> Drawn(
        RehearsalSettings settings, IReadOnlyList<PlannedRun> plan, double mountingSd, double lapS, Habits habits)
    {
        List<DrawnRun> runs = [];
        double mounting = 0;
        for (int i = 0; i < plan.Count; i++)
        {
            RandomStream chance = new(settings.Seed, "run", i);
            double refit = settings.Deviations * chance.Normal(mountingSd);
            if (plan[i].Refit)
                mounting = refit;
            runs.Add(One(settings, plan[i], mounting, lapS, habits, chance));
        }
        return runs;
    }

    static DrawnRun One(RehearsalSettings settings, PlannedRun plan, double mounting, double lapS, Habits habits, RandomStream chance)
    {
        double load = settings.Deviations * chance.Normal(settings.LoadSd);
        double drive = settings.DriveS + chance.In(TruthRanges.DriveOverS), crash = chance.In(TruthRanges.VoidRunS);
        double rollIn = TruthRanges.RollInS.Clamp(chance.Gamma(TruthRanges.RollInMeanS, TruthRanges.RollInSdS));
        int warmUpLaps = chance.Pick(3);
        double wait = chance.In(TruthRanges.WaitS);
        double cool = 60 * TruthRanges.CoolDownMin.Clamp(habits.CoolDownMin + chance.Normal(TruthRanges.CoolDownSdMin));
        double driven = plan.IsVoid ? Math.Min(crash, drive) : drive;
        double[] delays = DrawnDelays(settings, plan.IsVoid ? 1 : settings.ReadingsPerRun, chance);
        double packOut = delays[^1] + chance.In(TruthRanges.PackOutS), powerOff = chance.In(TruthRanges.PowerOffS);
        return new(
            plan, load, mounting, DrawnStretches(driven, settings.Deviations * habits.WithinRunSd, chance), driven, rollIn,
            settings.WarmUpLaps ? warmUpLaps * lapS : 0, wait, cool, delays,
            !settings.FanRunsOn ? powerOff : habits.FanAllRest ? double.PositiveInfinity : packOut);
    }

    static double[] DrawnDelays(RehearsalSettings settings, int readings, RandomStream chance)
    {
        double[] delays = new double[readings];
        delays[0] = chance.In(settings.Hands == Hands.Good ? TruthRanges.DelayGoodS : TruthRanges.DelayBadS);
        for (int r = 1; r < readings; r++)
            delays[r] = delays[r - 1] + Math.Max(TruthRanges.GapLeastS, chance.Gamma(TruthRanges.GapMeanS, TruthRanges.GapSdS));
        return delays;
    }

    static double[] DrawnStretches(double driveS, double sd, RandomStream chance)
    {
        int count = (int)Math.Ceiling(driveS / TruthRanges.StretchS);
        double[] factors = new double[count];
        for (int i = 0; i < count; i++)
            factors[i] = chance.About(1, sd);
        double mean = 0;
        for (int i = 0; i < count; i++)
            mean += factors[i] * StretchS(i, driveS) / driveS;
        for (int i = 0; i < count; i++)
            factors[i] /= mean;
        return factors;
    }

    /// <summary>Length of one stretch of a drive, s: the last one may be short.</summary>
    internal static double StretchS(int index, double driveS) => Math.Min(TruthRanges.StretchS, driveS - index * TruthRanges.StretchS);
}
