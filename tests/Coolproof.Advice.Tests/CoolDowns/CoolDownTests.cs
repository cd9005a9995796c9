using System.Globalization;
using Coolproof.Advice.CoolDowns;
using Coolproof.Evidence;
using Coolproof.Rehearsal;
using Coolproof.Thermal.FullModel;
using MathNet.Numerics.Statistics;

namespace Coolproof.Advice.Tests.CoolDowns;

/// <summary>Promises from a day's readings against how the full model of that day truly cools.</summary>
public class CoolDownTests(ITestOutputHelper output)
{
    private const double WithinK = 3, StepS = 30, LookMin = 6, ReadSdK = 1, CooledByK = 8;

    [Fact]
    public void On_a_few_days_the_core_is_ready_when_promised() => Promised(8, 0.6, 1.6);

    [Fact]
    [Trait("Suite", "long")]
    public void On_nine_days_in_ten_the_core_is_ready_when_promised() => Promised(200, 0.90, 1.3);

    [Fact]
    public void A_stronger_fan_is_sooner_ready()
    {
        Dictionary<CoolingBy, CoolDownPromise> by = CoolDown.Of(new(25, 3, 62), TestContext.Current.CancellationToken).ToDictionary(p => p.By);
        Assert.True(by[CoolingBy.PitFan].MiddleMin < by[CoolingBy.OwnFan].MiddleMin && by[CoolingBy.OwnFan].MiddleMin < by[CoolingBy.Shade].MiddleMin);
        Assert.All(by.Values, p => Assert.True(p.SoonMin <= p.MiddleMin && p.MiddleMin <= p.PromisedMin));
    }

    [Fact]
    public void Looks_at_the_can_narrow_the_promise()
    {
        double Width(params CanLook[] looks) => CoolDown.Of(new(25, 3, 62) { Looks = looks }, TestContext.Current.CancellationToken)[0] is var p ? p.PromisedMin - p.SoonMin : 0;
        Assert.True(Width(new CanLook(6, 46), new CanLook(12, 37)) < Width());
    }

    [Fact]
    public void Without_a_fan_of_its_own_nothing_is_promised_of_one() =>
        Assert.DoesNotContain(CoolDown.Of(new(25, 3, 62) { HasFan = false }, TestContext.Current.CancellationToken), p => p.By == CoolingBy.OwnFan);

    private void Promised(int days, double least, double most)
    {
        List<string> missed = [];
        foreach (bool looks in new[] { true, false })
        {
            foreach (CoolingBy by in Enum.GetValues<CoolingBy>())
            {
                double[] ratios = new double[days];
                Parallel.For(0, days, new ParallelOptions { MaxDegreeOfParallelism = 2 }, d =>
                {
                    (double promised, double true_) = Of(d + 1, by, looks);
                    ratios[d] = promised / true_;
                });
                int ready = ratios.Count(r => r >= 1);
                output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                    $"{by}, {(looks ? "looked at" : "not looked at")}: ready when promised on {ready} of {days} days; promised over true minutes: median {ratios.Median():F2}, 9 in 10 within {ratios.Quantile(0.9):F2}"));
                // What isn't looked at is promised with more room.
                double bar = looks ? most : 3;
                if (ready < least * days || ratios.Median() > bar)
                    missed.Add($"{by}, {looks}: {ready} of {days}, {ratios.Median()} times the true minutes");
            }
        }
        Assert.True(missed.Count == 0, string.Join(Environment.NewLine, missed));
    }

    // One day of three options; the last run's motor cools as asked. The can is read at the halt and once more after six minutes; blown on, which is quick, each minute of the first three as well.
    private static (double Promised, double True) Of(int seed, CoolingBy by, bool looked)
    {
        SimulatedDay day = Rehearse.Day(new RehearsalSettings(7_000_000 + seed, [new("a"), new("b"), new("c")]));
        QuickVerdict verdict = QuickJudge.Of(day.Table, new JudgeSettings(Seed: seed))!;
        RunTruth last = day.Truth.Runs[^1];
        TrueOption option = day.Truth.Options.First(o => o.Name == last.Option);
        Coolproof.Sampling.RandomStream chance = new(seed, 77);
        double Between(Between range) => range.Low + (range.High - range.Low) * chance.NextUniform();
        double scale = day.Truth.MotorMassKg / MotorBody.ReferenceMassKg, offset = day.Truth.Hyperparameters.GunOffsetK;
        bool blown = by is CoolingBy.PitFan or CoolingBy.CooledAir;
        Phase phase = Phase.Steady(last.AirC - (by == CoolingBy.CooledAir ? CooledByK : 0), 0, 0, Between(TruthRanges.BreezeMS), by == CoolingBy.OwnFan ? 1 : 0) with
        {
            ShellOff = true,
            PitFanWPerK = blown ? scale * Between(TruthRanges.BlownWPerK) : 0,
        };
        CoolingOption cooling = option.Cooling.Times(Math.Exp(last.LogConductance));
        double[] t = [.. last.HaltC];
        double read = t[(int)Node.Can] + offset + ReadSdK * chance.NextNormal(), ready = 0;
        List<CanLook> looks = [];
        double[] lookS = !looked ? [] : blown ? [60, 120, 180, 60 * LookMin] : [60 * LookMin];
        for (double now = 0; now <= CoolDown.LongestMin * 60; now += StepS)
        {
            if (lookS.Contains(now))
                looks.Add(new(now / 60, t[(int)Node.Can] + offset + ReadSdK * chance.NextNormal()));
            double hottest = new[] { Node.Winding, Node.Laminations, Node.Rotor, Node.Can }.Max(n => t[(int)n]);
            if (hottest - last.AirC > WithinK)
                ready = (now + StepS) / 60;
            FastPath.Advance(day.Truth.Motor, cooling, phase, StepS, t, afterEvent: now == 0);
        }
        CoolDownQuestion question = new(last.AirC, WithinK, read)
        {
            Motors = verdict.Motors,
            Option = verdict.Options.ToList().IndexOf(last.Option),
            DriveS = 360,
            CooledByK = CooledByK,
            Looks = looks,
            LookedAtBy = by,
            Seed = seed,
        };
        return (CoolDown.Of(question).First(p => p.By == by).PromisedMin, Math.Max(ready, StepS / 60));
    }
}
