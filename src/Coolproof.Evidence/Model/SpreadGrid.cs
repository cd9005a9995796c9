using Coolproof.Sampling.Laplace;

namespace Coolproof.Evidence.Model;

/// <summary>A spread as it is believed: mean and sd of its parameter, a standard normal one before any evidence.</summary>
internal readonly record struct SpreadBelief(double Mean, double Sd);

/// <summary>A value of all spreads with its weight, and what the globals are given it.</summary>
internal readonly record struct SpreadNode(double[] U, double Weight, GlobalsMarginal Globals);

/// <summary>
/// The groups' spreads weighed by what the evidence says of them, where the log density of all else is quadratic: a spread then only changes the precision of
/// its members, and what the density integrates to follows exactly. Gauss-Hermite nodes about what is believed of each spread, weighted anew by that.
/// </summary>
internal sealed class SpreadGrid
{
    private static readonly double[] Places = [-Math.Sqrt(3), 0, Math.Sqrt(3)], Weights = [1.0 / 6, 2.0 / 3, 1.0 / 6];
    private const double LeastWeight = 1e-4, LeastSd = 0.3;

    private readonly DeviationGroup[] _groups;
    private readonly double[] _at;
    private readonly ArrowMarginal _marginal;
    private readonly int[] _groupOf;

    /// <summary>A grid over the spreads of some groups.</summary>
    /// <param name="groups">Groups with a free spread and members; members are in sds of their group (non-centred).</param>
    /// <param name="spreads">The parameter of each group's spread for which the density was expanded.</param>
    /// <param name="hessian">Curvature of the density there.</param>
    /// <param name="linear">Its linear term about 0.</param>
    public SpreadGrid(DeviationGroup[] groups, double[] spreads, ArrowHessian hessian, double[] linear)
    {
        (_groups, _at) = (groups, spreads);
        Dictionary<int, int> groupOf = [];
        for (int g = 0; g < groups.Length; g++)
            foreach (int member in groups[g].Members)
                groupOf[member] = g;
        _marginal = new(hessian, linear, groupOf.Keys);
        _groupOf = [.. _marginal.Varied.Select(v => groupOf[v])];
    }

    /// <summary>The nodes with their weights, which add up to 1; those of no weight are left out.</summary>
    /// <param name="beliefs">Where to lay the grid: near what will come out.</param>
    public IReadOnlyList<SpreadNode> Nodes(IReadOnlyList<SpreadBelief> beliefs)
    {
        int count = (int)Math.Pow(Places.Length, _groups.Length);
        List<(double[] U, double Log, GlobalsMarginal Globals)> nodes = [];
        for (int n = 0; n < count; n++)
        {
            double[] u = new double[_groups.Length];
            double log = 0;
            for (int g = 0, left = n; g < u.Length; g++, left /= Places.Length)
            {
                double z = Places[left % Places.Length];
                u[g] = beliefs[g].Mean + beliefs[g].Sd * z;
                log += Math.Log(Weights[left % Places.Length]) + 0.5 * z * z - 0.5 * u[g] * u[g];
            }
            GlobalsMarginal globals = At(u, ref log);
            nodes.Add((u, log, globals));
        }
        double top = nodes.Max(n => n.Log), sum = nodes.Sum(n => Math.Exp(n.Log - top));
        SpreadNode[] weighted = [.. nodes.Select(n => new SpreadNode(n.U, Math.Exp(n.Log - top) / sum, n.Globals)).Where(n => n.Weight > LeastWeight)];
        double kept = weighted.Sum(n => n.Weight);
        return [.. weighted.Select(n => n with { Weight = n.Weight / kept })];
    }

    /// <summary>What nodes say of each spread.</summary>
    public static SpreadBelief[] Beliefs(IReadOnlyList<SpreadNode> nodes) => [.. Enumerable.Range(0, nodes[0].U.Length).Select(g =>
    {
        double mean = nodes.Sum(n => n.Weight * n.U[g]);
        return new SpreadBelief(mean, Math.Max(Math.Sqrt(nodes.Sum(n => n.Weight * (n.U[g] - mean) * (n.U[g] - mean))), LeastSd));
    })];

    /// <summary>A group's spread in units of its scale, floor and all.</summary>
    public static double Whole(DeviationGroup group, double u) => DayDensity.Spread(u, Priors.FloorOf(group.Spread) / group.Scale).X;

    // A member in sds of the group at the expansion is narrower by the ratio of the spreads: N(0, ratio²).
    private GlobalsMarginal At(double[] u, ref double log)
    {
        double[] ratios = [.. u.Select((v, g) => Whole(_groups[g], v) / Whole(_groups[g], _at[g]))];
        for (int g = 0; g < ratios.Length; g++)
            log -= _groups[g].Members.Length * Math.Log(ratios[g]);
        GlobalsMarginal globals = _marginal.With([.. _groupOf.Select(g => 1 / (ratios[g] * ratios[g]))]);
        log += globals.LogIntegral;
        return globals;
    }
}
