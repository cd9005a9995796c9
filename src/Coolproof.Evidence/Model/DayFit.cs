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
        double[] variance = first.Factor.MarginalVariances();
        DayModel fitted = levelled.Centred([.. levelled.Groups.Select(g => Weight(g, variance, curvature))]).Informed(Information(levelled, first.Centre, curvature));
        return At(fitted, Coordinates.Carry(new DayDensity(levelled), first.Centre, new DayDensity(fitted)), first.Gradients, out _);
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

    // What the evidence says of a mounting given all else, averaged: curvature beyond the prior's, in units of the deviation.
    private static double Information(DayModel model, double[] centre, double[] curvature)
    {
        DeviationGroup mountings = model.Groups.First(g => g.Spread == Global.MountingSpread);
        double spread = mountings.Scale * HalfNormal.At(centre[mountings.Spread]).X;
        return Math.Max(mountings.Members.Average(m => curvature[m] - 1), 0.01) / (spread * spread);
    }

    // How much the evidence says of a member beside what the group says, 1 − posterior/prior variance: halfway between on its own and given all else.
    private static double Weight(DeviationGroup group, double[] variance, double[] curvature)
    {
        if (group.Members.Count == 0)
            return 0;
        double alone = group.Members.Average(m => 1 - Math.Min(variance[m], 1)), givenRest = group.Members.Average(m => 1 - 1 / Math.Max(curvature[m], 1));
        return Math.Clamp(0.5 * (alone + givenRest), 0, 1);
    }
}
