namespace Coolproof.Sampling.Hamiltonian;

/// <summary>
/// One No-U-Turn transition after another: multinomial weights, uniform choice within a subtree, biased towards the newer half between
/// subtrees, the generalised U-turn criterion with checks across the seam (Hoffman and Gelman 2014; Betancourt 2017, appendix A).
/// </summary>
/// <remarks>
/// A subtree is built leaf by leaf; finished pieces wait on a stack and are joined like the carries of a binary counter, so memory grows with
/// the depth only and nothing is copied.
/// </remarks>
sealed class Trajectory(int dimension, NutsSettings settings)
{
    readonly PointPool pool = new(dimension);
    readonly Branch[] stack = new Branch[settings.MaxTreeDepth + 1];
    double acceptanceSum;
    int steps;
    bool diverged;

    /// <summary>A point of this trajectory's pool, held once, for the chain's current place.</summary>
    public PhasePoint NewPoint() => pool.TakePoint(1);

    /// <summary>Gives a point back.</summary>
    public void Release(PhasePoint point) => pool.Release(point);

    /// <summary>Moves <paramref name="current"/> on by one transition.</summary>
    public Transition Advance(ref PhasePoint current, Leapfrog integrator, double step, RandomStream random)
    {
        Leapfrog.Refresh(current, random);
        double energy = current.Energy;
        (acceptanceSum, steps, diverged) = (0, 0, false);
        current.Holders += 2;
        Branch whole = Branch.Leaf(current, 0);
        int depth = 0;
        for (bool onward = true; onward && depth < settings.MaxTreeDepth;)
        {
            bool forward = (random.NextBits() >> 63) == 0;
            if (!forward)
                whole = whole.Reversed();
            onward = Grow(depth, whole.Last, forward ? step : -step, energy, integrator, random, out Branch next);
            if (onward)
            {
                depth++;
                whole.Choose(Take(next.LogWeight - whole.LogWeight, random), next, pool);
                whole.LogWeight = LogSum(whole.LogWeight, next.LogWeight);
                onward = whole.Append(next, pool);
            }

            if (!forward)
                whole = whole.Reversed();
        }

        current = whole.Proposal;
        current.Holders++;
        whole.Release(pool);
        return new Transition(acceptanceSum / steps, depth, steps, diverged);
    }

    /// <summary>Builds 2^depth further points; false when they turn or diverge, and then nothing of them is left held.</summary>
    bool Grow(int depth, PhasePoint from, double step, double energy, Leapfrog integrator, RandomStream random, out Branch result)
    {
        int top = -1;
        for (int leaf = 0; leaf < 1 << depth; leaf++)
        {
            PhasePoint point = pool.TakePoint(3);
            integrator.Step(from, point, step);
            from = point;
            stack[++top] = Branch.Leaf(point, energy - point.Energy);
            bool onward = Accept(stack[top].LogWeight);
            for (int carry = leaf; onward && (carry & 1) == 1; carry >>= 1)
            {
                ref Branch left = ref stack[top - 1];
                ref readonly Branch right = ref stack[top];
                double total = LogSum(left.LogWeight, right.LogWeight);
                left.Choose(Take(right.LogWeight - total, random), right, pool);
                left.LogWeight = total;
                onward = left.Append(right, pool);
                top--;
            }

            if (!onward)
            {
                for (; top >= 0; top--)
                    stack[top].Release(pool);
                result = default;
                return false;
            }
        }

        result = stack[0];
        return true;
    }

    bool Accept(double logWeight)
    {
        steps++;
        acceptanceSum += logWeight >= 0 ? 1 : Math.Exp(logWeight);
        if (logWeight >= -settings.MaxEnergyError)
            return true;
        diverged = true;
        return false;
    }

    static bool Take(double logProbability, RandomStream random) => random.NextUniform() < Math.Exp(logProbability);

    static double LogSum(double a, double b)
    {
        double high = Math.Max(a, b), low = Math.Min(a, b);
        return double.IsInfinity(high) ? high : high + Math.Log(1 + Math.Exp(low - high));
    }
}
