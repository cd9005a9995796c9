using System.Globalization;

namespace Coolproof.Evidence.Tests.Calibration;

/// <summary>Writes each day's outcome to a CSV file as soon as it is there, so that a long run can be looked into before its end.</summary>
internal sealed class OutcomeLog : IDisposable
{
    private readonly Lock _lock = new();
    private readonly StreamWriter _writer;

    /// <summary>Begins a new file.</summary>
    public OutcomeLog(string name)
    {
        Path = System.IO.Path.Combine(System.IO.Path.GetTempPath(), $"coolproof-{name}-{Environment.ProcessId}.csv");
        _writer = new(Path) { AutoFlush = true };
        _writer.WriteLine("seed,load,hands,delays,fan,runs,order,charge,clock,start,blown,max,options,seconds,failure,oracle_failure,what,a,b,truth,mean,sd,q05,q95,probability,call,oracle_mean,oracle_sd,oracle_call,floor,naive");
    }

    /// <summary>Where it is.</summary>
    public string Path { get; }

    /// <summary>Adds a day: a line each for its options' can and winding and for its pairs; one line where it failed.</summary>
    public void Add(DayOutcome day)
    {
        Rehearsal.Stratum s = day.Stratum;
        string head = string.Join(',', day.Seed, Text(s.LoadSd), s.Hands, s.DelaysNoted, s.FanRunsOn, s.RunsPerOption, s.Order, s.ChargeNoted, s.ClockNoted, s.StartNoted, s.BlownDown,
            s.HoldMax, s.Options, Text(day.Seconds), Quoted(day.Failure), Quoted(day.OracleFailure));
        List<string> lines = [];
        foreach (OptionOutcome o in day.Options)
        {
            lines.Add(string.Join(',', "peak Can", o.Name, "", Text(o.TrueCanC), Summed(o.Can)));
            lines.Add(string.Join(',', "peak Winding", o.Name, "", Text(o.TrueWindingC), Summed(o.Winding)));
        }
        foreach (PairOutcome p in day.Pairs)
            lines.Add(string.Join(',', $"pair {p.On}", p.A, p.B, Text(p.Truth), Summed(p.Said), Text(p.Probability), p.Call, Text(p.OracleMean), Text(p.Oracle?.Sd ?? double.NaN), p.OracleCall, Text(p.Floor), Text(p.Naive)));
        lock (_lock)
        {
            foreach (string line in lines.Count == 0 ? ["failed"] : lines)
                _writer.WriteLine($"{head},{line}");
        }
    }

    public void Dispose() => _writer.Dispose();

    private static string Summed(Summary s) => string.Join(',', Text(s.Mean), Text(s.Sd), Text(s.Q05), Text(s.Q95));

    private static string Text(double x) => double.IsNaN(x) ? "" : x.ToString("G6", CultureInfo.InvariantCulture);

    private static string Quoted(string text) => $"\"{text.Replace("\"", "\"\"")}\"";
}
