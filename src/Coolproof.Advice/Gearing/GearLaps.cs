using Coolproof.Thermal;

namespace Coolproof.Advice.Gearing;

/// <summary>The laps of every pinion and timing within a card, before anything is asked about a race day: they stay the same while air, limits and odds change, and nearly so with the length of the race.</summary>
public sealed class GearLaps
{
    private GearLaps(GearRig rig, GearCard card, LapBelief belief, LapGrid grid, DrivenFigures driven) => (Rig, Card, Belief, Grid, Driven) = (rig, card, belief, grid, driven);

    /// <summary>Car, motor, pack and lap.</summary>
    public GearRig Rig { get; }

    /// <summary>What was allowed.</summary>
    public GearCard Card { get; }

    /// <summary>The lap as the runs were driven.</summary>
    public DrivenFigures Driven { get; }

    /// <summary>Pinions and timings that can be driven.</summary>
    public IReadOnlyList<GearChoice> Choices => Grid.Choices;

    internal LapBelief Belief { get; }

    internal LapGrid Grid { get; }

    /// <summary>Meets the notes and drives the laps.</summary>
    /// <param name="rig">The rig.</param>
    /// <param name="card">The card.</param>
    /// <param name="notes">What the runs tell of their laps.</param>
    /// <param name="raceS">Length of the race, s: laps are driven with the pack as it is at mid-race.</param>
    /// <param name="progress">Told the share of the work that is done.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="LapException">Nothing within the card can be driven; the message says why.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static GearLaps Of(GearRig rig, GearCard card, IReadOnlyList<LapNote> notes, double raceS, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        LapBelief belief = LapBelief.Of(rig, notes, raceS);
        LapGrid grid = LapGrid.Of(belief, card, GearSpan.Of(rig.Driven, notes), progress ?? new Unheard(), cancel);
        GearRig there = belief.At(new double[belief.Axes.Count]);
        DrivenLap lap = there.Lap(rig.Driven, belief.DrawnAh, DrivenLap.UsualStepM);
        LapNote? note = notes.FirstOrDefault(n => n.Choice == rig.Driven);
        return new(rig, card, belief, grid, new(
            lap.Seconds, lap.FullThrottleS / lap.Seconds, lap.HighestMS, lap.RmsMotorA, lap.MeanBatteryA, lap.Copper25W, lap.IronW, there.Track.LengthM, there.Car.Grip, note?.LapS, note?.ChargeA));
    }

    private sealed class Unheard : IProgress<double>
    {
        public void Report(double value)
        {
        }
    }
}
