using Coolproof.Evidence.Model;

namespace Coolproof.Evidence.Causes;

/// <summary>What one run puts into the prediction of its first reading at one draw. Heat flows are over the core's heat capacity, warmth is K over the air.</summary>
internal record struct RunInputs
{
    /// <summary>Air, °C.</summary>
    public double AirC;

    /// <summary>Core and can over the air at go, K.</summary>
    public double Core, Can;

    /// <summary>Hard driving, s, and the log of the share that was driven.</summary>
    public double DriveS, LogDriven;

    /// <summary>Parts of log heat; the day's holds the mean.</summary>
    public double Driver, Surface, Gearing, Timing, DayHeat, Load;

    /// <summary>Parts of log conductance while driving; the option's holds the mean.</summary>
    public double DayConductance, OptionConductance, Mounting;

    /// <summary>The option, and logs of its stopped over driving conductance: at first, and once the fan is off (NaN where nothing is known of that).</summary>
    public int Option;

    /// <inheritdoc cref="Option"/>
    public double Stopped, Still;

    /// <summary>Roll-in, from halt to the reading, and from halt to the fan's stop (NaN where the reading was before, or the fan ran on), s.</summary>
    public double RollInS, DelayS, FanStopsS;

    /// <summary>The gun: gain, offset (K), mean aim loss as a share, spot over can, and what the display showed more than counts (K).</summary>
    public double Gain, OffsetK, Loss, Spot, UndoneK;

    /// <summary>The inputs of a run at the point that a density visited last.</summary>
    /// <param name="density">The density.</param>
    /// <param name="u">The point.</param>
    /// <param name="r">The run.</param>
    /// <param name="first">Its first reading of the can.</param>
    /// <param name="shownC">What the display showed, °C.</param>
    public static RunInputs Of(DayDensity density, ReadOnlySpan<double> u, int r, int first, double shownC)
    {
        DayModel model = density.Model;
        ModelRun run = model.Runs[r];
        DayEntry day = model.Days[run.Day];
        ModelReading reading = model.Readings[first];
        RunState s = density.States[r];
        (double offset, double aim, _) = density.Guns[reading.Instrument];
        return new()
        {
            AirC = s.Air,
            Core = s.Start1,
            Can = s.Start2,
            DriveS = run.DriveS,
            LogDriven = run.LogDriven,
            Driver = LogHeat(run, u, HeatOf.Driver),
            Surface = LogHeat(run, u, HeatOf.Surface),
            Gearing = LogHeat(run, u, HeatOf.Gearing),
            Timing = LogHeat(run, u, HeatOf.Timing),
            DayHeat = density.Motor.LogHeat + density.Deviation(day.Heat) + Priors.TrendSd * run.DayPlace * u[day.Trend],
            Load = s.Deviation,
            DayConductance = Priors.DayConductanceSd * u[day.Conductance],
            OptionConductance = density.Motor.LogConductance + density.Deviation(model.OptionEffect[run.Option]),
            Mounting = density.Deviation(run.Mounting),
            Option = run.Option,
            Stopped = model.Ratios[run.RatioEntry].Log(u),
            Still = run.FanOffEntry < 0 ? double.NaN : model.Ratios[run.FanOffEntry].Log(u),
            RollInS = density.RollIn(r),
            DelayS = density.Seen[first].Delay,
            FanStopsS = reading.FromFanStop ? run.FanStopsS : double.NaN,
            Gain = density.Gain(reading.Gain),
            OffsetK = offset,
            Loss = aim * reading.MaxFactor,
            Spot = reading.EndbellEntry < 0 ? 1 : density.Endbell(reading.EndbellEntry),
            UndoneK = shownC - reading.ValueC,
        };
    }

    /// <summary>The same with what belongs to one cause taken from another run. With the same option on both, the fan after the stop goes with the reading.</summary>
    public readonly RunInputs With(Cause cause, in RunInputs a)
    {
        RunInputs x = this;
        switch (cause)
        {
            case Cause.Air: x.AirC = a.AirC; break;
            case Cause.Warmth: (x.Core, x.Can) = (a.Core, a.Can); break;
            case Cause.Length: (x.DriveS, x.LogDriven) = (a.DriveS, a.LogDriven); break;
            case Cause.Driver: x.Driver = a.Driver; break;
            case Cause.Surface: x.Surface = a.Surface; break;
            case Cause.Gearing: x.Gearing = a.Gearing; break;
            case Cause.Timing: x.Timing = a.Timing; break;
            case Cause.Day: (x.DayHeat, x.DayConductance) = (a.DayHeat, a.DayConductance); break;
            case Cause.Option: (x.Option, x.OptionConductance, x.Stopped, x.Still) = (a.Option, a.OptionConductance, a.Stopped, a.Still); break;
            case Cause.Mounting: x.Mounting = a.Mounting; break;
            case Cause.Load: x.Load = a.Load; break;
            case Cause.Reading:
                (x.RollInS, x.DelayS, x.FanStopsS) = (a.RollInS, a.DelayS, a.FanStopsS);
                (x.Gain, x.OffsetK, x.Loss, x.Spot, x.UndoneK) = (a.Gain, a.OffsetK, a.Loss, a.Spot, a.UndoneK);
                if (x.Option == a.Option)
                    (x.Stopped, x.Still) = (a.Stopped, a.Still);
                break;
            default: throw new ArgumentOutOfRangeException(nameof(cause), cause, "Only what goes into the prediction can be taken from another run.");
        }
        return x;
    }

    private static double LogHeat(ModelRun run, ReadOnlySpan<double> u, HeatOf of)
    {
        double sum = 0;
        foreach (HeatTerm term in run.HeatTerms)
            sum += term.Of != of ? 0 : term.Parameter < 0 ? term.Factor : term.Factor * u[term.Parameter];
        return sum;
    }
}
