using Coolproof.Evidence.Forecasts;
using Coolproof.Thermal;

namespace Coolproof.Advice.Gearing;

/// <summary>The laps of every pinion and timing within a card.</summary>
internal sealed class LapGrid
{
    private readonly LapSurface _driven;
    private readonly LapSurface[] _laps;
    private readonly LapSurface[] _atDrivenTiming;
    private readonly (LapSurface Low, LapSurface High) _geared, _timed;

    private LapGrid(LapSurface drivenLap, GearChoice[] choices, LapSurface[] laps, LapSurface[] atDrivenTiming, GearSpan span, (LapSurface, LapSurface) geared, (LapSurface, LapSurface) timed) =>
        (_driven, Choices, _laps, _atDrivenTiming, Span, _geared, _timed) = (drivenLap, choices, laps, atDrivenTiming, span, geared, timed);

    /// <summary>Pinions and timings that can be driven.</summary>
    public IReadOnlyList<GearChoice> Choices { get; }

    /// <summary>Gearings and timings that the lap's slopes are taken across.</summary>
    public GearSpan Span { get; }

    /// <summary>Drives them.</summary>
    /// <param name="belief">What is believed of the lap.</param>
    /// <param name="card">What is allowed.</param>
    /// <param name="span">Gearings and timings that its slopes are asked for across.</param>
    /// <param name="progress">Told the share of the work that is done.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="LapException">None can be driven.</exception>
    public static LapGrid Of(LapBelief belief, GearCard card, GearSpan span, IProgress<double> progress, CancellationToken cancel)
    {
        GearChoice driven = belief.Rig.Driven;
        IReadOnlyList<int> pinions = card.Pinions(belief.Rig.InternalRatio);
        double[] timings = [.. card.Timings().Append(driven.TimingDeg).Distinct()];
        GearChoice[] all = [.. pinions.SelectMany(p => timings.Select(t => new GearChoice(p, card.Spur, t))).Append(driven).Concat(span.All).Distinct()];
        LapSurface?[] surfaces = new LapSurface?[all.Length];
        int done = 0;
        Parallel.For(0, all.Length, new ParallelOptions { CancellationToken = cancel }, i =>
        {
            surfaces[i] = LapSurface.Of(belief, all[i]);
            progress.Report((double)Interlocked.Increment(ref done) / all.Length);
        });
        Dictionary<GearChoice, LapSurface> drivable = all.Zip(surfaces).Where(one => one.Second is not null).ToDictionary(one => one.First, one => one.Second!);
        if (!drivable.TryGetValue(driven, out LapSurface? drivenLap))
            throw new LapException("the lap can't be driven with the gearing that the runs were driven with: look at the lap's lengths and radii, the motor's figures and the gears.");
        GearChoice[] choices = [.. pinions.SelectMany(p => card.Timings().Select(t => new GearChoice(p, card.Spur, t))).Where(c => drivable.ContainsKey(c) && drivable.ContainsKey(c with { TimingDeg = driven.TimingDeg }))];
        if (choices.Length == 0)
            throw new LapException("no pinion and timing within the card gets the car round the lap: look at the motor's figures, the spur and the internal ratio.");
        span = span.Where(drivable.ContainsKey, driven);
        return new(drivenLap, choices, [.. choices.Select(c => drivable[c])], [.. choices.Select(c => drivable[c with { TimingDeg = driven.TimingDeg }])],
            span, (drivable[span.Low], drivable[span.High]), (drivable[span.Least], drivable[span.Most]));
    }

    /// <summary>The lap of a choice at a point of what is believed.</summary>
    public LapFigures At(int choice, double[] z) => _laps[choice].At(z);

    /// <summary>The lap as the notebook's runs were driven.</summary>
    public LapFigures Driven(double[] z) => _driven.At(z);

    /// <summary>Heat over the notebook's, choice × draw.</summary>
    /// <param name="z">A point of what is believed for each draw.</param>
    /// <param name="trust">Trust in the lap for each draw.</param>
    public RaceHeat[][] Heats(double[][] z, LapTrust trust) => [.. Choices.Select((_, c) => z.Select((at, d) => Heat(c, at, d, trust)).ToArray())];

    /// <summary>Heat of a choice over the notebook's in one draw.</summary>
    public RaceHeat Heat(int choice, double[] z, int draw, LapTrust trust) => trust.Heat(draw, _driven.At(z), _atDrivenTiming[choice].At(z), _laps[choice].At(z));

    /// <summary>The lap's own slopes of log heat against log of pinion over spur and against degrees of timing, across <see cref="Span"/>; 0 where that is none.</summary>
    /// <param name="at">A point of what is believed.</param>
    /// <param name="share">Copper's share of the heat with the notebook's gearing.</param>
    public (double Gearing, double Timing) Slopes(double[] at, double share)
    {
        LapFigures driven = _driven.At(at);
        return (Span.Gearing(share, driven, _geared.Low.At(at), _geared.High.At(at)), Span.Timing(share, driven, _timed.Low.At(at), _timed.High.At(at)));
    }
}

/// <summary>Powers that the lap's heat ratios are taken to, draw by draw.</summary>
/// <param name="Gearing">For gearing.</param>
/// <param name="Timing">For timing.</param>
internal sealed record LapTrust(double[] Gearing, double[] Timing)
{
    /// <summary>Heat of a gearing and timing over the notebook's.</summary>
    /// <param name="draw">Which draw.</param>
    /// <param name="driven">The lap as the notebook's runs were driven.</param>
    /// <param name="turned">With the gearing asked about, at the notebook's timing.</param>
    /// <param name="lap">With gearing and timing asked about.</param>
    public RaceHeat Heat(int draw, in LapFigures driven, in LapFigures turned, in LapFigures lap) => new(
        Trusted(draw, turned.Copper25W / driven.Copper25W, lap.Copper25W / turned.Copper25W), Trusted(draw, turned.IronW / driven.IronW, lap.IronW / turned.IronW));

    private double Trusted(int draw, double byGears, double byTiming) => Math.Pow(byGears, Gearing[draw]) * Math.Pow(byTiming, Timing[draw]);
}
