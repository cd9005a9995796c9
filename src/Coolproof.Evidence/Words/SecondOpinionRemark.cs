using Coolproof.Notebook;

namespace Coolproof.Evidence.Words;

/// <summary>What the classical model says beside the main answer.</summary>
internal static class SecondOpinionRemark
{
    /// <summary>One sentence.</summary>
    /// <param name="second">Its differences; empty where it tells none.</param>
    /// <param name="can">The main answer's pairs on the can.</param>
    /// <param name="best">The most probable coolest option.</param>
    /// <param name="unit">Unit of its temperatures.</param>
    public static string Of(IReadOnlyList<SecondOpinionPair> second, IReadOnlyList<PairVerdict> can, string best, TemperatureUnitChoice unit = TemperatureUnitChoice.Celsius)
    {
        if (second.Count == 0)
            return "A plain comparison of run averages can't tell the options from what else changed between their runs.";
        (PairVerdict main, SecondOpinionPair its) = second.Select(s => (Main: Facing.Of(can, s.A, s.B, ComparedOn.Can)!, Second: s)).Where(f => f.Main is not null)
            .OrderBy(f => f.Main.A == best || f.Main.B == best ? 0 : 1).ThenBy(f => Math.Abs(f.Main.DifferenceK.Mean)).First();
        double sign = main.DifferenceK.Mean <= 0 ? -1 : 1;
        string Cooler(double kelvins) => $"{Say.Number(Units.FromKelvins(sign * kelvins, unit), 1)} {Say.Degree(unit)}";
        string cooler = sign < 0 ? main.A : main.B, hotter = sign < 0 ? main.B : main.A;
        string doubt = double.IsFinite(its.StandardErrorK) ? "," : ", though these runs can't tell how sure that is;";
        int differ = second.Count(s => !s.Agrees);
        string others = second.Count == 1 ? "" : differ == 0 ? " here and on every other pair" : its.Agrees ? $" here, but differ on {Say.Count(differ, "other pair")}" : "";
        return $"A plain comparison of run averages has {Say.Option(cooler)} {Cooler(its.DifferenceK)} cooler than {Say.Option(hotter)}{doubt} ours says {Cooler(main.DifferenceK.Mean)}: " +
            (its.Agrees ? $"they agree{others}." : "they differ by more than both allow, so look at the corrected readings before trusting either.");
    }
}
