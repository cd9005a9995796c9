using Coolproof.Evidence.Words;
using Coolproof.Sampling.Classical;

namespace Coolproof.Evidence.Opinion;

/// <summary>Terms of the classical model beside the option.</summary>
/// <param name="Fixed">Driver and gearing where they vary and leave the options apart.</param>
/// <param name="Random">Days, or else mountings.</param>
/// <param name="Method">The model in plain words.</param>
internal sealed record Layout(IReadOnlyList<DesignTerm> Fixed, IReadOnlyList<RandomTerm> Random, string Method)
{
    /// <summary>What the runs can carry.</summary>
    public static Layout Of(IReadOnlyList<RunMean> means)
    {
        List<DesignTerm> terms = [];
        List<string> allowed = [];
        foreach ((string name, DesignTerm term) in Candidates(means))
        {
            if (!LeavesOptionsApart(means, [.. terms, term]))
                continue;
            terms.Add(term);
            allowed.Add(name);
        }
        RandomTerm? group = Group(means);
        if (group is not null)
            allowed.Add(group.Name);
        string method = "averages of each run's corrected readings, compared option by option" + (allowed.Count == 0 ? "" : $", {Say.List(allowed)} allowed for");
        return new(terms, group is null ? [] : [group], method);
    }

    private static IEnumerable<(string, DesignTerm)> Candidates(IReadOnlyList<RunMean> means)
    {
        string[] drivers = [.. means.Select(m => m.Run.Load.Driver?.Trim().ToLowerInvariant() ?? "")];
        if (drivers.Distinct().Count() > 1)
            yield return ("driver", DesignTerm.Factor("driver", drivers));
        double[] gearing = [.. means.Select(m => m.Run.Load is { PinionTeeth: { } pinion, SpurTeeth: { } spur } ? Math.Log(pinion / (double)spur) : double.NaN)];
        if (Array.TrueForAll(gearing, double.IsFinite) && gearing.Distinct().Count() > 1)
            yield return ("gearing", DesignTerm.Covariate("gearing", gearing));
    }

    // A term that can't be told from the options, or that takes the last run to spare, would cost the comparison more than it gives.
    private static bool LeavesOptionsApart(IReadOnlyList<RunMean> means, IReadOnlyList<DesignTerm> terms)
    {
        DesignTerm option = DesignTerm.Factor("option", [.. means.Select(m => m.Option)]);
        AnalysisOfCovariance fit = AnalysisOfCovariance.Fit([.. means.Select(m => m.FairC)], [option, .. terms]);
        return fit.Model.DegreesOfFreedom > 0 && option.Levels.Skip(1).All(level => fit.Difference("option", level, option.Levels[0]).Caveat != ContrastCaveat.Confounded);
    }

    private static RandomTerm? Group(IReadOnlyList<RunMean> means)
    {
        if (Usable([.. means.Select(m => m.Run.Day)]))
            return RandomTerm.Intercept("day", [.. means.Select(m => m.Run.Day)]);
        // Mountings tell something only where one held for several runs and an option was mounted more than once.
        bool mountedAgain = means.GroupBy(m => m.Option).Any(o => o.Select(m => m.Mounting).Distinct().Count() > 1);
        string[] mountings = [.. means.Select(m => $"{m.Option} {m.Mounting}")];
        return mountedAgain && Usable(mountings) ? RandomTerm.Intercept("mounting", mountings) : null;
    }

    private static bool Usable(string[] levels) => levels.Distinct().Count() is var count && count > 1 && count < levels.Length;
}
