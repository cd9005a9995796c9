using Coolproof.Notebook;

namespace Coolproof.Evidence.Model;

/// <summary>What a part of a run's log heat goes with.</summary>
internal enum HeatOf { Driver, Surface, Gearing, Timing }

/// <summary>A parameter with a factor that adds to a run's log heat; parameter −1: the factor alone.</summary>
internal readonly record struct HeatTerm(int Parameter, double Factor, HeatOf Of);

/// <summary>Driver, surface and the like, gearing and timing: what adds to a run's log heat. The level most frequent among the runs that are asked about is the reference.</summary>
internal static class HeatTerms
{
    /// <summary>Names of the slopes' parameters.</summary>
    public const string Gearing = "heat against gearing", Timing = "heat against timing";

    private static readonly (string Name, Func<LoadNotes, string?> Of)[] Categories =
    [
        ("driver", l => l.Driver), ("surface", l => l.Surface), ("venue", l => l.Venue), ("vehicle", l => l.Vehicle), ("motor", l => l.Motor),
        ("tyres", l => l.Tyres), ("controller profile", l => l.ControllerProfile),
    ];

    /// <summary>Adds the parameters that the table can tell apart and attaches them to the runs.</summary>
    public static void Attach(IReadOnlyList<ModelRun> runs, ReadingsTable table, Func<string, PriorKind, DoubtSource, double, double, int> add)
    {
        List<HeatTerm>[] terms = [.. runs.Select(_ => new List<HeatTerm>())];
        LoadNotes[] notes = [.. runs.Select(r => table.Runs[r.TableRun].Load)];
        bool[] asked = [.. runs.Select(r => r.TableRun >= table.EarlierRuns)];
        foreach ((string name, Func<LoadNotes, string?> of) in Categories)
            AddLevels(name, [.. notes.Select(n => of(n)?.Trim().ToLowerInvariant() ?? "")], asked, terms, add);
        AddSlope(Gearing, HeatOf.Gearing, [.. notes.Select(n => n.PinionTeeth is { } p ? Math.Log(p / (double)(n.SpurTeeth ?? 80)) : double.NaN)], asked, Priors.GearingSlope, terms, add);
        AddSlope(Timing, HeatOf.Timing, [.. notes.Select(n => n.TimingDeg ?? double.NaN)], asked, Priors.TimingSlope, terms, add);
        for (int r = 0; r < runs.Count; r++)
            runs[r].HeatTerms = [.. terms[r]];
    }

    // Where no run that is asked about tells, those before it do; the first one among equals.
    private static T MostFrequent<T>(IReadOnlyList<(T Value, bool Asked)> values)
    {
        bool told = values.Any(v => v.Asked);
        return values.Where(v => v.Asked || !told).GroupBy(v => v.Value).OrderByDescending(g => g.Count()).First().Key;
    }

    private static void AddLevels(string category, string[] levels, bool[] asked, List<HeatTerm>[] terms, Func<string, PriorKind, DoubtSource, double, double, int> add)
    {
        if (levels.Length == 0)
            return;
        string reference = MostFrequent([.. levels.Zip(asked)]);
        foreach (string level in levels.Distinct().Where(l => l != reference).Order(StringComparer.Ordinal))
        {
            int parameter = add($"{category} {(level.Length == 0 ? "not noted" : level)}", PriorKind.Unit, DoubtSource.Load, 0, 1);
            for (int r = 0; r < levels.Length; r++)
                if (levels[r] == level)
                    terms[r].Add(new(parameter, Priors.LevelSd * Math.Sqrt(2), category == "driver" ? HeatOf.Driver : HeatOf.Surface));
        }
    }

    // A slope is mean + sd u: its mean part goes in as the constant factor of parameter −1.
    private static void AddSlope(string name, HeatOf of, double[] x, bool[] asked, NormalPrior prior, List<HeatTerm>[] terms, Func<string, PriorKind, DoubtSource, double, double, int> add)
    {
        (double Value, bool Asked)[] noted = [.. x.Zip(asked).Where(v => !double.IsNaN(v.First))];
        if (noted.DistinctBy(v => v.Value).Count() < 2)
            return;
        double reference = MostFrequent(noted);
        int parameter = add(name, PriorKind.Unit, DoubtSource.Load, 0, 1);
        for (int r = 0; r < x.Length; r++)
        {
            if (double.IsNaN(x[r]) || x[r] == reference)
                continue;
            terms[r].Add(new(-1, prior.Mean * (x[r] - reference), of));
            terms[r].Add(new(parameter, prior.Sd * (x[r] - reference), of));
        }
    }
}
