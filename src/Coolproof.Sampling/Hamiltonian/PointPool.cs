namespace Coolproof.Sampling.Hamiltonian;

/// <summary>Phase points and momentum sums to be used again, so that a warm sampler allocates nothing. Last in, first out: what is hot stays hot.</summary>
sealed class PointPool(int dimension)
{
    readonly Stack<PhasePoint> points = new();
    readonly Stack<double[]> sums = new();

    public PhasePoint TakePoint(int holders)
    {
        PhasePoint point = points.TryPop(out PhasePoint? used) ? used : new PhasePoint(dimension);
        point.Holders = holders;
        return point;
    }

    public void Release(PhasePoint point)
    {
        if (--point.Holders == 0)
            points.Push(point);
    }

    public double[] TakeSum() => sums.TryPop(out double[]? used) ? used : new double[dimension];

    public void ReleaseSum(double[] sum) => sums.Push(sum);
}
