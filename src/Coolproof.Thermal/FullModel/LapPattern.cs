namespace Coolproof.Thermal.FullModel;

/// <summary>One part of a lap: a burst of throttle, a corner taken off throttle.</summary>
/// <param name="Seconds">Its length, s.</param>
/// <param name="CopperFactor">Copper heat here over the lap's mean.</param>
/// <param name="SpeedMS">Speed, m/s.</param>
public readonly record struct LapSection(double Seconds, double CopperFactor, double SpeedMS);

/// <summary>A lap as a list of bursts and corners, repeated for as long as the car is driven.</summary>
public sealed class LapPattern
{
    /// <summary>A lap whose copper factors are brought to a mean of 1 over time.</summary>
    /// <param name="sections">Sections in order, each with a positive length and at least one with heat.</param>
    /// <exception cref="ArgumentException">No section, a length that is not positive, or no heat at all.</exception>
    public LapPattern(IReadOnlyList<LapSection> sections)
    {
        if (sections.Count == 0 || sections.Any(s => !(s.Seconds > 0)))
            throw new ArgumentException("A lap needs at least one section, each with a positive length.", nameof(sections));
        Seconds = sections.Sum(s => s.Seconds);
        double mean = sections.Sum(s => s.Seconds * s.CopperFactor) / Seconds;
        if (!(mean > 0))
            throw new ArgumentException("A lap needs some throttle.", nameof(sections));
        Sections = [.. sections.Select(s => s with { CopperFactor = s.CopperFactor / mean })];
        MeanSpeedMS = sections.Sum(s => s.Seconds * s.SpeedMS) / Seconds;
        MeanSpeedPower = sections.Sum(s => s.Seconds * Math.Pow(s.SpeedMS, CoolingOption.SpeedExponent)) / Seconds;
    }

    /// <summary>Sections in order; their copper factors have mean 1 over time.</summary>
    public IReadOnlyList<LapSection> Sections { get; }

    /// <summary>Length of the lap, s.</summary>
    public double Seconds { get; }

    /// <summary>Mean speed, m/s.</summary>
    public double MeanSpeedMS { get; }

    /// <summary>Mean of speed^0.6, what motion cools by.</summary>
    public double MeanSpeedPower { get; }

    /// <summary>Driving with the laps averaged: what the fast path runs on.</summary>
    /// <remarks>
    /// Copper is hottest just where the current is highest, so the mean of heat × resistance is more than the product of the means by
    /// α P² κ / C of the winding, κ being <see cref="RippleS"/>: a tenth of a kelvin on the can, and taken in here.
    /// </remarks>
    /// <param name="body">The motor.</param>
    /// <param name="airC">Free air, °C.</param>
    /// <param name="copperW25">Mean copper heat with the winding at 25 °C, W.</param>
    /// <param name="ironW">Mean iron heat, W.</param>
    /// <param name="fan">The option's fan: 1 running, 0 off.</param>
    /// <param name="pace">Speed over the pattern's.</param>
    public Phase Averaged(MotorBody body, double airC, double copperW25, double ironW, double fan, double pace = 1) =>
        new(airC, copperW25 * (1 + Surplus(body, copperW25)), ironW, pace * MeanSpeedMS,
            Math.Pow(pace, CoolingOption.SpeedExponent) * MeanSpeedPower, fan);

    double Surplus(MotorBody body, double copperW25) =>
        body.CopperRisePerK * copperW25 * RippleS(body.WindingJPerK / body.SlotWPerK) / body.WindingJPerK;

    /// <summary>
    /// Mean over the lap of (p - 1) x, s, where p is the copper factor and x' = p - 1 - x / τ the winding's answer to it: laps repeat, so x does too.
    /// </summary>
    /// <param name="timeConstantS">Time constant τ of the winding against the laminations, s.</param>
    public double RippleS(double timeConstantS)
    {
        double fromRest = 0;
        foreach (LapSection s in Sections)
        {
            double settled = (s.CopperFactor - 1) * timeConstantS;
            fromRest = settled + (fromRest - settled) * Math.Exp(-s.Seconds / timeConstantS);
        }
        double x = fromRest / -Expm1(-Seconds / timeConstantS), sum = 0;
        foreach (LapSection s in Sections)
        {
            double settled = (s.CopperFactor - 1) * timeConstantS, gone = -Expm1(-s.Seconds / timeConstantS);
            sum += (s.CopperFactor - 1) * (settled * s.Seconds + (x - settled) * timeConstantS * gone);
            x += (settled - x) * gone;
        }
        return sum / Seconds;
    }

    static double Expm1(double x) => Math.Abs(x) < 1e-5 ? x * (1 + x / 2) : Math.Exp(x) - 1;

    /// <summary>Driving section by section, for a given time.</summary>
    /// <param name="seconds">How long, s; the last lap may be left unfinished.</param>
    /// <param name="airC">Free air, °C.</param>
    /// <param name="copperW25">Mean copper heat with the winding at 25 °C, W.</param>
    /// <param name="ironW">Mean iron heat, W; taken as even over the lap.</param>
    /// <param name="fan">The option's fan: 1 running, 0 off.</param>
    public IEnumerable<(Phase Phase, double Seconds)> Driven(double seconds, double airC, double copperW25, double ironW, double fan)
    {
        double left = seconds;
        while (left > 0)
        {
            foreach (LapSection s in Sections)
            {
                if (left <= 0)
                    yield break;
                yield return (Phase.Steady(airC, s.CopperFactor * copperW25, ironW, s.SpeedMS, fan), Math.Min(left, s.Seconds));
                left -= s.Seconds;
            }
        }
    }
}
