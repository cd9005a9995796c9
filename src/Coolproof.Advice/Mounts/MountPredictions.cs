using Coolproof.Evidence;
using Coolproof.Evidence.Forecasts;
using Coolproof.Notebook;
using Coolproof.Sampling;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace Coolproof.Advice.Mounts;

/// <summary>
/// Predicts mounts by drawing what isn't known of them, and of the motor: by priors, or by the draws of a judged table. Mounts of the sheet that were driven are what ruler and readings say of them
/// together, and put the others right: what they share (plate, wind, correlation) is learnt from them.
/// </summary>
public static class MountPredictions
{
    private const int Draws = 4000, CostDraws = 200;

    // Ruler and readings contradict each other where differences as far apart come about less often than this; and fewer draws than these are too few to go by.
    private const double LeastChance = 0.01, LeastDraws = 200;
    private const double UsualDriveS = 360, ReferenceMassKg = 0.165, ScaleLogSd = 0.15;

    /// <summary>The answer from the ruler alone, at a drive of six minutes in the sheet's air.</summary>
    /// <param name="sheet">What is asked.</param>
    /// <param name="seed">Seed.</param>
    public static MountAnswer Of(MountSheet sheet, long seed) => new Reckoning(sheet, PriorMotors.Draws(Draws, seed), new(sheet.AirC, UsualDriveS), [], seed).Answer();

    /// <summary>The answer beside what a judged table says, at its fair conditions.</summary>
    /// <param name="sheet">What is asked.</param>
    /// <param name="evidence">What the table says.</param>
    /// <param name="seed">Seed.</param>
    public static MountAnswer Of(MountSheet sheet, RaceEvidence evidence, long seed) =>
        new Reckoning(sheet, FairPeak.Motors(evidence), evidence.Fair, evidence.Options, seed).Answer();

    /// <summary>
    /// What each mount adds to the watts per degree of one of them, as a share of that one's, draw by draw; draws stand in the order of the motors of the evidence, over and over: so those that were driven
    /// are what the readings alone say, without the ruler's word.
    /// </summary>
    /// <param name="sheet">What is asked.</param>
    /// <param name="evidence">What a judged table says; null: the ruler alone.</param>
    /// <param name="of">Place of the mount that the others are set against.</param>
    /// <param name="seed">Seed.</param>
    internal static double[][] SharesAdded(MountSheet sheet, RaceEvidence? evidence, int of, long seed) => (evidence is null
        ? new Reckoning(sheet, PriorMotors.Draws(Draws, seed), new(sheet.AirC, UsualDriveS), [], seed)
        : new Reckoning(sheet, FairPeak.Motors(evidence), evidence.Fair, evidence.Options, seed)).SharesAdded(of);

    /// <summary>Logarithms of W/K by ruler and readings: mount × draw.</summary>
    internal static double[][] LogWPerK(MountSheet sheet, RaceEvidence evidence, long seed) => new Reckoning(sheet, FairPeak.Motors(evidence), evidence.Fair, evidence.Options, seed).Logs();

    /// <summary>Logarithms of W/K by the ruler alone: mount × draw.</summary>
    internal static double[][] LogWPerK(MountSheet sheet, int draws, long seed)
    {
        RandomStream chance = new(seed, 1);
        double[][] logs = [.. sheet.Mounts.Select(_ => new double[draws])];
        for (int i = 0; i < draws; i++)
        {
            MountChance shared = MountChance.Shared(chance);
            for (int m = 0; m < logs.Length; m++)
                logs[m][i] = Math.Log(MountHeat.Of(sheet, sheet.Mounts[m], shared.Drawn(chance)).TotalWPerK);
        }
        return logs;
    }

    private sealed class Reckoning(MountSheet sheet, IReadOnlyList<MotorDraw> motors, FairConditions fair, IReadOnlyList<string> driven, long seed)
    {
        private readonly double[][] _ruler = LogWPerK(sheet, Draws, seed), _logs = [.. sheet.Mounts.Select(_ => new double[Draws])];
        private readonly double[] _coreJPerK = Cores(sheet, seed);
        private readonly double[]?[] _together = new double[sheet.Mounts.Count][];
        private bool _contradicts;
        private int[] _taken = [.. Enumerable.Range(0, Draws)];
        private readonly int[] _place = [.. sheet.Mounts.Select(m => driven.ToList().FindIndex(o => string.Equals(o, m.Name, StringComparison.OrdinalIgnoreCase)))];

        public MountAnswer Answer()
        {
            double[][] found = Prepared();
            int mounts = sheet.Mounts.Count;
            int[] others = [.. Enumerable.Range(0, driven.Count).Where(o => !_place.Contains(o))];
            double[][] can = [.. Enumerable.Range(0, mounts + others.Length).Select(_ => new double[Draws])], winding = [.. can.Select(_ => new double[Draws])];
            int[] coolest = new int[can.Length];
            for (int i = 0; i < Draws; i++)
            {
                for (int k = 0; k < can.Length; k++)
                    (can[k][i], winding[k][i]) = FairPeak.Of(Motor(i), k < mounts ? Math.Exp(_logs[k][i]) / Core(i) : Motor(i).ConductancePerS[others[k - mounts]], fair);
                coolest[Enumerable.Range(0, can.Length).MinBy(k => can[k][i])]++;
            }
            int[] seen = [.. Enumerable.Range(0, can.Length).Where(k => k >= mounts || _place[k] >= 0)];
            int best = seen.Length == 0 ? 0 : seen.MinBy(k => can[k].Average());
            return new(sheet, fair,
                [.. sheet.Mounts.Select((m, k) => Prediction(k, found[k], can, winding, (double)coolest[k] / Draws, best))],
                [.. others.Select((o, k) => new DrivenOption(driven[o], Summary.Of(Found(o)), Summary.Of(can[mounts + k]), Summary.Of(winding[mounts + k]), (double)coolest[mounts + k] / Draws))],
                best < mounts ? sheet.Mounts[best].Name : driven[others[best - mounts]]);
        }

        // What was found of each mount by the readings alone, W/K; empty where it was not driven.
        private double[][] Prepared()
        {
            double[][] found = [.. _place.Select(place => place < 0 ? [] : Found(place))];
            WeighRuler(found);
            PutRight();
            return found;
        }

        public double[][] Logs()
        {
            Prepared();
            return _logs;
        }

        public double[][] SharesAdded(int of)
        {
            PutRight();
            return [.. _logs.Select(row => row.Zip(_logs[of], (log, reference) => Math.Exp(log - reference) - 1).ToArray())];
        }

        private MountPrediction Prediction(int k, double[] found, double[][] can, double[][] winding, double odds, int best)
        {
            Mount mount = sheet.Mounts[k];
            MountHeat middle = MountHeat.Of(sheet, mount, default);
            Summary? against = best == k ? null : Summary.Of([.. can[k].Zip(can[best], (a, b) => a - b)]);
            return new(mount, middle, Summary.Of([.. _logs[k].Select(Math.Exp)]), Summary.Of(can[k]), Summary.Of(winding[k]), odds, Costs(k, middle),
                found.Length == 0 ? null : Beside(_ruler[k], found, _together[k]), against);
        }

        private MountFound Beside(double[] ruler, double[] found, double[]? together)
        {
            Summary summary = Summary.Of(found);
            return new(Summary.Of([.. ruler.Select(Math.Exp)]), summary, together is null ? null : Summary.Of(together), _contradicts, (double)ruler.Count(log => Math.Exp(log) <= summary.Q50) / ruler.Length);
        }

        private List<MountCost> Costs(int k, MountHeat middle)
        {
            IEnumerable<MountLoss> losses = middle.Flow.Losses.Select(l => l.Where);
            if (sheet.Mounts[k].Shroud is { LeakM2: > 0 }) losses = losses.Append(MountLoss.Leak);
            return [.. losses.Select(loss => Cost(k, loss, MountHeat.Of(sheet, sheet.Mounts[k], default, loss).TotalWPerK - middle.TotalWPerK, middle.TotalWPerK))
                .Where(c => c.WPerK > 0.001).OrderByDescending(c => c.WPerK)];
        }

        private MountCost Cost(int k, MountLoss loss, double wPerK, double of)
        {
            int every = Draws / CostDraws;
            double cooler = Enumerable.Range(0, CostDraws).Select(i => i * every).Average(i =>
            {
                double now = Math.Exp(_logs[k][i]) / Core(i);
                return FairPeak.Of(Motor(i), now, fair).CanC - FairPeak.Of(Motor(i), now * (1 + wPerK / of), fair).CanC;
            });
            return new(loss, wPerK, cooler);
        }

        private MotorDraw Motor(int draw) => motors[_taken[draw] % motors.Count];

        private double Core(int draw) => _coreJPerK[_taken[draw]];

        // W/K of an option as the readings and the motor's mass have it.
        private double[] Found(int option) => [.. Enumerable.Range(0, Draws).Select(i => Motor(i).ConductancePerS[option] * Core(i))];

        // Each draw moved to agree with what was found of the mounts that were driven, as their shared doubts let it (Matheron's rule: exact where logarithms are normal). Those
        // that were driven are what they were found to be.
        private void PutRight()
        {
            int[] known = Known();
            for (int k = 0; k < _ruler.Length; k++) _ruler[k].CopyTo(_logs[k], 0);
            if (known.Length == 0) return;
            Matrix<double> covariance = Covariance();
            Matrix<double> gain = Matrix<double>.Build.Dense(_ruler.Length, known.Length, (u, a) => covariance[u, known[a]]) * Among(covariance, known).Inverse();
            double[][] found = [.. known.Select(k => Array.ConvertAll(Found(_place[k]), Math.Log))];
            RandomStream chance = new(seed, 3);
            Vector<double> off = Vector<double>.Build.Dense(known.Length);
            for (int i = 0; i < Draws; i++)
            {
                for (int a = 0; a < known.Length; a++) off[a] = found[a][i] - _ruler[known[a]][i] - MountPriors.MissedLogSd * chance.NextNormal();
                Vector<double> move = gain * off;
                for (int k = 0; k < _ruler.Length; k++) _logs[k][i] += move[k];
                for (int a = 0; a < known.Length; a++) _logs[known[a]][i] = found[a][i];
            }
        }

        // Draws of the motor taken as often as the ruler's word on the mounts that were driven has it: what was predicted of their differences is one more piece of evidence beside their readings. Of their
        // common level the ruler knows too little (heat by the plate is a guess): that stays with the readings.
        private void WeighRuler(double[][] found)
        {
            int[] known = Known();
            if (known.Length < 2) return;
            Matrix<double> against = Matrix<double>.Build.Dense(known.Length - 1, known.Length, (row, a) => a == 0 ? -1 : a == row + 1 ? 1 : 0), doubt = against * Among(Covariance(), known) * against.Transpose();
            Vector<double> ruler = against * Vector<double>.Build.Dense(known.Length, a => _ruler[known[a]].Average());
            Vector<double>[] off = [.. Enumerable.Range(0, Draws).Select(i => against * Vector<double>.Build.Dense(known.Length, a => Math.Log(found[known[a]][i])) - ruler)];
            Vector<double> mean = off.Aggregate((a, b) => a + b) / Draws;
            Matrix<double> spread = Matrix<double>.Build.Dense(mean.Count, mean.Count, (a, b) => off.Sum(o => (o[a] - mean[a]) * (o[b] - mean[b])) / (Draws - 1));
            _contradicts = 1 - ChiSquared.CDF(mean.Count, mean * (doubt + spread).Inverse() * mean) < LeastChance;
            if (_contradicts) return;
            Matrix<double> precision = doubt.Inverse();
            double[] weights = Resampling.Weights([.. off.Select(o => -0.5 * (o * precision * o))]);
            double sum = weights.Sum();
            if (sum * sum / weights.Sum(w => w * w) < LeastDraws) return;
            _taken = Resampling.Systematic(weights, Draws);
            foreach (int k in known) _together[k] = Found(_place[k]);
        }

        private int[] Known() => [.. Enumerable.Range(0, _ruler.Length).Where(k => _place[k] >= 0)];

        private Matrix<double> Covariance()
        {
            double[][] centred = [.. _ruler.Select(row => { double mean = row.Average(); return row.Select(v => v - mean).ToArray(); })];
            return Matrix<double>.Build.Dense(centred.Length, centred.Length, (a, b) => centred[a].Zip(centred[b], (x, y) => x * y).Sum() / (Draws - 1));
        }

        private static Matrix<double> Among(Matrix<double> covariance, int[] known) => Matrix<double>.Build.Dense(
            known.Length, known.Length, (a, b) => covariance[known[a], known[b]] + (a == b ? MountPriors.MissedLogSd * MountPriors.MissedLogSd : 0));

        private static double[] Cores(MountSheet sheet, long seed)
        {
            RandomStream chance = new(seed, 2);
            double middle = MotorScale.CoreJPerK * sheet.Can.MassKg / ReferenceMassKg;
            return [.. Enumerable.Range(0, Draws).Select(_ => middle * Math.Exp(ScaleLogSd * chance.NextNormal()))];
        }
    }
}
