using Coolproof.Evidence.Model;

namespace Coolproof.Evidence;

/// <summary>A motor as one draw of what is believed has it, heat flows over the heat capacity of the core: for cool-downs and plans.</summary>
/// <param name="CoreOverCan">Core capacity over can capacity.</param>
/// <param name="CoreToCanPerS">Core-to-can conductance over core capacity, 1/s.</param>
/// <param name="WindingShare">Winding capacity over core capacity.</param>
/// <param name="SlotS">Slot resistance times core capacity, s.</param>
/// <param name="CopperShare">Copper's share of the heat.</param>
/// <param name="HeatKPerS">Mean heat with the winding at 25 °C over core capacity, K/s.</param>
/// <param name="StoppedFanOn">Watts shed per degree standing with the fan on, over driving.</param>
/// <param name="ConductancePerS">Driving conductance of each option over core capacity, 1/s.</param>
public sealed record MotorDraw(
    double CoreOverCan, double CoreToCanPerS, double WindingShare, double SlotS, double CopperShare, double HeatKPerS, double StoppedFanOn,
    IReadOnlyList<double> ConductancePerS);

/// <summary>What the quick path says of a day: the options at fair conditions in equally weighted draws.</summary>
/// <param name="Fair">Conditions of the comparison.</param>
/// <param name="Options">Options that are judged, in the order of the table.</param>
/// <param name="CanC">Fair can peaks: option × draw, °C.</param>
/// <param name="Motors">The motor in each draw.</param>
/// <param name="Rough">Whether the normal approximation misses the density along the main difference: the answer is then only rough and makes no firm call.</param>
public sealed record QuickVerdict(
    FairConditions Fair, IReadOnlyList<string> Options, IReadOnlyList<double[]> CanC, IReadOnlyList<MotorDraw> Motors, bool Rough)
{
    /// <summary>Where a search over a longer part of the same day begins.</summary>
    internal QuickNear? Near { get; init; }

    /// <summary>Difference of two options' fair can peaks, a − b, K, draw by draw.</summary>
    /// <param name="a">Place of the first in <see cref="Options"/>.</param>
    /// <param name="b">Place of the second.</param>
    public double[] Difference(int a, int b) => [.. CanC[a].Zip(CanC[b], (x, y) => x - y)];

    /// <summary>How probable it is that each option is the coolest.</summary>
    public double[] ProbabilityCoolest()
    {
        double[] coolest = new double[Options.Count];
        int draws = CanC[0].Length;
        for (int i = 0; i < draws; i++)
            coolest[Enumerable.Range(0, Options.Count).MinBy(k => CanC[k][i])] += 1.0 / draws;
        return coolest;
    }

    /// <summary>The most probable coolest option and its closest rival, as places in <see cref="Options"/>; null with a single option.</summary>
    public (int Best, int Rival)? Main()
    {
        if (Options.Count < 2)
            return null;
        double[] coolest = ProbabilityCoolest();
        int best = Array.IndexOf(coolest, coolest.Max());
        int rival = Enumerable.Range(0, Options.Count).Where(k => k != best).MinBy(k => Math.Abs(Difference(best, k).Average()));
        return (best, rival);
    }
}
