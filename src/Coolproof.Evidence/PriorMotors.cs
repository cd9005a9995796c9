using Coolproof.Evidence.Model;
using Coolproof.Sampling;

namespace Coolproof.Evidence;

/// <summary>Motors as they are believed to be before any reading: for cool-downs and plans without a table.</summary>
public static class PriorMotors
{
    /// <summary>Draws with one option each, from the priors of the joint model (docs/model.md).</summary>
    /// <param name="count">Number of draws.</param>
    /// <param name="seed">Seed.</param>
    public static IReadOnlyList<MotorDraw> Draws(int count, long seed)
    {
        RandomStream chance = new(seed);
        double About(NormalPrior prior) => Math.Exp(prior.Mean + prior.Sd * chance.NextNormal());
        return [.. Enumerable.Range(0, count).Select(_ => new MotorDraw(
            About(Priors.CoreOverCan), About(Priors.CoreToCan), About(Priors.WindingShare), About(Priors.Slot), 0.5, About(Priors.Heat), About(Priors.StoppedFanOn),
            [About(Priors.Conductance)]))];
    }
}
