namespace Coolproof.Rehearsal;

/// <summary>What the people of a rehearsal do alike from run to run.</summary>
/// <param name="CoolDownMin">Mean cool-down from halt to the next go, min.</param>
/// <param name="WithinRunSd">Sd of log heat between stretches of one run.</param>
/// <param name="ShellOffS">From halt to lifting the shell, s.</param>
/// <param name="FanAllRest">Whether a fan that runs on does so until the next go.</param>
/// <param name="BlownS">Blown down at the end of each cool-down for, s; 0 where it is left in the shade.</param>
/// <param name="BlownWPerK">By the pit fan, W/K.</param>
internal sealed record Habits(
    double CoolDownMin, double WithinRunSd, double ShellOffS, bool FanAllRest, double BlownS, double BlownWPerK)
{
    internal static Habits Drawn(RehearsalSettings settings, double massScale)
    {
        RandomStream chance = new(settings.Seed, "habits");
        double coolDown = chance.In(new(TruthRanges.CoolDownMin.Low + 2, TruthRanges.CoolDownMin.High - 3));
        double within = chance.In(TruthRanges.WithinRunSd), shellOff = chance.In(TruthRanges.ShellOffS);
        bool allRest = chance.Chance(TruthRanges.FanAllRestChance);
        double blownS = chance.In(TruthRanges.BlownS), blown = massScale * chance.In(TruthRanges.BlownWPerK);
        return new(settings.CoolDownMin ?? coolDown, within, shellOff, allRest, settings.BlownDown ? blownS : 0, blown);
    }
}
