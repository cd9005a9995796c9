namespace Coolproof.Sampling.Hamiltonian;

/// <summary>What one chain brought home. Arrays run over the kept draws.</summary>
public sealed class ChainTrace
{
    internal ChainTrace(int draws, int dimension)
    {
        Dimension = dimension;
        Positions = new double[draws * dimension];
        LogDensities = new double[draws];
        Energies = new double[draws];
        Acceptances = new double[draws];
        Depths = new int[draws];
        Diverged = new bool[draws];
    }

    /// <summary>Coordinates of a draw.</summary>
    public int Dimension { get; }

    /// <summary>Kept draws.</summary>
    public int Draws => LogDensities.Length;

    /// <summary>Draws × dimension, draw after draw.</summary>
    public double[] Positions { get; }

    /// <summary>Log density at each draw.</summary>
    public double[] LogDensities { get; }

    /// <summary>Kinetic energy minus log density at the point each draw was taken from its trajectory.</summary>
    public double[] Energies { get; }

    /// <summary>Mean Metropolis acceptance over each trajectory, 0 to 1.</summary>
    public double[] Acceptances { get; }

    /// <summary>Completed doublings of each trajectory.</summary>
    public int[] Depths { get; }

    /// <summary>Which trajectories diverged.</summary>
    public bool[] Diverged { get; }

    /// <summary>Step size used for the draws.</summary>
    public double StepSize { get; internal init; }

    /// <summary>Metric used for the draws.</summary>
    public required InverseMetric Metric { get; init; }

    /// <summary>Gradient evaluations spent on the warm-up.</summary>
    public long WarmUpGradients { get; internal init; }

    /// <summary>Gradient evaluations spent on the kept draws.</summary>
    public long DrawGradients { get; internal set; }

    /// <summary>Where the chain stands, for going on.</summary>
    internal RandomStream? RandomAtEnd { get; set; }

    /// <summary>Where the chain stands, for going on.</summary>
    internal double[] PositionAtEnd { get; set; } = [];

    /// <summary>One draw.</summary>
    public ReadOnlySpan<double> Draw(int draw) => Positions.AsSpan(draw * Dimension, Dimension);

    /// <summary>This chain's draws followed by those of <paramref name="later"/>, which went on from here.</summary>
    internal ChainTrace Followed(ChainTrace later)
    {
        ChainTrace joined = new(Draws + later.Draws, Dimension)
        {
            StepSize = StepSize,
            Metric = Metric,
            WarmUpGradients = WarmUpGradients,
            DrawGradients = DrawGradients + later.DrawGradients,
            RandomAtEnd = later.RandomAtEnd,
            PositionAtEnd = later.PositionAtEnd,
        };
        Join(Positions, later.Positions, joined.Positions);
        Join(LogDensities, later.LogDensities, joined.LogDensities);
        Join(Energies, later.Energies, joined.Energies);
        Join(Acceptances, later.Acceptances, joined.Acceptances);
        Join(Depths, later.Depths, joined.Depths);
        Join(Diverged, later.Diverged, joined.Diverged);
        return joined;
    }

    static void Join<T>(T[] first, T[] second, T[] whole)
    {
        first.CopyTo(whole, 0);
        second.CopyTo(whole, first.Length);
    }
}
