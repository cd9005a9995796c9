using Coolproof.Evidence.Guns;
using Coolproof.Sampling;
using Coolproof.Sampling.Uncertainty;
using Coolproof.Thermal;

namespace Coolproof.Advice.Instruments;

/// <summary>What was shot and how.</summary>
/// <param name="ReadC">Number on the display, °C.</param>
/// <param name="Setting">The gun's emissivity setting.</param>
/// <param name="EmissivityLow">Lowest emissivity of the surface.</param>
/// <param name="EmissivityHigh">Highest; the same as the lowest where it is known.</param>
/// <param name="SurroundingsC">What the surface mirrors, °C.</param>
/// <param name="ShareOff">Share of the spot that lies off the surface, 0 to 1.</param>
public sealed record Shot(double ReadC, double Setting, double EmissivityLow, double EmissivityHigh, double SurroundingsC, double ShareOff = 0);

/// <summary>
/// A shot put right for emissivity, surroundings and a spot partly off: by band radiance, with its doubt. On shiny metal the doubt is far from normal, so the interval is by
/// a Monte Carlo method (JCGM 101); the law of propagation stands beside it.
/// </summary>
public sealed class ShotCorrection
{
    /// <summary>Doubt of what a surface mirrors, K. Common practice, no source: pit roof, sky and table differ by several degrees.</summary>
    public const double SurroundingsK = 2;

    private const int Trials = 40_000;
    private const double LeastEmissivity = 0.01, MostOff = 0.95, CoolestC = -60, HottestC = 1500;

    private ShotCorrection(Shot shot, double surfaceC, LawOfPropagation byLaw, MonteCarlo byChance) => (Shot, SurfaceC, ByLaw, ByChance) = (shot, surfaceC, byLaw, byChance);

    /// <summary>The shot.</summary>
    public Shot Shot { get; }

    /// <summary>Temperature of the surface at the middle of everything, °C; NaN where no temperature would give the number.</summary>
    public double SurfaceC { get; }

    /// <summary>By JCGM 100.</summary>
    public LawOfPropagation ByLaw { get; }

    /// <summary>By JCGM 101.</summary>
    public MonteCarlo ByChance { get; }

    /// <summary>The surface's temperature, 9 times in 10, °C.</summary>
    public (double Low, double High) Range => ByChance.Symmetric(0.9);

    /// <summary>Works it out.</summary>
    /// <param name="shot">The shot.</param>
    /// <param name="seed">Seed.</param>
    /// <returns>Null where no temperature of the surface would give the number.</returns>
    public static ShotCorrection? Of(Shot shot, long seed = 1)
    {
        Input[] inputs =
        [
            new("shown", shot.ReadC, CheckTarget.ShotK),
            shot.EmissivityHigh > shot.EmissivityLow ? Input.Between("emissivity", shot.EmissivityLow, shot.EmissivityHigh) : new("emissivity", shot.EmissivityLow, 0),
            new("surroundings", shot.SurroundingsC, SurroundingsK),
        ];
        double[] middle = [.. inputs.Select(i => i.Estimate)];
        double at = Surface(middle);
        if (double.IsNaN(at)) return null;
        void Model(ReadOnlySpan<double> x, Span<double> y) => y[0] = Surface(x) is var c && double.IsNaN(c) ? CoolestC : Math.Clamp(c, CoolestC, HottestC);
        return new(shot, at, LawOfPropagation.Of(inputs, 1, Model), MonteCarlo.Of(inputs, 1, Model, Trials, new RandomStream(seed)));

        // What lies off is as warm as the surroundings: its part of the radiance is taken off as a reflection is.
        double Surface(ReadOnlySpan<double> x)
        {
            double seen = Math.Clamp(x[1], LeastEmissivity, 1) * (1 - Math.Min(shot.ShareOff, MostOff));
            return Gun.Usual.SurfaceC(x[0], shot.Setting, seen, x[2]);
        }
    }
}
