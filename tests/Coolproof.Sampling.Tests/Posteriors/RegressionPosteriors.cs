namespace Coolproof.Sampling.Tests.Posteriors;

/// <summary>The linear models of posteriordb.</summary>
static class RegressionPosteriors
{
    const double Flat = double.PositiveInfinity;

    public static Posterior KidScore(string model)
    {
        DataFile data = new("kidiq");
        double[] hs = data.Column("mom_hs"), iq = data.Column("mom_iq");
        double[][] columns = model switch
        {
            "momiq" => [Ones(hs), iq],
            "momhsiq" => [Ones(hs), hs, iq],
            _ => [Ones(hs), hs, iq, Product(hs, iq)],
        };
        return LinearRegression.Of(columns, data.Column("kid_score"), Betas(columns), 2.5, whitened: model != "momiq");
    }

    public static Posterior KidScoreStandardised()
    {
        DataFile data = new("kidiq_with_mom_work");
        double[] hs = Standardised(data.Column("mom_hs")), iq = Standardised(data.Column("mom_iq"));
        double[][] columns = [Ones(hs), hs, iq, Product(hs, iq)];
        return LinearRegression.Of(columns, data.Column("kid_score"), Betas(columns), Flat, whitened: false);
    }

    public static Posterior Earnings(string model)
    {
        DataFile data = new("earnings");
        double[] height = data.Column("height"), male = data.Column("male"), earn = data.Column("earn");
        double[][] columns = model == "logearn_interaction" ? [Ones(male), height, male, Product(height, male)] : [Ones(male), height];
        return LinearRegression.Of(columns, model == "earn_height" ? earn : Log(earn), Betas(columns), Flat);
    }

    public static Posterior Mesquite(bool logarithmic)
    {
        DataFile data = new("mesquite");
        double[] d1 = data.Column("diam1"), d2 = data.Column("diam2"), canopy = data.Column("canopy_height"), total = data.Column("total_height");
        double[] density = data.Column("density"), group = data.Column("group"), weight = data.Column("weight"), area = Product(d1, d2);
        double[][] columns = logarithmic
            ? [Ones(d1), Log(Product(area, canopy)), Log(area), Log([.. d1.Zip(d2, (a, b) => a / b)]), Log(total), Log(density), group]
            : [Ones(d1), d1, d2, canopy, total, density, group];
        return LinearRegression.Of(columns, logarithmic ? Log(weight) : weight, Betas(columns), Flat, whitened: !logarithmic);
    }

    public static Posterior Kilpisjarvi()
    {
        DataFile data = new("kilpisjarvi_mod");
        double[] x = data.Column("x");
        (double, double)[] prior = [(data.Number("pmualpha"), data.Number("psalpha")), (data.Number("pmubeta"), data.Number("psbeta"))];
        return LinearRegression.Of([Ones(x), x], data.Column("y"), ["alpha", "beta"], Flat, prior);
    }

    static string[] Betas(double[][] columns) => [.. columns.Select((_, i) => $"beta[{i + 1}]")];

    static double[] Ones(double[] like) => [.. like.Select(_ => 1.0)];

    static double[] Log(double[] values) => Array.ConvertAll(values, Math.Log);

    static double[] Product(double[] a, double[] b) => [.. a.Zip(b, (x, y) => x * y)];

    static double[] Standardised(double[] values)
    {
        double mean = values.Average(), sd = Math.Sqrt(values.Sum(v => (v - mean) * (v - mean)) / (values.Length - 1));
        return [.. values.Select(v => (v - mean) / (2 * sd))];
    }
}
