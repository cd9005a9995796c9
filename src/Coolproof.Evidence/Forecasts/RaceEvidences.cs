using Coolproof.Evidence.Model;
using Coolproof.Notebook;

namespace Coolproof.Evidence.Forecasts;

/// <summary>Takes out of the draws of a table what a race needs.</summary>
internal static class RaceEvidences
{
    /// <summary>Draws are thinned to about this many: odds to a point or two.</summary>
    private const int Draws = 800;

    public static RaceEvidence Of(Posterior posterior)
    {
        DayModel model = posterior.Fit.Model;
        DayDensity density = new(model);
        int every = Math.Max(1, posterior.Draws.Count / Draws), daySpread = model.Groups.First(g => g.Members.Contains(model.Days[0].Heat)).Spread;
        RaceDraw[] draws = [.. Enumerable.Range(0, posterior.Draws.Count / every).Select(i => Draw(posterior.Draws[i * every]))];
        Run[] runs = [.. posterior.Options.SelectMany(o => Judge.Counted(posterior.Table, o))];
        Run[] skies = [.. runs.Where(r => r.Sky is not null)];
        return new(
            [.. posterior.Options.Select(o => model.Options[o])], draws, posterior.Fair, runs.Max(r => r.DriveS),
            skies.Length == 0 ? null : (double)skies.Count(r => r.Sky == Sky.Sun) / skies.Length, [.. runs.Select(r => r.Wind).OfType<Wind>().Distinct()])
        {
            GearingSlopes = Slopes(HeatTerms.Gearing, Priors.GearingSlope),
            TimingSlopes = Slopes(HeatTerms.Timing, Priors.TimingSlope),
        };

        double[]? Slopes(string name, NormalPrior prior)
        {
            int at = model.Parameters.ToList().FindIndex(p => p.Name == name);
            return at < 0 ? null : [.. draws.Select((_, i) => prior.Mean + prior.Sd * posterior.Draws[i * every][at])];
        }

        RaceDraw Draw(double[] u)
        {
            density.VisitMotor(u);
            Constants c = density.Motor;
            return new(c.Rho, c.Kappa, c.Share, c.Slot, c.Copper, c.LogHeat, density.SpreadOf(daySpread), density.SpreadOf(Global.RunHeatSpread),
                density.SpreadOf(Global.MountingSpread), [.. posterior.Options.Select(o => Option(u, c, o))]);
        }

        RaceOption Option(double[] u, in Constants c, int option) => new(
            c.LogConductance + density.Deviation(model.OptionEffect[option]), Ratio(u, option, fanOff: false), Ratio(u, option, fanOff: true));

        // The option's own ratio where a run of it tells of one, else the common one, else the prior's middle.
        double Ratio(double[] u, int option, bool fanOff)
        {
            double middle = (fanOff ? Priors.StoppedFanOff : Priors.StoppedFanOn).Mean;
            int[] entries = [.. model.Runs.Where(r => r.Option == option).SelectMany(r => new[] { r.RatioEntry, r.FanOffEntry }).Concat(model.Runs.SelectMany(r => new[] { r.RatioEntry, r.FanOffEntry }))
                .Where(e => e >= 0 && model.Ratios[e].Mean == middle)];
            return entries.Length > 0 ? model.Ratios[entries[0]].Log(u) : middle;
        }
    }
}
