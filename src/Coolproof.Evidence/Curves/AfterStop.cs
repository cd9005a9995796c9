using System.Runtime.CompilerServices;
using Coolproof.Evidence.Model;

namespace Coolproof.Evidence.Curves;

/// <summary>
/// Can and winding of some runs over their grids at one point of the parameters, by the density's own steps: rolling in, stopped, and with the fan off
/// once the power is. Where the roll-in is not known it is drawn out to its median, so that the first instant is the end of hard driving in every draw.
/// </summary>
internal sealed class AfterStop
{
    // A run's steps: its drive, then one from the state before each instant.
    private const int Stride = RunGrid.Points + 1;
    private readonly DayModel _model;
    private readonly (int Run, RunGrid Grid)[] _runs;
    private readonly TwoNodeKernel _kernel;

    /// <summary>Room for runs of a model, each with its grid.</summary>
    public AfterStop(DayModel model, (int Run, RunGrid Grid)[] runs)
    {
        (_model, _runs, _kernel) = (model, runs, new(runs.Length * Stride));
        for (int k = 0; k < runs.Length; k++)
        {
            ModelRun run = model.Runs[runs[k].Run];
            _kernel.Seconds[k * Stride] = run.DriveS;
            for (int i = 0; i < RunGrid.Points; i++)
            {
                double t = runs[k].Grid.Seconds[i];
                _kernel.Releases[At(k, i)] = 1;
                _kernel.Seconds[At(k, i)] = t > run.FanStopsS ? t - run.FanStopsS : Math.Max(t, 0);
            }
        }
    }

    /// <summary>Grid of the k-th run.</summary>
    public RunGrid Grid(int k) => _runs[k].Grid;

    /// <summary>Takes all steps at the point that <paramref name="density"/> visited last.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Step(DayDensity density, ReadOnlySpan<double> u)
    {
        double logRho = Math.Log(density.Motor.Rho), rolling = _model.Ratios[_model.RollInRatio].Log(u);
        for (int k = 0; k < _runs.Length; k++)
        {
            (int r, RunGrid grid) = _runs[k];
            ModelRun run = _model.Runs[r];
            double driving = density.States[r].LogG + logRho, stopped = driving + _model.Ratios[run.RatioEntry].Log(u);
            double still = run.FanOffEntry < 0 ? stopped : driving + _model.Ratios[run.FanOffEntry].Log(u), rollInS = run.RollIn < 0 ? run.RollInS : Math.Exp(u[run.RollIn]);
            _kernel.LogGamma[k * Stride] = driving;
            _kernel.Feedback[k * Stride] = Priors.Alpha25 * density.States[r].MeanCopper;
            for (int i = 0; i < RunGrid.Points; i++)
            {
                if (i < grid.Halt)
                    _kernel.Seconds[At(k, i)] = grid.RolledPart(i) * rollInS;
                _kernel.LogGamma[At(k, i)] = i < grid.Halt ? driving + rolling : grid.Seconds[i] > run.FanStopsS ? still : stopped;
            }
        }
        _kernel.Forward(density.Motor.Kappa, density.Motor.Rho, density.Motor.Nu);
    }

    /// <summary>Can and winding of the k-th run at an instant of its grid, K over the run's air.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public (double Can, double Winding) Read(DayDensity density, int k, int point)
    {
        (int r, RunGrid grid) = _runs[k];
        ref readonly RunState s = ref density.States[r];
        (double x1, double x2, double excess) = point < grid.Halt ? (s.End1, s.End2, s.EndExcess)
            : grid.Seconds[point] > _model.Runs[r].FanStopsS ? (s.Still1, s.Still2, s.StillExcess) : (s.Halt1, s.Halt2, s.HaltExcess);
        int q = At(k, point);
        double w = excess / density.Motor.Slot, core = _kernel.E11[q] * x1 + _kernel.E12[q] * x2 + w * _kernel.F1[q], can = _kernel.E21[q] * x1 + _kernel.E22[q] * x2 + w * _kernel.F2[q];
        return (can, density.Motor.Winding(core, can, excess * _kernel.Decay[q], s.EndExcess));
    }

    /// <summary>
    /// What the k-th run's can has at the end of hard driving because core and can were over the air at go, K. The winding's first warmth, which grows with
    /// a warm core, is taken along; the heat of the drive is not.
    /// </summary>
    public double Warmth(DayDensity density, int k)
    {
        ref readonly RunState s = ref density.States[_runs[k].Run];
        double taken = density.Motor.Share * density.Motor.Slot * s.Copper * Priors.Alpha25;
        return _kernel.E21[k * Stride] * s.Start1 * (1 - taken) + _kernel.E22[k * Stride] * s.Start2;
    }

    private static int At(int k, int point) => k * Stride + 1 + point;
}
