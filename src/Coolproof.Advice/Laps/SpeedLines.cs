namespace Coolproof.Advice.Laps;

/// <summary>Speed over time as straight lines that meet: a corner held, a stretch of braking, a piece of speeding up are each about one.</summary>
/// <param name="AtS">Where lines meet, s, begin and end among them.</param>
/// <param name="SpeedMS">Speeds there, m/s.</param>
internal sealed record SpeedLines(IReadOnlyList<double> AtS, IReadOnlyList<double> SpeedMS)
{
    // What lines may miss of a bent course even where nothing scatters, m/s; a line costs two figures and a place (Schwarz 1978: half a logarithm of the number of values each).
    private const double LeastScatterMS = 0.04;
    private const int FiguresOfALine = 3, FewestOfALine = 2;

    /// <summary>Number of lines.</summary>
    public int Count => AtS.Count - 1;

    /// <summary>The lines that tell the values best for their number: the least sum of squares over the scatter's, and a price on each line, by dynamic programming (exact); then made to meet by least squares.</summary>
    /// <param name="at">Times, s, rising; at least 4.</param>
    /// <param name="speed">Speeds, m/s.</param>
    /// <param name="fromS">Where the first line begins, s, not after the first value.</param>
    /// <param name="toS">Where the last one ends, s.</param>
    public static SpeedLines Of(double[] at, double[] speed, double fromS, double toS)
    {
        Sums sums = new(at, speed);
        double scatter = Scatter(speed), price = FiguresOfALine * Math.Log(at.Length);
        int n = at.Length;
        double[] least = new double[n + 1];
        int[] from = new int[n + 1];
        Array.Fill(least, double.PositiveInfinity);
        least[0] = 0;
        for (int end = FewestOfALine; end <= n; end++)
            for (int begin = 0; begin <= end - FewestOfALine; begin++)
                if (least[begin] + sums.Left(begin, end) / (scatter * scatter) + price is var cost && cost < least[end])
                    (least[end], from[end]) = (cost, begin);
        List<(int Begin, int End)> lines = [];
        for (int end = n; end > 0; end = from[end])
            lines.Insert(0, (from[end], end));
        double[] knots = [fromS, .. lines.Zip(lines.Skip(1), (a, b) => sums.Meeting(a, b)), toS];
        return new(knots, Joined(knots, at, speed));
    }

    // Scatter of one value by what each is off the middle of its neighbours: six times its variance, where the course is even.
    private static double Scatter(double[] speed) =>
        Math.Max(LeastScatterMS, 1.4826 / Math.Sqrt(6) * SpeedTrace.Middle([.. Enumerable.Range(1, speed.Length - 2).Select(i => Math.Abs(speed[i - 1] - 2 * speed[i] + speed[i + 1]))]));

    // Least squares of lines that meet at the knots: each speed is a mean of its two neighbours among the knots, so the equations have three diagonals.
    private static double[] Joined(double[] knots, double[] at, double[] speed)
    {
        int n = knots.Length, line = 0;
        double[] diagonal = new double[n], beside = new double[n], right = new double[n];
        for (int i = 0; i < at.Length; i++)
        {
            while (line < n - 2 && at[i] > knots[line + 1])
                line++;
            double b = Math.Clamp((at[i] - knots[line]) / (knots[line + 1] - knots[line]), 0, 1), a = 1 - b;
            diagonal[line] += a * a;
            diagonal[line + 1] += b * b;
            beside[line] += a * b;
            right[line] += a * speed[i];
            right[line + 1] += b * speed[i];
        }
        for (int i = 1; i < n; i++)
        {
            double share = beside[i - 1] / diagonal[i - 1];
            diagonal[i] -= share * beside[i - 1];
            right[i] -= share * right[i - 1];
        }
        for (int i = n - 1; i >= 0; i--)
            right[i] = (right[i] - (i < n - 1 ? beside[i] * right[i + 1] : 0)) / diagonal[i];
        return right;
    }

    /// <summary>Sums from which the line of any run of values is had at once.</summary>
    private sealed class Sums
    {
        private readonly double[] _at, _x, _y, _xx, _xy, _yy;
        private readonly double _middle;

        public Sums(double[] at, double[] speed)
        {
            _at = at;
            // About their middles, so that nothing is lost where squares are taken from squares.
            double x0 = _middle = at.Average(), y0 = speed.Average();
            (_x, _y, _xx, _xy, _yy) = (Running(i => at[i] - x0), Running(i => speed[i] - y0), Running(i => (at[i] - x0) * (at[i] - x0)), Running(i => (at[i] - x0) * (speed[i] - y0)), Running(i => (speed[i] - y0) * (speed[i] - y0)));

            double[] Running(Func<int, double> value)
            {
                double[] sums = new double[at.Length + 1];
                for (int i = 0; i < at.Length; i++)
                    sums[i + 1] = sums[i] + value(i);
                return sums;
            }
        }

        /// <summary>Sum of squares that the line of values [begin, end) leaves.</summary>
        public double Left(int begin, int end)
        {
            (double n, double sxx, double sxy) = About(begin, end);
            double y = _y[end] - _y[begin], syy = _yy[end] - _yy[begin] - y * y / n;
            return Math.Max(0, syy - (sxx > 0 ? sxy * sxy / sxx : 0));
        }

        /// <summary>When the lines of two neighbouring runs meet, s, or half-way between their values where they don't meet there.</summary>
        public double Meeting((int Begin, int End) a, (int Begin, int End) b)
        {
            (double at0, double y0, double slope0) = Line(a);
            (double at1, double y1, double slope1) = Line(b);
            double last = _at[a.End - 1], first = _at[b.Begin], half = 0.5 * (last + first), x = _middle + (y1 - slope1 * at1 - y0 + slope0 * at0) / (slope0 - slope1);
            return x > last && x < first ? x : half;
        }

        private (double At, double Value, double Slope) Line((int Begin, int End) run)
        {
            (double n, double sxx, double sxy) = About(run.Begin, run.End);
            return ((_x[run.End] - _x[run.Begin]) / n, (_y[run.End] - _y[run.Begin]) / n, sxx > 0 ? sxy / sxx : 0);
        }

        private (double N, double Sxx, double Sxy) About(int begin, int end)
        {
            double n = end - begin, x = _x[end] - _x[begin], y = _y[end] - _y[begin];
            return (n, _xx[end] - _xx[begin] - x * x / n, _xy[end] - _xy[begin] - x * y / n);
        }
    }
}
