using System.Numerics;
using Coolproof.Evidence.Model;
using Coolproof.Notebook;

namespace Coolproof.Evidence.Causes;

/// <summary>What the draws of a table say of why runs read what they read.</summary>
public sealed class CauseEvidence
{
    private const int MostDraws = 200;
    private readonly ReadingsTable _table;
    private readonly DayModel _model;
    private readonly double[][] _draws;

    internal CauseEvidence(Posterior posterior)
    {
        (_table, _model) = (posterior.Table, posterior.Fit.Model);
        int count = Math.Min(MostDraws, posterior.Draws.Count);
        _draws = [.. Enumerable.Range(0, count).Select(i => posterior.Draws[(int)((long)i * posterior.Draws.Count / count)])];
    }

    /// <summary>Whether a run's reading can be explained: a test or a race with a reading of can or endbell that counts.</summary>
    public static bool Explains(Run run) => run.Kind is RunKind.Test or RunKind.Race
        && run.Readings.Any(r => r.ExcludedBecause is null && r.ReadC is not null && r.Spot is Spot.Can or Spot.Endbell);

    /// <summary>Splits the difference in the first readings of two runs, or of the means over two sets of runs, into its causes: in each draw the Shapley values of the prediction.</summary>
    /// <param name="a">Places of the first runs in the table.</param>
    /// <param name="b">Places of the second runs.</param>
    /// <exception cref="ArgumentException">A run has no reading that can be explained.</exception>
    public RunDifference Between(IReadOnlyList<int> a, IReadOnlyList<int> b)
    {
        (int Run, int Reading)[] first = [.. a.Select(Found)], second = [.. b.Select(Found)];
        IReadOnlyList<(int A, int B, double Weight)> pairs = RunPairs.Of([.. first.Select(x => _model.Runs[x.Run].Option)], [.. second.Select(x => _model.Runs[x.Run].Option)]);
        double[][] parts = [.. Enum.GetValues<Cause>().Select(_ => new double[_draws.Length])];
        bool[] differs = new bool[parts.Length];
        foreach ((int i, int j, double weight) in pairs)
            Add(first[i], second[j], weight, parts, differs);
        differs[(int)Cause.Rest] = true;
        Discrepancy.Add(parts, differs);
        return new(first.Average(x => ShownC(x.Reading)), second.Average(x => ShownC(x.Reading)),
            [.. Enum.GetValues<Cause>().Where(c => differs[(int)c]).Select(c => new CausePart(c, Summaries.Of(parts[(int)c])))]);
    }

    private void Add((int Run, int Reading) a, (int Run, int Reading) b, double weight, double[][] parts, bool[] differs)
    {
        Cause[] players = Players(_model.Runs[a.Run], _model.Runs[b.Run]);
        DayDensity density = new(_model);
        FirstReadings readings = new(1 << players.Length);
        RunInputs[] inputs = new RunInputs[1 << players.Length];
        double[] predictedC = new double[inputs.Length], values = new double[players.Length];
        double readK = ShownC(a.Reading) - ShownC(b.Reading);
        for (int d = 0; d < _draws.Length; d++)
        {
            density.Visit(_draws[d]);
            RunInputs ofA = RunInputs.Of(density, _draws[d], a.Run, a.Reading, ShownC(a.Reading));
            inputs[0] = RunInputs.Of(density, _draws[d], b.Run, b.Reading, ShownC(b.Reading));
            // Bit i of a coalition: what belongs to player i is the first run's.
            for (int coalition = 1; coalition < inputs.Length; coalition++)
                inputs[coalition] = inputs[coalition & (coalition - 1)].With(players[BitOperations.TrailingZeroCount(coalition)], ofA);
            readings.Fill(density.Motor, _model.Ratios[_model.RollInRatio].Log(_draws[d]), inputs, predictedC);
            Shapley.Fill(predictedC, values);
            for (int i = 0; i < players.Length; i++)
                parts[(int)players[i]][d] += weight * values[i];
            parts[(int)Cause.Rest][d] += weight * (readK - (predictedC[^1] - predictedC[0]));
        }
        foreach (Cause player in players)
            differs[(int)player] = true;
    }

    private double ShownC(int reading) => _table.Runs[_model.Readings[reading].TableRun].Readings[_model.Readings[reading].TableReading].ReadC!.Value;

    private (int Run, int Reading) Found(int tableRun)
    {
        int run = Array.FindIndex(_model.Runs, r => r.TableRun == tableRun);
        int reading = run < 0 ? -1 : Array.FindIndex(_model.Readings, r => r.Run == run && r.On is ReadingOn.Can or ReadingOn.Endbell);
        return reading >= 0 ? (run, reading) : throw new ArgumentException($"Run {tableRun} of the table has no reading of can or endbell that counts.", nameof(tableRun));
    }

    // Air, warmth, reading and load are never the same.
    private static Cause[] Players(ModelRun a, ModelRun b)
    {
        bool HeatDiffers(HeatOf of) => !a.HeatTerms.Where(t => t.Of == of).SequenceEqual(b.HeatTerms.Where(t => t.Of == of));
        (Cause Cause, bool Differs)[] all =
        [
            (Cause.Air, true), (Cause.Warmth, true), (Cause.Length, a.DriveS != b.DriveS || a.LogDriven != b.LogDriven), (Cause.Driver, HeatDiffers(HeatOf.Driver)),
            (Cause.Surface, HeatDiffers(HeatOf.Surface)), (Cause.Gearing, HeatDiffers(HeatOf.Gearing)), (Cause.Timing, HeatDiffers(HeatOf.Timing)),
            (Cause.Day, a.Day != b.Day || a.DayPlace != b.DayPlace), (Cause.Option, a.Option != b.Option), (Cause.Mounting, a.Mounting != b.Mounting),
            (Cause.Reading, true), (Cause.Load, true),
        ];
        return [.. all.Where(p => p.Differs).Select(p => p.Cause)];
    }
}
