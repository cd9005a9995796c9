namespace Coolproof.Sampling.Hamiltonian;

/// <summary>A stretch of trajectory in the order it was integrated: its ends, the point it proposes, and what joining needs.</summary>
struct Branch
{
    public PhasePoint First;
    public PhasePoint Last;
    public PhasePoint Proposal;

    /// <summary>Sum of the momenta; for a single point its own momentum array.</summary>
    public double[] MomentumSum;

    /// <summary>Log of the summed weights exp(E₀ − E).</summary>
    public double LogWeight;

    /// <summary>A branch of one point, which must be held three times.</summary>
    public static Branch Leaf(PhasePoint point, double logWeight) =>
        new() { First = point, Last = point, Proposal = point, MomentumSum = point.Momentum, LogWeight = logWeight };

    public readonly bool IsLeaf => ReferenceEquals(First, Last);

    public readonly void Release(PointPool pool)
    {
        if (!IsLeaf)
            pool.ReleaseSum(MomentumSum);
        pool.Release(First);
        pool.Release(Last);
        pool.Release(Proposal);
    }

    /// <summary>
    /// Appends <paramref name="next"/>, which then must not be used again. Returns false when the joined stretch has turned.
    /// The proposal is not touched: the caller chose it before.
    /// </summary>
    public bool Append(in Branch next, PointPool pool)
    {
        bool onward;
        if (IsLeaf && next.IsLeaf)
        {
            MomentumSum = pool.TakeSum();
            onward = Kernels.JoinPoints(First.Momentum, next.First.Momentum, MomentumSum);
        }
        else
        {
            onward = Kernels.Join(MomentumSum, next.MomentumSum, First.Momentum, Last.Momentum, next.First.Momentum, next.Last.Momentum, MomentumSum);
            pool.ReleaseSum(next.MomentumSum);
        }

        pool.Release(Last);
        pool.Release(next.First);
        Last = next.Last;
        return onward;
    }

    /// <summary>Lets <paramref name="next"/> take over the proposal, or drops its proposal; either way it no longer holds one.</summary>
    public void Choose(bool takeNext, in Branch next, PointPool pool)
    {
        if (takeNext)
        {
            pool.Release(Proposal);
            Proposal = next.Proposal;
        }
        else
        {
            pool.Release(next.Proposal);
        }
    }

    /// <summary>The same stretch seen from its other end.</summary>
    public readonly Branch Reversed() => this with { First = Last, Last = First };
}
