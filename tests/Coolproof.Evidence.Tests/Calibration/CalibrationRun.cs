using System.Diagnostics;
using System.Globalization;
using Coolproof.Rehearsal;

namespace Coolproof.Evidence.Tests.Calibration;

/// <summary>Judges many simulated days, two at a time.</summary>
internal static class CalibrationRun
{
    private const int AtOnce = 2, TellEach = 10;

    /// <summary>The environment variable that changes the number of days of a long run.</summary>
    public const string DaysVariable = "COOLPROOF_CALIBRATION_DAYS";

    /// <summary>The days asked for by the environment, else the usual number.</summary>
    public static int Days(int usual) => int.TryParse(Environment.GetEnvironmentVariable(DaysVariable), NumberStyles.None, CultureInfo.InvariantCulture, out int days) && days > 0 ? days : usual;

    /// <summary>Judges days 1 to <paramref name="days"/>.</summary>
    public static DayOutcome[] Of(string name, int days, Func<long, SimulatedDay> make, bool oracle, ITestOutputHelper output) =>
        Of(name, days, (seed, day) => DayJudging.Of(seed, day, oracle), make, output);

    /// <summary>Judges them in a way of one's own.</summary>
    public static DayOutcome[] Of(string name, int days, Func<long, SimulatedDay, DayOutcome> judge, Func<long, SimulatedDay> make, ITestOutputHelper output)
    {
        DayOutcome[] outcomes = new DayOutcome[days];
        using OutcomeLog log = new(name);
        output.WriteLine($"each day as it comes: {log.Path}");
        Stopwatch watch = Stopwatch.StartNew();
        int done = 0, next = 0;
        // Day by day rather than in ranges, so that a run cut short holds the first days.
        Parallel.For(0, AtOnce, _ =>
        {
            for (int i = Interlocked.Increment(ref next) - 1; i < days; i = Interlocked.Increment(ref next) - 1)
            {
                outcomes[i] = judge(i + 1, make(i + 1));
                log.Add(outcomes[i]);
                int now = Interlocked.Increment(ref done);
                if (now % TellEach == 0)
                    output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name}: {now} of {days} days in {watch.Elapsed.TotalMinutes:F1} min"));
            }
        });
        foreach (DayOutcome failed in outcomes.Where(o => !o.Judged || o.OracleFailure.Length > 0))
            output.WriteLine($"day {failed.Seed}: {(failed.Judged ? "the oracle: " + failed.OracleFailure : failed.Failure)}");
        return outcomes;
    }
}
