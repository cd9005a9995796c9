using Coolproof.Evidence;
using Coolproof.Notebook;
using Coolproof.Sampling;

namespace Coolproof.Advice.Spending;

/// <summary>
/// What parts add to the watts per degree of the base, as a share of them, draw by draw. A part driven alone is taken as measured; else what it made in a driven option beyond the same without it; else
/// what a predicted mount of it alone adds; else the person's guess; else nothing.
/// </summary>
internal sealed class PartEffects
{
    /// <summary>Log-sd of what parts never driven together add, against the sum of what each adds (common practice, no source): they may share air and surface, or help each other.</summary>
    private const double TogetherLogSd = 0.35;

    private const int CurveMotors = 64, CurvePoints = 80;
    private const double CurveLow = -0.6, CurveHigh = 8;

    private readonly SpendSheet _sheet;
    private readonly IReadOnlyList<MotorDraw> _motors;
    private readonly FairConditions _fair;
    private readonly int _base;
    private readonly double[] _together, _curveAdded, _curveK;
    private readonly double[]?[] _alone;
    private readonly (ulong Parts, double[] Added)[] _driven, _predicted;

    /// <summary>Effects of the parts of a sheet.</summary>
    /// <param name="sheet">What is asked.</param>
    /// <param name="motors">Motors, one a draw.</param>
    /// <param name="options">The motors' options by name.</param>
    /// <param name="fair">Conditions.</param>
    /// <param name="predicted">What each of the sheet's predicted mounts adds, a draw a motor at least.</param>
    /// <param name="seed">Seed.</param>
    public PartEffects(SpendSheet sheet, IReadOnlyList<MotorDraw> motors, IReadOnlyList<string> options, FairConditions fair, IReadOnlyList<double[]> predicted, long seed)
    {
        (_sheet, _motors, _fair) = (sheet, motors, fair);
        _base = Math.Max(0, Place(options, sheet.Base));
        RandomStream chance = new(seed, 7);
        _together = [.. motors.Select(_ => Math.Exp(TogetherLogSd * chance.NextNormal()))];
        (_curveAdded, _curveK) = Curve();
        _driven = [.. sheet.Driven.Select(d => (Bits(sheet, d.Parts), Added(Place(options, d.Option))))];
        _predicted = [.. sheet.Predicted.Select((p, i) => (Bits(sheet, p.Parts), predicted[i][..motors.Count]))];
        _alone = [.. sheet.Parts.Select((p, i) => Alone(1UL << i) ?? Predicted(1UL << i) ?? (p.CoolsK is { } guess ? Guessed(guess, chance) : null))];
    }

    /// <summary>Combinations of two parts or more that were driven or predicted: parts and mean share added.</summary>
    public IReadOnlyList<(ulong Parts, double Worth)> Known => [.. _driven.Concat(_predicted).Where(d => System.Numerics.BitOperations.PopCount(d.Parts) > 1).Select(d => (d.Parts, d.Added.Average()))];

    /// <summary>Mean share that a part adds alone; 0 where nothing is known of it.</summary>
    public double Worth(int part) => _alone[part]?.Average() ?? 0;

    /// <summary>Whether anything is known of a part by itself.</summary>
    public bool IsKnown(int part) => _alone[part] is not null;

    /// <summary>How a choice is known.</summary>
    public SpendBasis Basis(ulong parts, ulong core)
    {
        if (parts == 0 || _driven.Any(d => d.Parts == parts)) return SpendBasis.Driven;
        ulong[] single = [.. Of(parts & ~core).Select(i => 1UL << i).Where(bit => Alone(bit) is null)];
        if (single.Any(bit => Predicted(bit) is null && _sheet.Parts[System.Numerics.BitOperations.TrailingZeroCount(bit)].CoolsK is not null)) return SpendBasis.Guessed;
        return Predicted(core) is not null || single.Any(bit => Predicted(bit) is not null) ? SpendBasis.Predicted : SpendBasis.AddedUp;
    }

    /// <summary>How much cooler can and winding are with a choice than with the base: per draw, K.</summary>
    /// <param name="parts">The choice.</param>
    /// <param name="core">The combination in it that counts as a whole; 0: none.</param>
    public (double[] CanK, double[] WindingK) Cooler(ulong parts, ulong core)
    {
        double[] can = new double[_motors.Count], winding = new double[_motors.Count];
        double[]? whole = core == 0 ? null : _driven.Concat(_predicted).First(d => d.Parts == core).Added;
        double[][] rest = [.. Of(parts & ~core).Select(i => _alone[i]).OfType<double[]>()];
        bool apart = rest.Length + (whole is null ? 0 : 1) > 1;
        for (int k = 0; k < can.Length; k++)
        {
            double added = (whole?[k] ?? 0) + rest.Sum(r => r[k]) * (apart ? _together[k] : 1), g = _motors[k].ConductancePerS[_base];
            (double plainCan, double plainWinding) = FairPeak.Of(_motors[k], g, _fair);
            (double withCan, double withWinding) = FairPeak.Of(_motors[k], g * Math.Max(1 + added, 0.05), _fair);
            (can[k], winding[k]) = (plainCan - withCan, plainWinding - withWinding);
        }
        return (can, winding);
    }

    /// <summary>How much cooler the can is, K, in the middle, where so large a share is added.</summary>
    public double MiddleK(double added) => Interpolated(_curveAdded, _curveK, added);

    /// <summary>Parts by name as bits.</summary>
    public static ulong Bits(SpendSheet sheet, IEnumerable<string> names) =>
        names.Aggregate(0UL, (bits, name) => bits | 1UL << Place([.. sheet.Parts.Select(p => p.Part.Name)], name));

    /// <summary>Numbers of the parts in a set.</summary>
    public static IEnumerable<int> Of(ulong parts)
    {
        for (ulong rest = parts; rest != 0; rest &= rest - 1) yield return System.Numerics.BitOperations.TrailingZeroCount(rest);
    }

    private double[] Added(int option) => [.. _motors.Select(m => m.ConductancePerS[option] / m.ConductancePerS[_base] - 1)];

    private double[]? Alone(ulong part)
    {
        if (_driven.FirstOrDefault(d => d.Parts == part) is { Added: { } alone }) return alone;
        foreach ((ulong parts, double[] added) in _driven.Where(d => (d.Parts & part) != 0).OrderBy(d => System.Numerics.BitOperations.PopCount(d.Parts)))
            if (_driven.FirstOrDefault(d => d.Parts == (parts & ~part)) is { Added: { } without })
                return [.. added.Zip(without, (a, b) => a - b)];
        return null;
    }

    private double[]? Predicted(ulong parts) => _predicted.FirstOrDefault(p => p.Parts == parts) is { Added: { } added } ? added : null;

    private double[] Guessed(Guess guess, RandomStream chance) => [.. _motors.Select(_ =>
    {
        double z = chance.NextNormal(), k = guess.Middle + z / 1.645 * (z < 0 ? guess.Middle - guess.Low : guess.High - guess.Middle);
        return Interpolated(_curveK, _curveAdded, k);
    })];

    // Mean fall of the can against the share added: rises throughout, so it can be read both ways.
    private (double[] Added, double[] K) Curve()
    {
        int every = Math.Max(1, _motors.Count / CurveMotors);
        MotorDraw[] some = [.. _motors.Where((_, i) => i % every == 0)];
        double[] added = [.. Enumerable.Range(0, CurvePoints).Select(i => Math.Pow((1 + CurveHigh) / (1 + CurveLow), i / (CurvePoints - 1.0)) * (1 + CurveLow) - 1)];
        double Can(MotorDraw m, double share) => FairPeak.Of(m, m.ConductancePerS[_base] * (1 + share), _fair).CanC;
        return (added, [.. added.Select(share => some.Average(m => Can(m, 0) - Can(m, share)))]);
    }

    private static double Interpolated(double[] x, double[] y, double at)
    {
        int right = Math.Clamp(~Array.BinarySearch(x, at) is var place and >= 0 ? place : Array.BinarySearch(x, at), 1, x.Length - 1);
        double share = Math.Clamp((at - x[right - 1]) / (x[right] - x[right - 1]), 0, 1);
        return y[right - 1] + share * (y[right] - y[right - 1]);
    }

    private static int Place(IReadOnlyList<string> names, string name) => names.ToList().FindIndex(n => string.Equals(n, name, StringComparison.OrdinalIgnoreCase));
}
