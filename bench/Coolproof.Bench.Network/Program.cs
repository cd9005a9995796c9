using System.Diagnostics;
using System.Globalization;
using Coolproof.Thermal;

// Times 900 s of the four-node ladder with output every 10 ms (rc-ladder-4.csv, see SOURCES.md beside it), preparation included,
// and prints one tab-separated line per way: name, fastest and median milliseconds, largest error in kelvin at the file's 1 s marks.
if (args.Length != 1)
{
    Console.Error.WriteLine("usage: Coolproof.Bench.Network rc-ladder-4.csv");
    return 2;
}

double[][] exact = [.. File.ReadLines(args[0]).Skip(1)
    .Select(line => line.Split(',').Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)).ToArray())];
double[] reused = new double[90_000 * 4];
Report("coolproof, output into a kept buffer", () => Solve(reused));
Report("coolproof, output into a new array", () => Solve(new double[90_000 * 4]));
return 0;

static double[] Solve(double[] rows)
{
    Network network = new([8, 40, 60, 25], [new(0, 1, 1 / 0.8), new(1, 2, 1 / 1.2), new(2, 3, 1 / 0.5)], [0, 0, 1 / 6.0, 1 / 4.0]);
    double[] on = network.Heat(25, 25, 0, 0, 0), off = network.Heat(25, 0, 0, 0, 0);
    network.Prepare().Sample([25, 25, 25, 25], [new HeatInterval(300, on), new HeatInterval(300, off), new HeatInterval(300, on)], 0.01, rows);
    return rows;
}

void Report(string name, Func<double[]> solve)
{
    // Long enough for the runtime to compile what it found to be hot, also beside other work.
    for (long start = Stopwatch.GetTimestamp(); Stopwatch.GetElapsedTime(start).TotalSeconds < 1.5;) solve();
    double[] milliseconds = new double[401];
    double[] rows = [];
    for (int i = 0; i < milliseconds.Length; i++)
    {
        long begin = Stopwatch.GetTimestamp();
        rows = solve();
        milliseconds[i] = Stopwatch.GetElapsedTime(begin).TotalMilliseconds;
    }
    Array.Sort(milliseconds);
    double worst = 0;
    for (int s = 1; s <= 900; s++)
        for (int node = 0; node < 4; node++)
            worst = Math.Max(worst, Math.Abs(rows[(s * 100 - 1) * 4 + node] - exact[s][node + 1]));
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name}\t{milliseconds[0]:R}\t{milliseconds[milliseconds.Length / 2]:R}\t{worst:R}"));
}
