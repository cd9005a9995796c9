using Coolproof.Advice.Mounts;
using Coolproof.Evidence;
using Coolproof.Notebook;
using Coolproof.Sampling;

namespace Coolproof.Advice.Tests.Mounts;

/// <summary>The stated doubt where the world is another than the program's: other laws, and every measure up to a quarter off.</summary>
public class MountCoverageTests(ITestOutputHelper output)
{
    const int Draws = 400;

    // A motor of the middle of what is believed, 45 W at 165 g, six minutes.
    static readonly MotorDraw Motor = new(1.25, 0.06, 0.24, 25, 0.5, 0.9, 0.75, [0.016]);

    [Fact]
    public void The_stated_doubt_holds_the_truth_of_other_laws_and_the_order_of_two_mounts() => Shown(cars: 120, seed: 7);

    [Fact, Trait("Suite", "long")]
    public void The_stated_doubt_holds_the_truth_of_other_laws_and_the_order_of_two_mounts_on_many_cars() => Shown(cars: 2000, seed: 77);

    void Shown(int cars, long seed)
    {
        Tally total = new(), stream = new(), within = new(), outside = new();
        int apart = 0, right = 0;
        double width = 0;
        for (int car = 0; car < cars; car++)
        {
            RandomStream chance = new(seed, car);
            MountSheet sheet = MadeUpMounts.Sheet(chance, 3), truly = MadeUpMounts.Truly(sheet, chance);
            TrueCar world = new(chance);
            (double Total, double Stream)[] truth = [.. truly.Mounts.Select(m => world.WPerK(truly, m, chance))];
            double[][] logs = MountPredictions.LogWPerK(sheet, Draws, seed + car);
            double[][] streams = Streams(sheet, seed + car);
            double[] can = [.. truth.Select(t => CanC(sheet, t.Total))], told = [.. logs.Select(l => CanC(sheet, Math.Exp(Summary.Of(l).Q50)))];
            for (int m = 0; m < truth.Length; m++)
            {
                Summary whole = Summary.Of([.. logs[m].Select(Math.Exp)]);
                total.Add(truth[m].Total, whole);
                width += Math.Log(whole.Q95 / whole.Q05) / (cars * truth.Length);
                if (streams[m].Max() <= 0 || truth[m].Stream <= 0) continue;
                Summary said = Summary.Of(streams[m]);
                stream.Add(truth[m].Stream, said);
                (MountHeat.Of(sheet, sheet.Mounts[m], default).Rule == MountRule.OutsideCorrelation ? outside : within).Add(truth[m].Stream, said);
                for (int n = 0; n < m; n++)
                    if (Math.Abs(can[m] - can[n]) > 5)
                        (apart, right) = (apart + 1, right + ((can[m] < can[n]) == (told[m] < told[n]) ? 1 : 0));
            }
        }
        output.WriteLine($"{cars} cars: W/K {total}, mean log of the interval's ends' ratio {width:f2}; stream {stream}; within a range {within}; outside {outside}; order right {right} of {apart} pairs over 5 K apart ({100.0 * right / apart:f1} %)");
        // Bars: 85 to 95 %, 80 %; wider by two and a half standard errors where few are drawn.
        double slack = 2.5 * Math.Sqrt(0.9 * 0.1 / cars), slackOfPairs = 2.5 * Math.Sqrt(0.8 * 0.2 / apart);
        Assert.InRange(total.Share, 0.85 - slack, 0.95 + slack);
        Assert.InRange(stream.Share, 0.85 - slack, 0.95 + slack);
        Assert.True((double)right / apart >= 0.8 - slackOfPairs);
    }

    static double[][] Streams(MountSheet sheet, long seed)
    {
        RandomStream chance = new(seed, 9);
        double[][] streams = [.. sheet.Mounts.Select(_ => new double[Draws])];
        for (int i = 0; i < Draws; i++)
        {
            MountChance shared = MountChance.Shared(chance);
            for (int m = 0; m < streams.Length; m++)
                streams[m][i] = MountHeat.Of(sheet, sheet.Mounts[m], shared.Drawn(chance)).StreamWPerK;
        }
        return streams;
    }

    static double CanC(MountSheet sheet, double wPerK) => FairPeak.Of(Motor, wPerK / (50 * sheet.Can.MassKg / 0.165), new(sheet.AirC, 360)).CanC;

    sealed class Tally
    {
        int held, below, all;
        double off;

        public double Share => (double)held / all;

        public void Add(double truth, Summary said)
        {
            all++;
            if (truth < said.Q05) below++;
            else if (truth <= said.Q95) held++;
            off += Math.Log(Math.Max(truth, 1e-6) / Math.Max(said.Q50, 1e-6));
        }

        public override string ToString() => $"{100 * Share:f1} % of {all} held ({100.0 * below / all:f1} % below; truth over told, mean log {(double.IsFinite(off) ? off / all : off):f2})";
    }
}
