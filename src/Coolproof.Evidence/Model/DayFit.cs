using Coolproof.Sampling;
using Coolproof.Sampling.Laplace;

namespace Coolproof.Evidence.Model;

/// <summary>A model ready to be sampled: centred as its information asks, and whitened by its curvature at a typical point.</summary>
/// <param name="Model">The model with its centring weights.</param>
/// <param name="Centre">The typical point: spreads at their most probable values, the rest at its mode given them.</param>
/// <param name="Factor">Curvature there.</param>
/// <param name="Gradients">Gradients that the preparation took.</param>
internal sealed record DayFit(DayModel Model, double[] Centre, ArrowFactor Factor, int Gradients)
{
    private const double CurvatureFloor = 0.2;

    /// <summary>Prepares a model: spreads at their most probable values, the rest at its mode given them.</summary>
    public static DayFit Of(DayModel model)
    {
        SpreadSearch search = SpreadSearch.Run(model);
        DayDensity plain = new(model);
        plain.Visit(search.Position);
        DayModel levelled = model.Levelled(RunLevel.Of(plain));
        DayFit first = At(levelled, Coordinates.Carry(plain, search.Position, new DayDensity(levelled)), search.Gradients, out double[] curvature);
        DayDensity plainLevelled = new(levelled);
        plainLevelled.Visit(first.Centre);
        double[] variance = first.Factor.MarginalVariances();
        DayModel fitted = levelled.Informed(m => Evidence(plainLevelled.Deviation(first.Centre, m), first.Centre[m], Precise(levelled, m) ? 1 / variance[m] : curvature[m]));
        return At(fitted, Coordinates.Carry(plainLevelled, first.Centre, new DayDensity(fitted)), first.Gradients, out _);
    }

    /// <summary>The density in whitened parameters, one per chain.</summary>
    public Func<LogDensity> Whitened()
    {
        ArrowWhitening whitening = new(Centre, Factor);
        return () => WhitenedDensity.Over(new DayDensity(Model).Evaluate, whitening.Copy());
    }

    private static DayFit At(DayModel model, double[] centre, int gradients, out double[] curvature)
    {
        ArrowHessian hessian = ArrowHessian.At(new DayDensity(model).Evaluate, model.Layout, centre);
        hessian.CopyDiagonal(curvature = new double[centre.Length]);
        double[] precision = new double[centre.Length];
        Array.Fill(precision, 1.0);
        return new(model, centre, ArrowFactor.Of(hessian, precision, CurvatureFloor), gradients + hessian.Gradients);
    }

    // Options are seen through everything else, mountings given it: a mounting stands beside its run's heat, which has its own coordinate already.
    private static bool Precise(DayModel model, int member) => model.Groups.First(g => g.Spread == Global.OptionSpread).Members.Contains(member);

    // From a deviation at the typical point and its whole precision there in units of the group's: what the evidence alone says.
    private static MemberEvidence Evidence(double deviation, double coordinate, double precision)
    {
        double spread = coordinate == 0 ? 0 : deviation / coordinate, information = Math.Max(precision - 1, 0.01);
        return spread == 0 ? new(0, 0) : new(information / (spread * spread), deviation * (1 + information) / information);
    }
}
