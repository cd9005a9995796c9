using Coolproof.Evidence.Guns;
using Coolproof.Notebook;
using Coolproof.Sampling.Uncertainty;

namespace Coolproof.Advice.Instruments;

/// <summary>One step of a gun's check: quick shots at something of known temperature.</summary>
/// <param name="Against">What was shot.</param>
/// <param name="ShotsC">What the gun showed, °C, one at least.</param>
/// <param name="TrueC">What was true, °C.</param>
public sealed record CheckPair(CheckedAgainst Against, IReadOnlyList<double> ShotsC, double TrueC)
{
    /// <summary>Least standard uncertainty of a mean of shots, K: two or three that show the same number don't make it exact.</summary>
    private const double LeastK = 0.2;

    /// <summary>Mean of the shots, °C.</summary>
    public double ReadC => ShotsC.Average();

    /// <summary>Experimental standard deviation of one shot, K (JCGM 100, 4.2.2); null for fewer than three.</summary>
    public double? RepeatabilityK => ShotsC.Count < 3 ? null : Math.Sqrt(ShotsC.Sum(s => (s - ReadC) * (s - ReadC)) / (ShotsC.Count - 1));

    /// <summary>The mean as an input quantity: by its own scatter from three shots on, else by what one shot scatters as a rule.</summary>
    public Input Read => RepeatabilityK is { } s
        ? new("shown", ReadC, Math.Max(s / Math.Sqrt(ShotsC.Count), LeastK), InputShape.Normal, ShotsC.Count - 1)
        : new("shown", ReadC, CheckTarget.ShotK / Math.Sqrt(ShotsC.Count));

    /// <summary>The true temperature as an input quantity.</summary>
    public Input True => new("true", TrueC, CheckTarget.Of(Against).StandardUncertaintyK);

    /// <summary>The emissivity of what was shot as an input quantity.</summary>
    public Input Emissivity => Input.Between("emissivity", CheckTarget.Of(Against).Surface.Low, CheckTarget.Of(Against).Surface.High);
}
