using Coolproof.Evidence;
using Coolproof.Notebook;
using Coolproof.Rehearsal;
using Coolproof.Sampling;

namespace Coolproof.Advice.HowMany;

/// <summary>
/// How many rounds are enough: whole days simulated once with the full model, and each day judged after each of its rounds, so that numbers of rounds are
/// compared on the same chances.
/// </summary>
public static class RoundsNeeded
{
    private const double FirmAt = 0.975;
    private const int Draws = 200;

    // Seeds of these days lie far from those of calibration and of rehearsals that people start.
    private const long SeedsFrom = 40_000_000;
    private static readonly (double Low, double High) CoolDownMin = (8, 25);

    /// <summary>What each number of rounds promises.</summary>
    /// <param name="settings">The question.</param>
    /// <param name="progress">Told the done part, 0 to 1.</param>
    /// <param name="cancel">Stops the work.</param>
    public static IReadOnlyList<RoundsPromise> Of(HowManySettings settings, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        int rounds = settings.Order.Count / settings.Options.Count, done = 0;
        Outcome[][] days = new Outcome[settings.Days][];
        Parallel.For(0, settings.Days, new ParallelOptions { MaxDegreeOfParallelism = settings.Threads, CancellationToken = cancel }, d =>
        {
            days[d] = Judged(settings, d, rounds);
            progress?.Report(Interlocked.Increment(ref done) / (double)settings.Days);
        });
        return [.. Enumerable.Range(0, rounds).Select(r => Promise(r + 1, (r + 1) * settings.Options.Count, [.. days.Select(d => d[r])]))];
    }

    /// <summary>One simulated day of the plan.</summary>
    internal static SimulatedDay Day(HowManySettings settings, int day)
    {
        RehearsalSettings asked = new(SeedsFrom + 1_000_003 * settings.Seed + day, settings.Options, settings.Order.Count / settings.Options.Count)
        {
            Sequence = settings.Order,
            DriveS = settings.DriveS,
            ReadingsPerRun = settings.ReadingsPerRun,
            CoolDownMin = Math.Clamp(settings.CoolDownMin, CoolDownMin.Low, CoolDownMin.High),
        };
        return Rehearse.Day(settings.Known is { } known ? Told(asked, known, day, settings.Seed) : asked);
    }

    // Options that the known day had keep their watts per degree in one of its draws; a new one is drawn as ever. The heat goes with them, on one scale.
    private static RehearsalSettings Told(RehearsalSettings asked, QuickVerdict known, int day, long seed)
    {
        MotorDraw motor = known.Motors[new RandomStream(seed, day).NextIndex(known.Motors.Count)];
        return asked with
        {
            MotorMassKg = Coolproof.Thermal.FullModel.MotorBody.ReferenceMassKg,
            Options = [.. asked.Options.Select(o => known.Options.ToList().FindIndex(k => string.Equals(k, o.Name, StringComparison.OrdinalIgnoreCase)) is >= 0 and var place
                ? o with { WattsPerKelvin = Math.Clamp(MotorScale.CoreJPerK * motor.ConductancePerS[place], 0.2, 2.2) } : o)],
        };
    }

    private static Outcome[] Judged(HowManySettings settings, int day, int rounds)
    {
        SimulatedDay simulated = Day(settings, day);
        Outcome[] outcomes = new Outcome[rounds];
        QuickVerdict? verdict = null;
        ReadingsTable table = simulated.Table;
        for (int r = 0; r < rounds; r++)
        {
            int runs = (r + 1) * settings.Options.Count;
            verdict = QuickJudge.Of(table with { Runs = [.. simulated.Runs.Take(runs)] }, new JudgeSettings(Seed: day), Draws, verdict)
                ?? throw new InvalidOperationException($"Day {day} of the plan holds no reading.");
            outcomes[r] = Outcome.Of(verdict, simulated.Truth);
        }
        return outcomes;
    }

    private static RoundsPromise Promise(int rounds, int runs, Outcome[] days)
    {
        int firm = days.Sum(d => d.Firm), pairs = days.Sum(d => d.Pairs);
        double[] widths = [.. days.Select(d => d.IntervalK).Order()];
        return new(rounds, runs, days.Average(d => d.Right ? 1.0 : 0.0), days.Average(d => d.SaidRight), widths.Length % 2 == 1 ? widths[widths.Length / 2] : (widths[widths.Length / 2 - 1] + widths[widths.Length / 2]) / 2,
            pairs == 0 ? 0 : (double)firm / pairs, firm == 0 ? double.NaN : (double)days.Sum(d => d.Wrong) / firm, days.Average(d => d.LossK), days.Count(d => d.Rough));
    }

    private readonly record struct Outcome(bool Right, double SaidRight, double IntervalK, int Firm, int Wrong, int Pairs, double LossK, bool Rough)
    {
        public static Outcome Of(QuickVerdict verdict, Truth truth)
        {
            double[] peaks = [.. verdict.Options.Select(o => truth.Peaks(verdict.Fair.AmbientC, verdict.Fair.DriveS).First(p => p.Option == o).CanC)];
            double[] coolest = verdict.ProbabilityCoolest();
            int named = Array.IndexOf(coolest, coolest.Max()), firm = 0, wrong = 0, pairs = 0;
            for (int a = 0; a < peaks.Length; a++)
            {
                for (int b = 0; b < a; b++, pairs++)
                {
                    double[] difference = verdict.Difference(a, b);
                    double cooler = (double)difference.Count(d => d < 0) / difference.Length;
                    if (verdict.Rough || Math.Max(cooler, 1 - cooler) < FirmAt)
                        continue;
                    firm++;
                    wrong += cooler > 0.5 == peaks[a] < peaks[b] ? 0 : 1;
                }
            }
            return new(peaks[named] == peaks.Min(), coolest[named], Width(verdict), firm, wrong, pairs, peaks[named] - peaks.Min(), verdict.Rough);
        }

        private static double Width(QuickVerdict verdict)
        {
            if (verdict.Main() is not { } main)
                return 0;
            double[] sorted = [.. verdict.Difference(main.Best, main.Rival).Order()];
            return sorted[(int)(0.95 * sorted.Length)] - sorted[(int)(0.05 * sorted.Length)];
        }
    }
}
