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
    /// <summary>Prepares a model.</summary>
    public static DayFit Of(DayModel model)
    {
        SpreadSearch search = SpreadSearch.Run(model);
        DayModel centred = model.Centred([.. model.Groups.Select(g => Weight(g, search.Variance))]);
        double[] position = [.. search.Position];
        foreach (DeviationGroup group in centred.Groups)
        {
            double carry = Math.Exp(group.CentredWeight * Math.Log(HalfNormal.At(position[group.Spread]).X));
            foreach (int member in group.Members)
                position[member] *= carry;
        }
        ArrowHessian hessian = ArrowHessian.At(new DayDensity(centred).Evaluate, centred.Layout, position);
        double[] precision = new double[position.Length];
        Array.Fill(precision, 1.0);
        return new(centred, position, ArrowFactor.Of(hessian, precision, floor: 0.2), search.Gradients + hessian.Gradients);
    }

    /// <summary>The density in whitened parameters, one per chain.</summary>
    public Func<LogDensity> Whitened()
    {
        ArrowWhitening whitening = new(Centre, Factor);
        return () => WhitenedDensity.Over(new DayDensity(Model).Evaluate, whitening.Copy());
    }

    // How much the readings say of a member beside what the group says: 1 − posterior/prior variance, averaged.
    private static double Weight(DeviationGroup group, double[] variance) =>
        group.Members.Count == 0 ? 0 : Math.Clamp(group.Members.Average(m => 1 - Math.Min(variance[m], 1)), 0, 1);
}
