using System.Diagnostics;
using System.Globalization;
using Coolproof.Advice.HowMany;
using Coolproof.Advice.Orders;
using Coolproof.Rehearsal;

namespace Coolproof.Advice.Tests.HowMany;

public class RoundsNeededTests(ITestOutputHelper output)
{
    private static HowManySettings Asked(int options, int rounds, int days, int threads = 2) => new(
        [.. Enumerable.Range(0, options).Select(k => new RehearsalOption($"option {k}"))],
        [.. OrderSearch.Randomised(DayLimits.Plain(options, 1e6, 240) with { Packs = 1000 }, new(), 1).Options.Take(options * rounds)], Days: days, Threads: threads);

    [Fact]
    public void More_rounds_narrow_the_answer()
    {
        IReadOnlyList<RoundsPromise> promised = RoundsNeeded.Of(Asked(3, 3, 20), cancel: TestContext.Current.CancellationToken);
        Assert.Equal([3, 6, 9], promised.Select(p => p.Runs));
        Assert.True(promised[2].IntervalK < promised[0].IntervalK, $"{promised[0].IntervalK} K, then {promised[2].IntervalK} K");
        Assert.All(promised, p => Assert.InRange(p.RightPick, 0.0, 1.0));
    }

    [Fact]
    public void The_number_of_threads_changes_nothing() =>
        Assert.Equal(RoundsNeeded.Of(Asked(3, 2, 6, 1), cancel: TestContext.Current.CancellationToken), RoundsNeeded.Of(Asked(3, 2, 6), cancel: TestContext.Current.CancellationToken));

    [Fact]
    public void It_can_be_stopped()
    {
        using CancellationTokenSource stop = new();
        Assert.ThrowsAny<OperationCanceledException>(() => RoundsNeeded.Of(Asked(3, 2, 50), new Stop(stop), stop.Token));
    }

    [Fact]
    [Trait("Suite", "long")]
    public void Six_options_and_six_rounds_over_two_hundred_days()
    {
        Stopwatch watch = Stopwatch.StartNew();
        IReadOnlyList<RoundsPromise> promised = RoundsNeeded.Of(Asked(6, 6, 200), cancel: TestContext.Current.CancellationToken);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{watch.Elapsed.TotalSeconds:F1} s"));
        foreach (RoundsPromise p in promised)
            output.WriteLine(p.ToString());
        Assert.All(promised, p => Assert.True(Math.Abs(p.RightPick - p.PredictedRightPick) < 0.08, $"{p}"));
        Assert.All(promised, p => Assert.True(p.RoughDays <= 0.05 * 200, $"{p}"));
        // The bar is 10 s on two cores; twice as long where other work runs beside it.
        Assert.True(watch.Elapsed.TotalSeconds < 20, $"{watch.Elapsed.TotalSeconds} s");
    }

    private sealed class Stop(CancellationTokenSource source) : IProgress<double>
    {
        public void Report(double value) => source.Cancel();
    }
}
