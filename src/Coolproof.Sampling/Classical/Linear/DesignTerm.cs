namespace Coolproof.Sampling.Classical;

/// <summary>A fixed term of a model: a factor, a covariate or an interaction of factors.</summary>
public sealed class DesignTerm
{
    readonly Dictionary<string, int> _index = [];
    readonly double[] _values;

    DesignTerm(string name, IReadOnlyList<string> levels, double[] values)
    {
        (Name, LevelOf, _values) = (name, levels, values);
        foreach (var level in levels) _index.TryAdd(level, _index.Count);
    }

    /// <summary>Name of the term.</summary>
    public string Name { get; }

    /// <summary>Level of each reading; empty for a covariate.</summary>
    public IReadOnlyList<string> LevelOf { get; }

    /// <summary>Levels in the order they first appear; the first is the reference. Empty for a covariate.</summary>
    public IReadOnlyList<string> Levels => [.. _index.Keys];

    /// <summary>Columns in the design: one for a covariate, one less than its levels for a factor.</summary>
    internal int Width => IsCovariate ? 1 : Math.Max(0, _index.Count - 1);

    internal int Readings => IsCovariate ? _values.Length : LevelOf.Count;

    bool IsCovariate => LevelOf.Count == 0;

    /// <summary>A factor, coded as differences from its first level.</summary>
    /// <param name="name">Name.</param>
    /// <param name="levels">Level of each reading.</param>
    public static DesignTerm Factor(string name, IReadOnlyList<string> levels) => new(name, levels, []);

    /// <summary>A covariate that acts in proportion.</summary>
    /// <param name="name">Name.</param>
    /// <param name="values">Value at each reading.</param>
    public static DesignTerm Covariate(string name, IReadOnlyList<double> values) => new(name, [], [.. values]);

    /// <summary>What two factors do together beyond what each does alone; enter it after both.</summary>
    public static DesignTerm Interaction(DesignTerm a, DesignTerm b) =>
        Factor($"{a.Name} × {b.Name}", [.. a.LevelOf.Zip(b.LevelOf, (first, second) => $"{first} × {second}")]);

    internal void Fill(double[,] design, int at)
    {
        for (var i = 0; i < Readings; i++)
        {
            if (IsCovariate) design[i, at] = _values[i];
            else if (_index[LevelOf[i]] is var level and > 0) design[i, at + level - 1] = 1;
        }
    }

    /// <summary>Column of a level, from the term's first; −1 for the reference.</summary>
    internal int ColumnOf(string level) => _index.TryGetValue(level, out var index) ? index - 1
        : throw new ArgumentException($"{Name} has no level {level}; it has {string.Join(", ", _index.Keys)}.", nameof(level));
}
