using Coolproof.Evidence.Model;
using Coolproof.Notebook;

namespace Coolproof.Evidence.Words;

/// <summary>In which order the options were driven.</summary>
internal enum OrderOfRuns
{
    /// <summary>Mixed, or too few runs to tell.</summary>
    Mixed,

    /// <summary>The same order in every round.</summary>
    SameEachRound,

    /// <summary>All runs of one option, then all of the next.</summary>
    OneAfterAnother,
}

/// <summary>Tells in which order the options were driven.</summary>
internal static class RunSequence
{
    /// <summary>Of the days on which some option was driven more than once; mixed unless all of them agree.</summary>
    public static OrderOfRuns Of(ReadingsTable table)
    {
        OrderOfRuns[] days = [.. table.Runs.Where(r => r.Kind == RunKind.Test && r.Readings.Any(DayModelBuilder.Counts)).GroupBy(r => r.Day)
            .Select(day => day.Select(r => r.Option.ToLowerInvariant()).ToArray()).Where(o => o.Distinct().Count() is var n && n > 1 && o.Length > n).Select(OfDay)];
        return days.Distinct().Count() == 1 ? days[0] : OrderOfRuns.Mixed;
    }

    private static OrderOfRuns OfDay(string[] options)
    {
        int different = options.Distinct().Count(), changes = Enumerable.Range(1, options.Length - 1).Count(i => options[i] != options[i - 1]);
        if (changes == different - 1)
            return OrderOfRuns.OneAfterAnother;
        return Enumerable.Range(different, options.Length - different).All(i => options[i] == options[i - different]) ? OrderOfRuns.SameEachRound : OrderOfRuns.Mixed;
    }
}
