using Coolproof.Notebook;
using MathNet.Numerics.Statistics;

namespace Coolproof.Evidence.Earlier;

/// <summary>How an option's cooling on a new day stands to that of the same name on earlier ones.</summary>
/// <param name="Option">Its name.</param>
/// <param name="LogRatio">Log of new over earlier conductance while driving, mean.</param>
/// <param name="Sd">Its standard deviation.</param>
internal readonly record struct OptionChange(string Option, double LogRatio, double Sd)
{
    // A change worth a new name. What two options of one motor differ by beforehand, to which few readings hold the ratio back.
    private const double Change = 0.2, SpreadOfOptions = 0.16, LeastShare = 0.19;

    /// <summary>Standard deviations from no change.</summary>
    public double Sds => Math.Abs(LogRatio) / Sd;

    /// <summary>
    /// Log of how many times as likely the readings are after a change of 0.2 in the log, up or down alike, as after none. The ratio's mean and sd are those of prior and readings together; of the readings by
    /// themselves the precision is the part left when the prior's is taken off (normal densities). Against <see cref="Sds"/> this asks less of a day whose ratio is known poorly and is far off.
    /// </summary>
    public double LogEvidence
    {
        get
        {
            double variance = Sd * Sd, share = Math.Max(1 - variance / (SpreadOfOptions * SpreadOfOptions), LeastShare);
            double along = Math.Abs(LogRatio) * Change / variance;
            return along + Math.Log((1 + Math.Exp(-2 * along)) / 2) - 0.5 * Change * Change * share / variance;
        }
    }
}

/// <summary>
/// Whether options are still what they were: one at a time, the new day's runs of an option are entered as an option of their own into the joint model of all days, and its
/// conductance is set beside the earlier one's.
/// </summary>
internal static class OptionChanges
{
    // No name that is typed ends so.
    private const string Mark = "\u0001";

    private const double MostTimes = 1e6;

    /// <summary>
    /// Limit of <see cref="OptionChange.LogEvidence"/> so that of so many unchanged options together about one in twenty days is called changed. Measured on 3,000 unchanged options of seasons driven with the full
    /// model, two to six runs of it on the new days: their 95 % point is 0.56, 98.3 % (three together) 1.86, 99.1 % (six) 2.50; a little more is asked for, by about two errors of the first.
    /// </summary>
    public static double Limit(int options) => 0.7 + 1.1 * Math.Log(Math.Max(options, 1));

    /// <summary>One for each option that counts on the new day and before; none where there are more than 72 runs together.</summary>
    /// <param name="table">The new day.</param>
    /// <param name="before">Earlier ones.</param>
    /// <param name="settings">Seed.</param>
    public static IReadOnlyList<OptionChange> Of(ReadingsTable table, IReadOnlyList<ReadingsTable> before, JudgeSettings settings) =>
        table.Runs.Count + before.Sum(b => b.Runs.Count) > EarlierTables.MostRuns
        ? []
        :
        [
            .. from name in table.Options.Where((_, o) => Judge.Counted(table, o).Any())
               where before.Any(b => Enumerable.Range(0, b.Options.Count).Any(o => Same(b.Options[o], name) && Judge.Counted(b, o).Any()))
               select Of(name, table, before, settings),
        ];

    /// <summary>The one that stands out most; null where none is beyond the limit.</summary>
    /// <param name="changes">All options that were asked about.</param>
    /// <param name="before">Tables of the earlier days.</param>
    public static ChangedOption? Most(IReadOnlyList<OptionChange> changes, IReadOnlyList<ReadingsTable> before)
    {
        OptionChange[] beyond = [.. changes.Where(c => c.LogEvidence > Limit(changes.Count)).OrderByDescending(c => c.LogEvidence)];
        if (beyond is not [var most, ..])
            return null;
        int days = before.Sum(b => b.Runs.Where(r => Same(r.Option, most.Option)).Select(r => r.Day).Distinct().Count());
        return new(most.Option, days, Math.Exp(most.LogRatio), most.Sds, Math.Min(Math.Exp(most.LogEvidence), MostTimes));
    }

    /// <summary>For one option.</summary>
    internal static OptionChange Of(string name, ReadingsTable table, IReadOnlyList<ReadingsTable> before, JudgeSettings settings)
    {
        string own = name + Mark;
        ReadingsTable renamed = table with
        {
            Runs = [.. table.Runs.Select(r => Same(r.Option, name) ? r with { Option = own } : r)],
            Options = [.. table.Options.Select(o => Same(o, name) ? own : o)],
        };
        QuickVerdict both = QuickJudge.Of(EarlierTables.Joined(renamed, before), settings)!;
        List<string> options = [.. both.Options];
        int now = options.IndexOf(own), then = options.FindIndex(o => Same(o, name));
        double[] ratio = [.. both.Motors.Select(m => Math.Log(m.ConductancePerS[now] / m.ConductancePerS[then]))];
        return new(name, ratio.Mean(), ratio.StandardDeviation());
    }

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
}
