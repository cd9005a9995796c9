using System.Runtime.CompilerServices;
using Coolproof.Evidence.Model;
using Coolproof.Notebook;

namespace Coolproof.Evidence.Curves;

/// <summary>One run's draws.</summary>
internal sealed class RunTally
{
    private readonly DayModel _model;
    private readonly int _run, _draws;
    private readonly RunGrid _grid;
    private readonly double[] _air;
    private readonly double[][] _can, _winding;
    private readonly ReadingTally[] _readings;
    private readonly WindingTally[] _windings;
    private double _warmth, _deviation, _standardised;

    /// <summary>Room for a run's draws.</summary>
    public RunTally(DayModel model, int run, RunGrid grid, int draws)
    {
        (_model, _run, _grid, _draws) = (model, run, grid, draws);
        _air = new double[draws];
        _can = [.. grid.Seconds.Select(_ => new double[draws])];
        _winding = [.. grid.Seconds.Select(_ => new double[draws])];
        ModelRun places = model.Runs[run];
        ILookup<bool, int> onCan = Enumerable.Range(places.FirstReading, places.EndReading - places.FirstReading).ToLookup(i => ReadingTally.Takes(model.Readings[i]));
        _readings = [.. onCan[true].Select(i => new ReadingTally(model, i))];
        _windings = [.. onCan[false].Select(i => new WindingTally(model, i))];
    }

    /// <summary>Adds the draw that <paramref name="density"/> visited last.</summary>
    /// <param name="draw">Its number.</param>
    /// <param name="density">The density.</param>
    /// <param name="after">The steps taken there.</param>
    /// <param name="place">The run's place in <paramref name="after"/>.</param>
    /// <param name="heatSpread">Log-sd of heat from run to run there.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Add(int draw, DayDensity density, AfterStop after, int place, double heatSpread)
    {
        ref readonly RunState s = ref density.States[_run];
        _air[draw] = s.Air;
        for (int i = 0; i < RunGrid.Points; i++)
        {
            (double can, double winding) = after.Read(density, place, i);
            (_can[i][draw], _winding[i][draw]) = (s.Air + can, s.Air + winding);
        }
        _warmth += after.Warmth(density, place);
        _deviation += s.Deviation;
        _standardised += s.Deviation / (_model.Runs[_run].HeatFactor * heatSpread);
        foreach (ReadingTally reading in _readings)
            reading.Add(density);
        foreach (WindingTally winding in _windings)
            winding.Add(density);
    }

    /// <summary>The run over all its draws.</summary>
    public RunCurve Curve(Posterior posterior, TypicalTimes times)
    {
        ModelRun model = _model.Runs[_run];
        Run noted = posterior.Table.Runs[model.TableRun];
        Summary air = Summaries.Of(_air);
        double ambientK = posterior.Fair.AmbientC - air.Mean, warmthK = -_warmth / _draws;
        return new(noted.Day, noted.Name, _model.Options[model.Option], air, _grid.Seconds,
            [.. _can.Select(c => Summaries.Of(c))], [.. _winding.Select(w => Summaries.Of(w))],
            [.. _readings.Select(r => r.Corrected(posterior.Table, times.DelayS[r.Index], _draws, ambientK, warmthK))], Outlier(posterior.Table))
        {
            WindingReadings = [.. _windings.Select(w => w.BroughtBack(posterior.Table, times, _draws))],
        };
    }

    // A void run's or a warm-up's heat may be anything.
    private string? Outlier(ReadingsTable table)
    {
        ModelRun model = _model.Runs[_run];
        string?[] reasons = [
            model.OwnHeatSd > 0 ? null : Misfit.OfHeat(_deviation / _draws, _standardised / _draws),
            .. _readings.Select(r => Misfit.OfReading(r.WideProbability(_draws), r.AboveK(_draws), r.Reading.TableReading + 1, r.Noted(table).Line,
                alone: model.EndReading - model.FirstReading == 1))];
        string said = string.Join("; ", reasons.OfType<string>());
        return said.Length > 0 ? said : null;
    }
}
