namespace Coolproof.Evidence.Tests.Calibration;

/// <summary>Logistic regression of what happened on the log odds stated: slope 1 and intercept 0 where probabilities are what they say.</summary>
internal static class LogisticSlope
{
    private const int MostSteps = 50;

    /// <summary>Slope and intercept at most likelihood, by Newton's method; NaN where the data don't settle them.</summary>
    /// <param name="points">Log odds stated, and whether it happened.</param>
    public static (double Slope, double Intercept) Fit(IReadOnlyList<(double LogOdds, bool Happened)> points)
    {
        double a = 0, b = 1;
        for (int step = 0; step < MostSteps; step++)
        {
            double ga = 0, gb = 0, haa = 0, hab = 0, hbb = 0;
            foreach ((double x, bool happened) in points)
            {
                double p = 1 / (1 + Math.Exp(-(a + b * x))), miss = (happened ? 1 : 0) - p, w = p * (1 - p);
                (ga, gb, haa, hab, hbb) = (ga + miss, gb + miss * x, haa + w, hab + w * x, hbb + w * x * x);
            }
            double determinant = haa * hbb - hab * hab;
            if (!(determinant > 1e-12 * haa * hbb))
                return (double.NaN, double.NaN);
            double da = (hbb * ga - hab * gb) / determinant, db = (haa * gb - hab * ga) / determinant;
            a += da;
            b += db;
            if (Math.Abs(da) + Math.Abs(db) < 1e-9)
                return (b, a);
        }
        return (double.NaN, double.NaN);
    }
}
