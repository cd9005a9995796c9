namespace Coolproof.Evidence.Model;

internal sealed partial class DayDensity
{
    // The adjoint of Forward, in reverse order. A name ending in Bar is the derivative of the log density by that quantity.
    private void Backward(ReadOnlySpan<double> u, Span<double> gradient)
    {
        _cBar = default;
        Array.Clear(_bars);
        Array.Clear(_valueBar);
        Array.Clear(_ratioBar);
        Array.Clear(_gainBar);
        Array.Clear(_gunBars);
        Array.Clear(_endbellBar);
        _adjoint.Clear();
        ReadingsBackward();
        for (int r = _states.Length - 1; r >= 0; r--)
            ChainBackward(u, gradient, r);
        (double kappa, double rho, double nu) = _kernel.Backward(_c.Kappa, _c.Rho, _c.Nu, _adjoint);
        _cBar.Kappa += kappa;
        _cBar.Rho += rho;
        _cBar.Slot -= nu * _c.Nu / _c.Slot;
        _cBar.Share -= nu * _c.Nu / _c.Share;
        for (int r = 0; r < _states.Length; r++)
            InputsBackward(gradient, r);
        DelaysBackward(gradient);
        Repack(u, gradient);
        DeviationsBackward(gradient);
    }

    private void ReadingsBackward()
    {
        int gun = 0;
        for (int i = 0; i < _seen.Length; i++)
        {
            ModelReading reading = _model.Readings[i];
            ref ReadingState seen = ref _seen[i];
            ref RunAdjoint run = ref _bars[reading.Run];
            int q = reading.Step;
            double coreBar = 0, canBar, meanBar, excessBar = 0;
            if (IsGun(reading))
            {
                meanBar = _likelihood.ByShortfall[gun];
                double lossBar = _likelihood.ByLoss[gun], gain = _gain[reading.Gain];
                double factor = reading.EndbellEntry < 0 ? 1 : _endbell[reading.EndbellEntry], body = seen.Can * factor;
                double bodyBar = meanBar * gain + lossBar * seen.Loss * body / (body * body + 1);
                ref (double Offset, double Aim, double Scatter) bars = ref _gunBars[reading.Instrument];
                bars.Offset += meanBar;
                bars.Aim += lossBar * seen.Loss;
                bars.Scatter += _likelihood.ByScatter[gun++];
                _gainBar[reading.Gain] += meanBar * gain * body;
                if (reading.EndbellEntry >= 0)
                    _endbellBar[reading.EndbellEntry] += bodyBar * body;
                canBar = bodyBar * factor;
            }
            else
            {
                double sd = WindingSd(reading);
                meanBar = -(seen.Mean - reading.ValueC) / (sd * sd);
                (coreBar, canBar, excessBar) = WindingBackward(i, meanBar, ref run);
            }
            run.Air += meanBar;
            ref RunState s = ref _states[reading.Run];
            if (reading.FromFanStop)
                StepBackward(q, coreBar, canBar, excessBar, s.Still1, s.Still2, s.StillExcess, ref run.Still1, ref run.Still2, ref run.StillExcess);
            else
                StepBackward(q, coreBar, canBar, excessBar, s.Halt1, s.Halt2, s.HaltExcess, ref run.Halt1, ref run.Halt2, ref run.HaltExcess);
        }
    }

    // Adjoint of the winding over air: bars of core, can and excess.
    private (double Core, double Can, double Excess) WindingBackward(int i, double bar, ref RunAdjoint run)
    {
        ModelReading reading = _model.Readings[i];
        ref RunState s = ref _states[reading.Run];
        double alone = Constants.LeftAlone((reading.FromFanStop ? s.StillExcess : s.HaltExcess) * _kernel.Decay[reading.Step], s.EndExcess), power = 1 / (1 - _c.Share), left = _c.ExcessLeft(alone);
        double tau = _c.Share * _c.Slot, lag = _c.Kappa * tau, apart = _seen[i].Core - _seen[i].Can;
        double lagBar = bar * apart * (1 - left), leftBar = bar * (s.EndExcess - lag * apart), aloneBar = leftBar * power * left / alone;
        _cBar.Kappa += lagBar * tau;
        _cBar.Slot += lagBar * _c.Kappa * _c.Share;
        _cBar.Share += lagBar * _c.Kappa * _c.Slot + leftBar * left * Math.Log(alone) * power * power;
        run.EndExcess += bar * left - aloneBar * alone / s.EndExcess;
        return (bar * (1 + lag * (1 - left)), -bar * lag * (1 - left), aloneBar / s.EndExcess);
    }

    // Adjoint of x' = E x + (e/Slot) F, e' = e Decay.
    private void StepBackward(int q, double bar1, double bar2, double excessBar, double x1, double x2, double e, ref double x1Bar, ref double x2Bar, ref double eBar)
    {
        TwoNodeKernel k = _kernel;
        double perSlot = _c.PerSlot, w = e * perSlot, wBar = bar1 * k.F1[q] + bar2 * k.F2[q];
        _adjoint.E11[q] = bar1 * x1;
        _adjoint.E12[q] = bar1 * x2;
        _adjoint.E21[q] = bar2 * x1;
        _adjoint.E22[q] = bar2 * x2;
        _adjoint.F1[q] = bar1 * w;
        _adjoint.F2[q] = bar2 * w;
        _adjoint.Decay[q] = excessBar * e;
        x1Bar += k.E11[q] * bar1 + k.E21[q] * bar2;
        x2Bar += k.E12[q] * bar1 + k.E22[q] * bar2;
        eBar += wBar * perSlot + excessBar * k.Decay[q];
        _cBar.Slot -= wBar * w * perSlot;
    }

    private void ChainBackward(ReadOnlySpan<double> u, Span<double> gradient, int r)
    {
        ModelRun run = _model.Runs[r];
        ref RunState s = ref _states[r];
        ref RunAdjoint b = ref _bars[r];
        if (run.FanStopStep >= 0)
            StepBackward(run.FanStopStep, b.Still1, b.Still2, b.StillExcess, s.Halt1, s.Halt2, s.HaltExcess, ref b.Halt1, ref b.Halt2, ref b.HaltExcess);
        StepBackward(run.RollStep, b.Halt1, b.Halt2, b.HaltExcess, s.End1, s.End2, s.EndExcess, ref b.End1, ref b.End2, ref b.EndExcess);
        double alpha = Priors.Alpha25, hot = s.Warm + alpha * s.End1;
        b.Copper += b.EndExcess * _c.Slot * hot;
        _cBar.Slot += b.EndExcess * s.Copper * hot;
        b.Warm += b.EndExcess * _c.Slot * s.Copper;
        b.End1 += b.EndExcess * _c.Slot * s.Copper * alpha;
        DriveBackward(run.DriveStep, ref s, ref b);
        double taken = _c.Share * _c.Slot * s.Copper, cold = s.Warm + alpha * s.Start1;
        b.Start1 += b.Go1 * (1 - taken * alpha);
        b.Warm -= b.Go1 * taken;
        b.Copper -= b.Go1 * _c.Share * _c.Slot * cold;
        _cBar.Slot -= b.Go1 * _c.Share * s.Copper * cold;
        _cBar.Share -= b.Go1 * _c.Slot * s.Copper * cold;
        HeatBackward(u, gradient, r, ref s, ref b);
        StartBackward(gradient, r, ref s, ref b);
    }

    private void DriveBackward(int q, ref RunState s, ref RunAdjoint b)
    {
        TwoNodeKernel k = _kernel;
        _adjoint.E11[q] = b.End1 * s.Go1;
        _adjoint.E12[q] = b.End1 * s.Start2;
        _adjoint.E21[q] = b.End2 * s.Go1;
        _adjoint.E22[q] = b.End2 * s.Start2;
        _adjoint.F1[q] = b.End1 * s.Drive;
        _adjoint.F2[q] = b.End2 * s.Drive;
        b.Go1 += k.E11[q] * b.End1 + k.E21[q] * b.End2;
        b.Start2 += k.E12[q] * b.End1 + k.E22[q] * b.End2;
        b.Drive += k.F1[q] * b.End1 + k.F2[q] * b.End2;
    }

    private void StartBackward(Span<double> gradient, int r, ref RunState s, ref RunAdjoint b)
    {
        ModelRun run = _model.Runs[r];
        bool noted = !double.IsNaN(run.StartC);
        if (run.Start == StartMode.Chained)
        {
            ref RunState before = ref _states[r - 1];
            ref RunAdjoint beforeBar = ref _bars[r - 1];
            if (noted)
            {
                double missBar = -(s.Start2 + s.Air - run.StartC) / (Priors.StartNotedSd * Priors.StartNotedSd);
                b.Start2 += missBar;
                b.Air += missBar;
            }
            double bar1 = 0, bar2 = 0;
            StepBackward(run.RestStep, b.Start1, b.Start2, 0, s.Before1, s.Before2, before.HaltExcess, ref bar1, ref bar2, ref beforeBar.HaltExcess);
            beforeBar.Halt1 += bar1;
            beforeBar.Halt2 += bar2;
            beforeBar.Air += bar1 + bar2;
            b.Air -= bar1 + bar2;
            return;
        }
        bool unclocked = run.Start == StartMode.Unclocked;
        double canBar = b.Start2 + (unclocked || noted ? b.Start1 : 0);
        gradient[run.StartCore] += b.Start1 * (unclocked ? s.CoreSlope : Priors.FirstRunSd);
        gradient[run.StartCan] += canBar * (noted ? Priors.StartNotedSd : unclocked ? Priors.StartUnknownSd : Priors.FirstRunSd);
        if (noted)
            b.Air -= canBar;
    }

    private void InputsBackward(Span<double> gradient, int r)
    {
        ModelRun run = _model.Runs[r];
        ref RunState s = ref _states[r];
        ref RunAdjoint b = ref _bars[r];
        double logGBar = GammaBackward(gradient, run);
        b.MeanCopper += Priors.Alpha25 * _adjoint.Feedback[run.DriveStep];
        double perHeat = s.MeanCopper + s.CopperByLogSlot;
        _cBar.Slot += b.MeanCopper * s.CopperByLogSlot * _c.PerSlot;
        _cBar.Copper += b.MeanCopper * perHeat / _c.Copper;
        double logPBar = b.MeanLogP + b.MeanCopper * perHeat;
        DayEntry day = _model.Days[run.Day];
        double airBar = b.Air + b.Warm * Priors.Alpha25;
        gradient[day.Air] += airBar * day.AirSd;
        gradient[run.Air] += airBar * run.AirSd;
        _cBar.LogConductance += logGBar;
        _valueBar[_model.OptionEffect[run.Option]] += logGBar;
        _valueBar[run.Mounting] += logGBar;
        gradient[day.Conductance] += logGBar * Priors.DayConductanceSd;
        _cBar.LogHeat += logPBar;
        _valueBar[day.Heat] += logPBar;
        gradient[day.Trend] += logPBar * Priors.TrendSd * run.DayPlace;
        foreach ((int parameter, double factor, _) in run.HeatTerms)
            if (parameter >= 0)
                gradient[parameter] += logPBar * factor;
    }

    private double GammaBackward(Span<double> gradient, ModelRun run)
    {
        double drive = _adjoint.LogGamma[run.DriveStep], roll = _adjoint.LogGamma[run.RollStep], rest = 0, stopped = 0, still = 0;
        _ratioBar[_model.RollInRatio] += roll;
        if (run.RollIn >= 0)
            gradient[run.RollIn] += _adjoint.Seconds[run.RollStep] * _kernel.Seconds[run.RollStep];
        if (run.RestStep >= 0)
        {
            rest = _adjoint.LogGamma[run.RestStep];
            gradient[run.Rest] += rest * Priors.Resting.Sd;
        }
        if (run.FanStopStep >= 0)
            stopped += _adjoint.LogGamma[run.FanStopStep];
        for (int i = run.FirstReading; i < run.EndReading; i++)
        {
            ModelReading reading = _model.Readings[i];
            _seen[i].DelayBar += _adjoint.Seconds[reading.Step];
            if (reading.FromFanStop)
                still += _adjoint.LogGamma[reading.Step];
            else
                stopped += _adjoint.LogGamma[reading.Step];
        }
        _ratioBar[run.RatioEntry] += stopped;
        if (run.FanOffEntry >= 0)
            _ratioBar[run.FanOffEntry] += still;
        double sum = drive + roll + rest + stopped + still;
        _cBar.Rho += sum * _c.PerRho;
        return sum;
    }

    // Adds to the gradient of the charge relation; returns the derivative by log heat.
    private double ChargeBackward(ReadOnlySpan<double> u, Span<double> gradient, ModelRun run, double logP)
    {
        if (_model.Charge is not { } charge || double.IsNaN(run.ChargeRate))
            return 0;
        double miss = ChargeMiss(u, charge, run, logP), precision = 1 / Square(_chargeSpread), bar = -miss * precision;
        gradient[charge.Spread] += (miss * miss * precision - 1) * ChargeSlope(charge);
        gradient[charge.Packs[run.Pack]] -= bar * Priors.ChargeConstantSd;
        gradient[charge.Exponent] += Priors.ChargeExponent.Sd * (1 / Exponent(u, charge) - bar * run.ChargeRate);
        _cBar.DrivenHeat -= bar;
        return bar;
    }

    // Derivative of the log of the charge relation's whole sd by the parameter of its unknown part.
    private double ChargeSlope(ChargeEntry charge) => (1 - Square(Priors.ChargeFloor / _chargeSpread)) * _logSlope[charge.Spread];

    // From mean heat and the mean of the days driven to their parameters, with their priors.
    private void MeanHeatBackward(ReadOnlySpan<double> u, Span<double> gradient)
    {
        double drivenBar = _cBar.LogHeat + _cBar.DrivenHeat - _heatMiss / Priors.Heat.Sd;
        gradient[Global.Heat] += drivenBar * Priors.Heat.Sd;
        if (_level is not null)
            ShiftBackward(drivenBar);
        double dayMeanBar = _heatMiss / Priors.Heat.Sd - _cBar.LogHeat;
        foreach (int pack in _model.Charge?.Packs ?? [])
        {
            double miss = PackMiss(u, pack);
            gradient[pack] -= miss;
            dayMeanBar -= miss / Priors.ChargeConstantSd;
        }
        for (int d = 0; d < _dayShare.Length; d++)
            _valueBar[_model.Days[d].Heat] += dayMeanBar * _dayShare[d];
    }

    // Mean heat stands for what a typical run's rise asks: from its log to what that depends on.
    private void ShiftBackward(double bar)
    {
        MeanLevel level = _model.Level!;
        (double logG, double roll, double stopped) = _level!.Backward(_c, -bar, ref _cBar);
        _cBar.LogConductance += logG;
        for (int o = 0; o < level.Options.Length; o++)
            _valueBar[_model.OptionEffect[o]] += logG * level.Options[o];
        _ratioBar[_model.RollInRatio] += roll;
        for (int i = 0; i < level.Ratios.Length; i++)
            _ratioBar[i] += stopped * level.Ratios[i];
    }

    private void DelaysBackward(Span<double> gradient)
    {
        for (int i = _seen.Length - 1; i >= 0; i--)
        {
            ModelReading reading = _model.Readings[i];
            if (reading.Gap < 0)
                continue;
            ref ReadingState seen = ref _seen[i];
            double fromBar = seen.DelayBar;
            if (double.IsNaN(reading.Before))
            {
                gradient[reading.Gap] += seen.DelayBar * seen.Gap;
            }
            else
            {
                Parameter p = _model.Parameters[reading.Gap];
                double gapBar = seen.DelayBar + p.A / seen.Gap - p.A / p.B;
                gradient[reading.Gap] = gapBar * seen.Gap * (1 - seen.Logistic) - seen.Logistic;
                fromBar -= gapBar * seen.Logistic;
            }
            if (reading.After >= 0)
                _seen[reading.After].DelayBar += fromBar;
        }
    }

    private void Repack(ReadOnlySpan<double> u, Span<double> gradient)
    {
        MeanHeatBackward(u, gradient);
        gradient[Global.CoreOverCan] += _cBar.Rho * _c.Rho * Priors.CoreOverCan.Sd;
        gradient[Global.CoreToCan] += _cBar.Kappa * _c.Kappa * Priors.CoreToCan.Sd;
        gradient[Global.WindingShare] += _cBar.Share * _c.Share * Priors.WindingShare.Sd;
        gradient[Global.Slot] += _cBar.Slot * _c.Slot * Priors.Slot.Sd;
        gradient[Global.CopperShare] += _cBar.Copper * _c.Copper * (1 - _c.Copper);
        gradient[Global.Conductance] += _cBar.LogConductance * Priors.Conductance.Sd;
        for (int i = 0; i < _ratio.Length; i++)
        {
            RatioEntry e = _model.Ratios[i];
            if (e.Common >= 0)
                gradient[e.Common] += _ratioBar[i] * e.CommonSd;
            if (e.Own >= 0)
                gradient[e.Own] += _ratioBar[i] * e.OwnSd;
        }
        for (int i = 0; i < _gain.Length; i++)
        {
            GainEntry e = _model.Gains[i];
            gradient[e.Parameter] += _gainBar[i] * e.Prior.Sd;
            gradient[e.Offset] += _gainBar[i] * e.Tilt;
        }
        for (int i = 0; i < _guns.Length; i++)
        {
            InstrumentEntry e = _model.Instruments[i];
            gradient[e.Offset] += _gunBars[i].Offset * e.OffsetSdK;
            gradient[e.LogAim] += _gunBars[i].Aim * Priors.AimLoss.Sd;
            gradient[e.Scatter] += _gunBars[i].Scatter * (_guns[i].Scatter - Square(Priors.ScatterFloor) / _guns[i].Scatter) * _logSlope[e.Scatter];
        }
        for (int i = 0; i < _endbell.Length; i++)
        {
            gradient[_model.Endbells[i].Common] += _endbellBar[i] * Priors.Endbell.Sd;
            gradient[_model.Endbells[i].Own] += _endbellBar[i] * Priors.EndbellOptionSd;
        }
    }
}
