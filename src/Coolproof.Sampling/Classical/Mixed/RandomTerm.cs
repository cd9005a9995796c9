namespace Coolproof.Sampling.Classical;

/// <summary>Effects that differ at random between the levels of a grouping factor.</summary>
public sealed class RandomTerm
{
    RandomTerm(string name, IReadOnlyList<string> groups, double[][] columns)
    {
        for (var c = 0; c < columns.Length; c++)
        {
            if (columns[c].Length != groups.Count)
                throw new ArgumentException($"Term {name}: {groups.Count} groups and {columns[c].Length} covariate values.", nameof(columns));
        }
        var index = new Dictionary<string, int>();
        (Name, Columns) = (name, columns);
        LevelOf = [.. groups.Select(group => index.TryGetValue(group, out var level) ? level : index[group] = index.Count)];
        Levels = [.. index.Keys];
    }

    /// <summary>Name of the grouping factor.</summary>
    public string Name { get; }

    /// <summary>Levels in the order they first appear.</summary>
    public IReadOnlyList<string> Levels { get; }

    /// <summary>Level of each reading.</summary>
    internal int[] LevelOf { get; }

    /// <summary>Values that multiply the effects, one array of n for each effect of a level.</summary>
    internal double[][] Columns { get; }

    internal int Width => Columns.Length;

    /// <summary>Each level shifts its readings by a random amount.</summary>
    /// <param name="name">Name of the grouping factor.</param>
    /// <param name="groups">Level of each reading. For a factor nested in another join both names, so that levels stay apart.</param>
    public static RandomTerm Intercept(string name, IReadOnlyList<string> groups) =>
        new(name, groups, [[.. Enumerable.Repeat(1.0, groups.Count)]]);

    /// <summary>Each level changes the effect of a covariate by a random amount, independent of any intercept.</summary>
    public static RandomTerm Slope(string name, IReadOnlyList<string> groups, IReadOnlyList<double> covariate) =>
        new(name, groups, [[.. covariate]]);

    /// <summary>Each level has a random intercept and a random slope, which may be correlated.</summary>
    public static RandomTerm InterceptAndSlope(string name, IReadOnlyList<string> groups, IReadOnlyList<double> covariate) =>
        new(name, groups, [[.. Enumerable.Repeat(1.0, groups.Count)], [.. covariate]]);
}
