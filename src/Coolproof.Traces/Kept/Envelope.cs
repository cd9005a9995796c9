namespace Coolproof.Traces.Kept;

/// <summary>Smallest and greatest value of equal steps of time: a trace thinned for the eye, no peak lost.</summary>
public sealed class Envelope
{
    readonly double[] _least, _most;

    /// <summary>One without a value yet.</summary>
    /// <param name="fromUs">Its begin, µs.</param>
    /// <param name="toUs">Its end, µs.</param>
    /// <param name="steps">How many steps.</param>
    public Envelope(long fromUs, long toUs, int steps)
    {
        (FromUs, ToUs) = (fromUs, toUs);
        _least = new double[steps];
        _most = new double[steps];
        Array.Fill(_least, double.NaN);
        Array.Fill(_most, double.NaN);
    }

    /// <summary>Its begin, µs.</summary>
    public long FromUs { get; }
    /// <summary>Its end, µs.</summary>
    public long ToUs { get; }
    /// <summary>Smallest values; NaN where a step has none.</summary>
    public IReadOnlyList<double> Least => _least;
    /// <summary>Greatest values; NaN where a step has none.</summary>
    public IReadOnlyList<double> Most => _most;

    /// <summary>Takes a value; one that is none or lies outside is passed over.</summary>
    public void Take(long atUs, double value)
    {
        if (double.IsNaN(value) || atUs < FromUs || atUs > ToUs) return;
        int step = Math.Min(_least.Length - 1, (int)((double)(atUs - FromUs) / (ToUs - FromUs) * _least.Length));
        if (!(value >= _least[step])) _least[step] = value;
        if (!(value <= _most[step])) _most[step] = value;
    }
}
