using Coolproof.Rehearsal;
using Coolproof.Traces.Import;
using Coolproof.Traces.Kept;
using Coolproof.Traces.Shape;

namespace Coolproof.Traces.Tests;

/// <summary>Evenings simulated with the full model, traced by a can probe whose clock nobody set: how far from the truth the clock is set by the shape alone.</summary>
public class ClockMatchTests(ITestOutputHelper output)
{
    const double Unix = 1_781_000_000, Ahead = -1_780_990_123.4;
    static readonly KeptChannel Can = new("can", "°C", Measured.Temperature, 1, 0), Current = new("current", "A", Measured.Current, 1, 0);

    sealed record Traced(SimulatedDay Day, SecondGrid Grid, IReadOnlyList<KnownRun> Runs);

    static SimulatedDay Evening(long seed) => Rehearse.Day(DayGenerator.Settings(seed, sameOptionTwice: false) with { Traced = true });

    static Traced Of(SimulatedDay day, double stampSdS, bool minutes, bool current = false)
    {
        TrueProbe probe = TrueProbe.Drawn(day.Settings.Seed) with { ClockS = 0 };
        var logged = probe.Logged(day, 0);
        Random chance = new((int)day.Settings.Seed);
        double Off() => stampSdS * ((chance.NextDouble() + chance.NextDouble() + chance.NextDouble() + chance.NextDouble() - 2) * Math.Sqrt(3));
        KnownRun[] runs = [.. day.Truth.Runs.Select(run => minutes
            ? new KnownRun(run.Run, Unix + (60 * Math.Round(run.GoS / 60)), Unix + (60 * Math.Round(run.GoS / 60)) + Math.Round(run.DriveS), 20)
            : new KnownRun(run.Run, Unix + run.GoS + Off(), Unix + run.GoS + run.DriveS + Off(), 1.5))];
        double[] amps = [.. logged.Select(row => day.Truth.Runs.Any(run => row.AtS > run.GoS && row.AtS <= run.GoS + run.DriveS) ? 5 + (20 * chance.NextDouble()) : 0.1 * chance.NextDouble())];
        return new Traced(day, SecondGrid.Of(Math.Floor(Unix + Ahead + logged[0].AtS), current ? [Can, Current] : [Can], current ? [[.. logged.Select(row => row.ReadC)], amps] : [[.. logged.Select(row => row.ReadC)]]), runs);
    }

    (double[] Errors, int Wrong, double[] Odds) Over(int days, double stampSdS, bool minutes, bool current)
    {
        List<double> errors = [], odds = [];
        int wrong = 0;
        for (int seed = 1; seed <= days; seed++)
        {
            Traced one = Of(Evening(seed), stampSdS, minutes, current);
            IReadOnlyList<ClockWay> ways = ClockMatch.Of(one.Grid, one.Runs, null);
            double error = ways[0].AheadS - Ahead;
            odds.Add(ways[0].Odds);
            if (Math.Abs(error) > 45) wrong++;
            else errors.Add(error);
        }
        double[] ordered = [.. errors.Select(Math.Abs).Order()];
        output.WriteLine($"{days} evenings, stamps {(minutes ? "to the minute" : $"± {stampSdS} s")}, {(current ? "can and current" : "can alone")}: {wrong} wrong; off by {ordered[ordered.Length / 2]:0.0} s (half), {ordered[(int)(0.9 * ordered.Length)]:0.0} s (9 in 10); mean {errors.Average():0.0} s");
        return ([.. errors], wrong, [.. odds]);
    }

    [Fact]
    public void The_clock_is_set_within_seconds_by_the_bends_of_the_can_alone()
    {
        var (errors, wrong, _) = Over(40, 1, minutes: false, current: false);
        Assert.True(wrong <= 2, $"{wrong} evenings wrong");
        Assert.InRange(errors.Select(Math.Abs).Order().ElementAt((int)(0.9 * errors.Length)), 0, 8);
    }

    [Fact]
    public void With_a_current_it_is_set_to_the_second()
    {
        var (errors, wrong, _) = Over(40, 1, minutes: false, current: true);
        Assert.Equal(0, wrong);
        Assert.InRange(errors.Select(Math.Abs).Order().ElementAt((int)(0.9 * errors.Length)), 0, 2);
    }

    [Fact]
    public void Clocks_read_to_the_minute_are_enough_to_find_the_runs()
    {
        var (errors, wrong, _) = Over(40, 0, minutes: true, current: true);
        Assert.True(wrong <= 2, $"{wrong} evenings wrong");
        Assert.InRange(errors.Select(Math.Abs).Order().ElementAt((int)(0.9 * errors.Length)), 0, 30);
    }
}
