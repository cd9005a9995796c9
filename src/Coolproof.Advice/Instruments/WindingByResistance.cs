using Coolproof.Sampling;
using Coolproof.Sampling.Uncertainty;
using Coolproof.Thermal;

namespace Coolproof.Advice.Instruments;

/// <summary>How a winding's resistance is measured.</summary>
/// <param name="Step">Step of the meter's display, mΩ.</param>
/// <param name="Relative">Relative standard uncertainty of one value, apart from what cold and hot share.</param>
public sealed record ResistanceMeter(double Step = 0.1, double Relative = 0.001)
{
    /// <summary>Coarsest step that tells anything of a racing motor, mΩ.</summary>
    public const double CoarsestStep = 0.1;

    /// <summary>Standard uncertainty of a value, mΩ: a step's rounding (JCGM 100, F.2.2.1), contact and noise.</summary>
    public double StandardUncertainty(double milliohm) => Math.Sqrt(Step * Step / 12 + Relative * milliohm * (Relative * milliohm));

    /// <summary>Why a motor or a meter can't be read this way, and what to do; null where it can.</summary>
    /// <param name="brushed">Whether the motor has brushes.</param>
    /// <param name="fourWire">Whether the meter has four wires.</param>
    public string? Refusal(bool brushed, bool fourWire) =>
        brushed ? "A brushed motor can't be read by resistance: brushes and commutator add more than the warm copper does, and change with the rotor's place. Read its can by gun or probe."
        : !fourWire ? "A two-wire meter can't read a motor: its leads and clips have more ohms than the winding (some 100 mΩ against 10 to 60). Use a four-wire (Kelvin) meter of 0.1 mΩ or finer."
        : Step > CoarsestStep ? $"A step of {Step:0.###} mΩ is too coarse: on 30 mΩ one step of 0.1 mΩ is nearly 1 K already. Use a meter of 0.1 mΩ or finer."
        : null;
}

/// <summary>A hot resistance after the halt.</summary>
/// <param name="Milliohm">Resistance, mΩ.</param>
/// <param name="AtS">Seconds from power off; null: not noted.</param>
public sealed record HotResistance(double Milliohm, double? AtS);

/// <summary>
/// Mean temperature of a winding by its resistance (IEC 60034-1, 8.6.2; from memory): T2 = (R2/R1)(k + T1) − k, with uncertainty by JCGM 100 and JCGM 101.
/// Cold and hot values by the same meter on the same tabs share its scale, which leaves the ratio.
/// </summary>
public sealed class WindingByResistance
{
    private const int Trials = 100_000;

    /// <summary>k of copper between IEC practice (235) and North American practice (234.5).</summary>
    private const double LowK = 234.5, HighK = Winding.CopperK;

    private WindingByResistance(HotResistance hot, IReadOnlyList<Input> inputs, LawOfPropagation byLaw, MonteCarlo byChance) => (Hot, Inputs, ByLaw, ByChance) = (hot, inputs, byLaw, byChance);

    /// <summary>The hot value.</summary>
    public HotResistance Hot { get; }

    /// <summary>Hot and cold resistance, temperature when cold, k.</summary>
    public IReadOnlyList<Input> Inputs { get; }

    /// <summary>Temperature, °C, by JCGM 100.</summary>
    public LawOfPropagation ByLaw { get; }

    /// <summary>The same by JCGM 101.</summary>
    public MonteCarlo ByChance { get; }

    /// <summary>Temperature, °C.</summary>
    public double C => ByLaw.Values[0];

    /// <summary>Its standard uncertainty, K.</summary>
    public double StandardUncertaintyK => ByLaw.StandardUncertainty();

    /// <summary>The part of it that the hot value alone brings, K: what doesn't move all readings together.</summary>
    public double OwnK => ByLaw.Component(0, 0, Inputs);

    /// <summary>Works one out.</summary>
    /// <param name="hot">Hot value.</param>
    /// <param name="coldMilliohm">Cold value of the same tabs, mΩ.</param>
    /// <param name="coldC">Temperature of the winding when cold, °C.</param>
    /// <param name="coldK">Its standard uncertainty, K: a motor that lay an hour beside the thermometer, about 0.5.</param>
    /// <param name="meter">The meter.</param>
    /// <param name="seed">Seed.</param>
    public static WindingByResistance Of(HotResistance hot, double coldMilliohm, double coldC, double coldK, ResistanceMeter meter, long seed = 1)
    {
        Input[] inputs =
        [
            new("hot", hot.Milliohm, meter.StandardUncertainty(hot.Milliohm)), new("cold", coldMilliohm, meter.StandardUncertainty(coldMilliohm)), new("cold temperature", coldC, coldK),
            Input.Between("k", LowK, 2 * HighK - LowK),
        ];
        static void Model(ReadOnlySpan<double> x, Span<double> y) => y[0] = Winding.TemperatureC(x[0], x[1], x[2], x[3]);
        return new(hot, inputs, LawOfPropagation.Of(inputs, 1, Model), MonteCarlo.Of(inputs, 1, Model, Trials, new RandomStream(seed)));
    }
}
