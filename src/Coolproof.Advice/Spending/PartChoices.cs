namespace Coolproof.Advice.Spending;

/// <summary>Parts to choose from, numbered from 0, and the rules between them; sets of parts are bits of a word.</summary>
/// <param name="Cents">Price of each, hundredths.</param>
/// <param name="Grams">Mass of each, g.</param>
/// <param name="Worth">What each adds by itself; sums are what combinations add.</param>
/// <param name="Fans">Fans of each.</param>
/// <param name="Apart">With each: those that it doesn't go with; mutual.</param>
/// <param name="Needs">With each: those that it needs.</param>
/// <param name="Known">Combinations whose worth is known as a whole: parts and worth. The largest within a choice counts as a whole (of several as large the first), the other parts by themselves.</param>
public sealed record PartChoices(
    IReadOnlyList<long> Cents, IReadOnlyList<double> Grams, IReadOnlyList<double> Worth, IReadOnlyList<int> Fans, IReadOnlyList<ulong> Apart, IReadOnlyList<ulong> Needs,
    IReadOnlyList<(ulong Parts, double Worth)> Known)
{
    /// <summary>Parts that no choice may take.</summary>
    public ulong Barred { get; init; }

    /// <summary>Number of parts.</summary>
    public int Count => Cents.Count;

    /// <summary>Worth of a choice.</summary>
    public double WorthOf(ulong chosen) => CoreOf(chosen) is { } core ? Known[core].Worth + Sum(chosen & ~Known[core].Parts) : Sum(chosen);

    /// <summary>The known combination that counts as a whole within a choice; null: none is in it.</summary>
    public int? CoreOf(ulong chosen)
    {
        int? core = null;
        for (int d = 0; d < Known.Count; d++)
            if ((Known[d].Parts & ~chosen) == 0 && (core is not { } so || Before(d, so))) core = d;
        return core;
    }

    /// <summary>Whether the first of two known combinations goes before the second where both are within a choice.</summary>
    public bool Before(int first, int second)
    {
        int a = System.Numerics.BitOperations.PopCount(Known[first].Parts), b = System.Numerics.BitOperations.PopCount(Known[second].Parts);
        return a > b || a == b && first < second;
    }

    private double Sum(ulong parts)
    {
        double sum = 0;
        for (int i = 0; i < Count; i++)
            if ((parts >> i & 1) != 0) sum += Worth[i];
        return sum;
    }
}

/// <summary>What may be spent.</summary>
/// <param name="Cents">Most money, hundredths.</param>
/// <param name="FreeGrams">Grams before any count; 0 or more.</param>
/// <param name="Grams">Most grams that count.</param>
/// <param name="Fans">Most fans.</param>
public readonly record struct SpendLimits(long Cents, double FreeGrams, double Grams, int Fans)
{
    /// <summary>No limit at all.</summary>
    public static SpendLimits None => new(long.MaxValue / 4, 0, double.PositiveInfinity, int.MaxValue);
}

/// <summary>A choice of parts.</summary>
/// <param name="Parts">Parts, as bits.</param>
/// <param name="Cents">Money, hundredths.</param>
/// <param name="Grams">Mass, g.</param>
/// <param name="CountedGrams">Grams that count.</param>
/// <param name="Worth">What it adds.</param>
public readonly record struct PartChoice(ulong Parts, long Cents, double Grams, double CountedGrams, double Worth);
