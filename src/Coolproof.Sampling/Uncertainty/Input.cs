namespace Coolproof.Sampling.Uncertainty;

/// <summary>Shape of what is known of an input quantity (JCGM 101, 6.4).</summary>
public enum InputShape
{
    /// <summary>Normal.</summary>
    Normal,

    /// <summary>Rectangular: half-width √3 standard uncertainties.</summary>
    Rectangular,

    /// <summary>Arcsine (a cycle of unknown phase): half-width √2 standard uncertainties.</summary>
    Arcsine,

    /// <summary>Scaled and shifted t of the input's degrees of freedom; its scale is the standard uncertainty (JCGM 101, 6.4.9).</summary>
    StudentT,
}

/// <summary>An input quantity of a measurement model: estimate and standard uncertainty (JCGM 100).</summary>
/// <param name="Name">Its name.</param>
/// <param name="Estimate">Best estimate.</param>
/// <param name="StandardUncertainty">Standard uncertainty, not negative, in the estimate's unit.</param>
/// <param name="Shape">Shape of its distribution.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom; infinite where the uncertainty is taken as known.</param>
public sealed record Input(
    string Name, double Estimate, double StandardUncertainty, InputShape Shape = InputShape.Normal, double DegreesOfFreedom = double.PositiveInfinity)
{
    /// <summary>A rectangular input by its limits (JCGM 100, 4.3.7).</summary>
    /// <param name="name">Its name.</param>
    /// <param name="low">Lower limit.</param>
    /// <param name="high">Upper limit.</param>
    public static Input Between(string name, double low, double high) => new(name, (low + high) / 2, (high - low) / Math.Sqrt(12), InputShape.Rectangular);

    /// <summary>One draw.</summary>
    internal double Draw(RandomStream chance) => Estimate + StandardUncertainty * (Shape switch
    {
        InputShape.Rectangular => Math.Sqrt(3) * (2 * chance.NextUniform() - 1),
        InputShape.Arcsine => Math.Sqrt(2) * Math.Sin(2 * Math.PI * chance.NextUniform()),
        InputShape.StudentT => chance.NextNormal() / Math.Sqrt(MathNet.Numerics.Distributions.ChiSquared.InvCDF(DegreesOfFreedom, Open(chance)) / DegreesOfFreedom),
        _ => chance.NextNormal(),
    });

    // A uniform that is never 0.
    static double Open(RandomStream chance) => chance.NextUniform() + 1.0 / (1L << 54);
}

/// <summary>A measurement model: outputs from inputs.</summary>
/// <param name="inputs">Values of the inputs, in their order.</param>
/// <param name="outputs">Receives the outputs.</param>
public delegate void MeasurementModel(ReadOnlySpan<double> inputs, Span<double> outputs);
