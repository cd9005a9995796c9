namespace Coolproof.Notebook;

/// <summary>Parts to choose from, and what may be spent on them.</summary>
/// <param name="Currency">Sign of the person's currency; empty: none.</param>
/// <param name="Money">What may be spent; null: no limit.</param>
/// <param name="Grams">What may be added above the class's minimum weight, g; null: no limit.</param>
/// <param name="Rules">What the class allows.</param>
/// <param name="LapSPer100G">What a hundred grams above the minimum cost a lap, s; null: not known.</param>
/// <param name="Base">The option that all are set against, by its name in the readings table; what is fitted when nothing is bought.</param>
/// <param name="Parts">Parts.</param>
/// <param name="Driven">Combinations that were driven as one option.</param>
/// <param name="Predicted">Combinations that were predicted as a mount, by its name in a file of mounts.</param>
public sealed record SpendSheet(
    string Currency, decimal? Money, double? Grams, SpendRules Rules, double? LapSPer100G, string Base, IReadOnlyList<SpendPart> Parts, IReadOnlyList<TogetherParts> Driven,
    IReadOnlyList<TogetherParts> Predicted);

/// <summary>What the class allows, as the person typed it.</summary>
/// <param name="FreeG">Grams that may be added before any count: minimum weight less the car's; 0 or less where it is over already.</param>
/// <param name="FansMax">Most fans; null: any number.</param>
/// <param name="OpeningsAllowed">Whether the shell may be opened.</param>
public sealed record SpendRules(double FreeG, int? FansMax, bool OpeningsAllowed);

/// <summary>A part that could be bought.</summary>
/// <param name="Part">Name, price and mass.</param>
public sealed record SpendPart(CoolingPart Part)
{
    /// <summary>Whether it is owned already: it then costs nothing.</summary>
    public bool Owned { get; init; }
    /// <summary>Places that it takes up; two parts never share one.</summary>
    public IReadOnlyList<string> Places { get; init; } = [];
    /// <summary>Parts that it doesn't go with.</summary>
    public IReadOnlyList<string> Excludes { get; init; } = [];
    /// <summary>Parts that it needs.</summary>
    public IReadOnlyList<string> Needs { get; init; } = [];
    /// <summary>Its fans.</summary>
    public int Fans { get; init; }
    /// <summary>Whether the shell must be opened for it.</summary>
    public bool OpensShell { get; init; }
    /// <summary>Work, min.</summary>
    public double FitMin { get; init; }
    /// <summary>Whether it must be soldered.</summary>
    public bool Soldering { get; init; }
    /// <summary>Whether something must be cut.</summary>
    public bool Cutting { get; init; }
    /// <summary>What it does to the lap by itself, s; below 0 quicker.</summary>
    public double LapS { get; init; }
    /// <summary>How much cooler the can is guessed to be with it alone, K; null: no guess.</summary>
    public Guess? CoolsK { get; init; }

    /// <summary>What it costs.</summary>
    public decimal Price => Owned ? 0 : Part.Price;
}

/// <summary>A guess: the middle and the ends that hold the truth 9 times in 10.</summary>
/// <param name="Middle">Middle.</param>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
public readonly record struct Guess(double Middle, double Low, double High);

/// <summary>Parts that were driven, or predicted, together.</summary>
/// <param name="Option">The option's name in the readings table, or the mount's in the file of mounts.</param>
/// <param name="Parts">Names of its parts.</param>
public sealed record TogetherParts(string Option, IReadOnlyList<string> Parts);
