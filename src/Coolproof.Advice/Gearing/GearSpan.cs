using Coolproof.Evidence.Forecasts;
using Coolproof.Thermal;

namespace Coolproof.Advice.Gearing;

/// <summary>
/// Gearings and timings that slopes of the lap's heat are taken across: those furthest apart that the notebook's runs were driven with, since across them its temperatures tell a slope (log heat bends:
/// copper's share grows with the teeth); where it notes one only, two teeth and five degrees to either side.
/// </summary>
/// <param name="Low">The slowest gearing, at the notebook's timing.</param>
/// <param name="High">The quickest.</param>
/// <param name="Least">The least timing, with the notebook's gears.</param>
/// <param name="Most">The most.</param>
internal sealed record GearSpan(GearChoice Low, GearChoice High, GearChoice Least, GearChoice Most)
{
    private const int Teeth = 2;
    private const double Degrees = 5;

    /// <summary>The four.</summary>
    public IEnumerable<GearChoice> All => [Low, High, Least, Most];

    /// <summary>That of a notebook.</summary>
    /// <param name="driven">Gearing and timing of most of its runs.</param>
    /// <param name="notes">What its runs tell of their laps.</param>
    public static GearSpan Of(GearChoice driven, IReadOnlyList<LapNote> notes)
    {
        GearChoice[] geared = [.. notes.Select(n => n.Choice with { TimingDeg = driven.TimingDeg }).Append(driven).Distinct().OrderBy(Ratio)];
        double[] timed = [.. notes.Select(n => n.Choice.TimingDeg).Append(driven.TimingDeg).Distinct().Order()];
        bool gears = Ratio(geared[^1]) > Ratio(geared[0]), timings = timed.Length > 1;
        return new(
            gears ? geared[0] : driven with { Pinion = driven.Pinion - Teeth }, gears ? geared[^1] : driven with { Pinion = driven.Pinion + Teeth },
            driven with { TimingDeg = timings ? timed[0] : driven.TimingDeg - Degrees }, driven with { TimingDeg = timings ? timed[^1] : driven.TimingDeg + Degrees });
    }

    /// <summary>Without ends that can't be driven: the notebook's own in their place.</summary>
    public GearSpan Where(Func<GearChoice, bool> drivable, GearChoice driven)
    {
        GearChoice Or(GearChoice choice) => drivable(choice) ? choice : driven;
        return new(Or(Low), Or(High), Or(Least), Or(Most));
    }

    /// <summary>Slope of log heat against log of pinion over spur; 0 where both ends are one.</summary>
    /// <param name="share">Copper's share of the heat with the notebook's gearing.</param>
    /// <param name="driven">The lap with it.</param>
    /// <param name="low">The lap with the slowest.</param>
    /// <param name="high">The lap with the quickest.</param>
    public double Gearing(double share, in LapFigures driven, in LapFigures low, in LapFigures high) => Slope(share, driven, low, high, Math.Log(Ratio(High) / Ratio(Low)));

    /// <summary>Slope of log heat against degrees of timing; 0 where both ends are one.</summary>
    public double Timing(double share, in LapFigures driven, in LapFigures least, in LapFigures most) => Slope(share, driven, least, most, Most.TimingDeg - Least.TimingDeg);

    // Temperatures tell of heat as warm as it was: warm copper has more of it than its share at 25 °C.
    private static double Slope(double share, in LapFigures driven, in LapFigures from, in LapFigures to, double by)
    {
        double copper = share * Winding.Resistance(GearRig.WindingC, 1, 25), warm = copper / (copper + 1 - share);
        return by == 0 ? 0 : Math.Log(Heat(to, driven).Factor(warm) / Heat(from, driven).Factor(warm)) / by;
    }

    private static RaceHeat Heat(in LapFigures lap, in LapFigures driven) => new(lap.Copper25W / driven.Copper25W, lap.IronW / driven.IronW);

    private static double Ratio(GearChoice choice) => (double)choice.Pinion / choice.Spur;
}
