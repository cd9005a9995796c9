using Coolproof.Evidence.Model;
using Coolproof.Sampling;

namespace Coolproof.Evidence.Tests.Calibration;

/// <summary>Draws from the prior of the working model, written apart from the density that it is to check.</summary>
internal static class PriorDraw
{
    /// <summary>All parameters of a model as it comes from the builder: no levels, plain deviations.</summary>
    public static double[] Of(DayModel model, RandomStream chance)
    {
        double[] u = new double[model.Dimension];
        for (int i = 0; i < u.Length; i++)
        {
            Parameter p = model.Parameters[i];
            u[i] = p.Prior switch
            {
                PriorKind.Unit or PriorKind.HalfNormal or PriorKind.Member => chance.NextNormal(),
                PriorKind.LogGamma => Math.Log(Gamma(p.A, chance) * p.B / p.A),
                PriorKind.LogitBeta => Math.Log(Gamma(p.A, chance) / Gamma(p.A, chance)),
                _ => throw new ArgumentException($"{p.Name} has a prior of kind {p.Prior}, which is not drawn here.", nameof(model)),
            };
        }
        // Mean heat is written about the mean of the days driven: log heat = mean + sd u − deviation of those days.
        DayDensity density = new(model);
        density.VisitMotor(u);
        u[Global.Heat] += density.DayMean / Priors.Heat.Sd;
        return u;
    }

    /// <summary>What a gun would read: what it sees, less an exponential aim loss, plus scatter that is wide now and then.</summary>
    public static double Reading(in ReadingState seen, double scatterK, RandomStream chance)
    {
        double loss = -seen.Loss * Math.Log(1 - chance.NextUniform()), wide = chance.NextUniform() < Priors.WideWeight ? Priors.WideFactor : 1;
        return seen.Mean - loss + wide * scatterK * chance.NextNormal();
    }

    // Marsaglia and Tsang 2000; shape above 1, scale 1.
    private static double Gamma(double shape, RandomStream chance)
    {
        double d = shape - 1.0 / 3, c = 1 / Math.Sqrt(9 * d);
        while (true)
        {
            double x = chance.NextNormal(), v = Math.Pow(1 + c * x, 3);
            if (v > 0 && Math.Log(1 - chance.NextUniform()) < 0.5 * x * x + d - d * v + d * Math.Log(v))
                return d * v;
        }
    }
}
