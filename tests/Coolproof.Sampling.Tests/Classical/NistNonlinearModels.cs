using static Coolproof.Sampling.Tests.Classical.Dual;

namespace Coolproof.Sampling.Tests.Classical;

delegate Dual Model(Dual[] b, double[] x);

/// <summary>The models of the 27 NIST nonlinear sets, as the files state them.</summary>
static class NistNonlinearModels
{
    public static readonly IReadOnlyDictionary<string, Model> ByName = new Dictionary<string, Model>
    {
        ["Bennett5"] = (b, x) => b[0] * Pow(b[1] + x[0], -1 / b[2]),
        ["BoxBOD"] = Rise,
        ["Chwirut1"] = (b, x) => Exp(-b[0] * x[0]) / (b[1] + b[2] * x[0]),
        ["Chwirut2"] = (b, x) => Exp(-b[0] * x[0]) / (b[1] + b[2] * x[0]),
        ["DanWood"] = (b, x) => b[0] * Pow(x[0], b[1]),
        ["ENSO"] = (b, x) => b[0] + Wave(b[1], b[2], 12, x[0]) + Wave(b[4], b[5], b[3], x[0]) + Wave(b[7], b[8], b[6], x[0]),
        ["Eckerle4"] = (b, x) => b[0] / b[1] * Exp(-0.5 * Square((x[0] - b[2]) / b[1])),
        ["Gauss1"] = TwoPeaks,
        ["Gauss2"] = TwoPeaks,
        ["Gauss3"] = TwoPeaks,
        ["Hahn1"] = Cubics,
        ["Kirby2"] = (b, x) => (b[0] + x[0] * (b[1] + x[0] * b[2])) / (1 + x[0] * (b[3] + x[0] * b[4])),
        ["Lanczos1"] = ThreeDecays,
        ["Lanczos2"] = ThreeDecays,
        ["Lanczos3"] = ThreeDecays,
        ["MGH09"] = (b, x) => b[0] * (x[0] * x[0] + x[0] * b[1]) / (x[0] * x[0] + x[0] * b[2] + b[3]),
        ["MGH10"] = (b, x) => b[0] * Exp(b[1] / (x[0] + b[2])),
        ["MGH17"] = (b, x) => b[0] + b[1] * Exp(-x[0] * b[3]) + b[2] * Exp(-x[0] * b[4]),
        ["Misra1a"] = Rise,
        ["Misra1b"] = (b, x) => b[0] * (1 - 1 / Square(1 + b[1] * x[0] / 2)),
        ["Misra1c"] = (b, x) => b[0] * (1 - Pow(1 + 2 * b[1] * x[0], -0.5)),
        ["Misra1d"] = (b, x) => b[0] * b[1] * x[0] / (1 + b[1] * x[0]),
        ["Nelson"] = (b, x) => b[0] - b[1] * x[0] * Exp(-b[2] * x[1]),
        ["Rat42"] = (b, x) => b[0] / (1 + Exp(b[1] - b[2] * x[0])),
        ["Rat43"] = (b, x) => b[0] / Pow(1 + Exp(b[1] - b[2] * x[0]), 1 / b[3]),
        ["Roszman1"] = (b, x) => b[0] - b[1] * x[0] - Atan(b[2] / (x[0] - b[3])) / Math.PI,
        ["Thurber"] = Cubics,
    };

    static Dual Square(Dual a) => a * a;

    static Dual Rise(Dual[] b, double[] x) => b[0] * (1 - Exp(-b[1] * x[0]));

    static Dual ThreeDecays(Dual[] b, double[] x) =>
        b[0] * Exp(-b[1] * x[0]) + b[2] * Exp(-b[3] * x[0]) + b[4] * Exp(-b[5] * x[0]);

    static Dual TwoPeaks(Dual[] b, double[] x) => b[0] * Exp(-b[1] * x[0])
        + b[2] * Exp(-Square((x[0] - b[3]) / b[4])) + b[5] * Exp(-Square((x[0] - b[6]) / b[7]));

    static Dual Cubics(Dual[] b, double[] x) => (b[0] + x[0] * (b[1] + x[0] * (b[2] + x[0] * b[3])))
        / (1 + x[0] * (b[4] + x[0] * (b[5] + x[0] * b[6])));

    static Dual Wave(Dual cosine, Dual sine, Dual period, double x)
    {
        var angle = 2 * Math.PI * x / period;
        return cosine * Cos(angle) + sine * Sin(angle);
    }
}
