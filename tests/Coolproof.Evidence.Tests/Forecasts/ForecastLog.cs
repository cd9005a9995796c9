using System.Globalization;

namespace Coolproof.Evidence.Tests.Forecasts;

/// <summary>
/// Cases in a CSV file, a day's together as soon as it is judged. A file named by COOLPROOF_FORECAST_LOG (the kind of notebook and .csv are added) is gone on with: days that it holds are not judged again, so give another name once the
/// model has changed.
/// </summary>
internal sealed class ForecastLog : IDisposable
{
    private const int Before = 17; // figures ahead of the widths without a source

    private readonly Lock _lock = new();
    private readonly StreamWriter _writer;
    private readonly Dictionary<long, List<ForecastCase>> _held = [];

    public ForecastLog(ForecastFrom from)
    {
        Path = (Environment.GetEnvironmentVariable("COOLPROOF_FORECAST_LOG") ?? System.IO.Path.Combine(System.IO.Path.GetTempPath(), $"coolproof-forecast-{Environment.ProcessId}")) + $"-{from}.csv";
        string[] lines = File.Exists(Path) ? File.ReadAllLines(Path) : [];
        // A day counts only where all its lines are there: the first column says how many there should be.
        foreach (IGrouping<long, string[]> day in lines.Skip(1).Select(line => line.Split(',')).Where(cells => cells.Length > 1).GroupBy(cells => long.Parse(cells[1], CultureInfo.InvariantCulture)))
        {
            string[][] whole = [.. day.Where(cells => cells.Length is 2 or 2 + Before || cells.Length == 2 + Before + 2 * ForecastSources.Names.Count)];
            int expected = int.Parse(day.First()[0], CultureInfo.InvariantCulture);
            if (expected == 0 || whole.Length == expected)
                _held[day.Key] = [.. expected == 0 ? [] : whole.Select(Read)];
        }
        List<string> kept = [Head, .. lines.Skip(1).Where(line => line.Split(',') is { Length: > 1 } cells && _held.ContainsKey(long.Parse(cells[1], CultureInfo.InvariantCulture)))];
        File.WriteAllLines(Path, kept);
        _writer = new(Path, append: true) { AutoFlush = true };
    }

    /// <summary>Where it is.</summary>
    public string Path { get; }

    private static string Head => "cases,day,can05,can50,can95,came,winding05,winding50,winding95,came,magnet05,magnet50,magnet95,came,ideal_can,ideal_winding,can_reader_winding,odds,passed,"
        + string.Join(',', ForecastSources.Names.Select(n => $"{n.Replace(',', ';')}: can,winding"));

    /// <summary>A day's cases, as held or else as they are made.</summary>
    public IReadOnlyList<ForecastCase> Of(long day, Func<long, IReadOnlyList<ForecastCase>> made)
    {
        if (_held.TryGetValue(day, out List<ForecastCase>? held))
            return held;
        IReadOnlyList<ForecastCase> cases = made(day);
        lock (_lock)
            _writer.Write(string.Concat((cases.Count == 0 ? [$"0,{day}"] : cases.Select(c => Line(c, cases.Count))).Select(line => line + "\n")));
        return cases;
    }

    public void Dispose() => _writer.Dispose();

    private static string Line(ForecastCase c, int cases)
    {
        double[] values =
        [
            c.Can.Q05, c.Can.Q50, c.Can.Q95, c.TrueCanC, c.Winding.Q05, c.Winding.Q50, c.Winding.Q95, c.TrueWindingC, c.Magnet.Q05, c.Magnet.Q50, c.Magnet.Q95, c.TrueMagnetC,
            c.IdealCanK, c.IdealWindingK, c.CanReaderWindingK, c.Odds, c.Passed, .. c.Without.SelectMany(w => new[] { w.CanK, w.WindingK }),
        ];
        return string.Create(CultureInfo.InvariantCulture, $"{cases},{c.Day},") + string.Join(',', values.Select(v => v.ToString("G6", CultureInfo.InvariantCulture)));
    }

    private static ForecastCase Read(string[] cells)
    {
        double[] v = [.. cells.Skip(2).Select(cell => double.Parse(cell, CultureInfo.InvariantCulture))];
        Summary Said(int at) => new(double.NaN, double.NaN, v[at], double.NaN, v[at + 1], double.NaN, v[at + 2]);
        return new(long.Parse(cells[1], CultureInfo.InvariantCulture), Said(0), v[3], Said(4), v[7], Said(8), v[11], v[12], v[13], v[14], v[15], v[16])
        {
            Without = [.. v[Before..].Chunk(2).Select(pair => (pair[0], pair[1]))],
        };
    }
}
