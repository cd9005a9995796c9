using Coolproof.Advice.Gearing;
using Coolproof.Advice.Laps;
using Coolproof.Sampling;
using Coolproof.Thermal;

namespace Coolproof.Advice.Tests.Laps;

/// <summary>A known lap is driven, written as a logger would, read back and driven again: the truth is the lap that was written.</summary>
public class TracedLapTests(ITestOutputHelper output)
{
    private static readonly BrushlessMotor Motor = BrushlessMotor.OfTurns(13.5);

    public static TheoryData<string, bool, double, double, double> Loggers => new()
    {
        { "a fast logger without scatter", false, 50, 0, 0 },
        { "wheel speed", false, 25, 0.08, 0.1 / 3.6 },
        { "wheel speed on carpet", true, 25, 0.08, 0.1 / 3.6 },
        { "satellites", false, 10, 0.15, 0.1 / 3.6 },
        { "satellites on carpet", true, 10, 0.15, 0.1 / 3.6 },
    };

    // Tolerances: half as much again as the worst of the five drives of each logger that the output shows; scatter of the logger and of the driver's laps (1 %) are in them.
    [Theory]
    [MemberData(nameof(Loggers))]
    public void A_lap_that_was_logged_costs_what_it_cost_and_a_pinion_off_what_it_would_have_cost(string name, bool carpet, double hertz, double scatter, double step)
    {
        Track track = carpet ? Track.Carpet : Track.OffRoad;
        List<double> found = [], lapS = [], gainS = [], meanA = [], rmsA = [], copper = [], iron = [], copperRatio = [], ironRatio = [];
        for (int seed = 1; seed <= 5; seed++)
        {
            TracedLap traced = TracedLap.Of(SpeedTrace.Of(new Logger(hertz, scatter, step).Drive(track, CarOn(carpet), Gears(24, carpet), Motor, seed)), null);
            DrivenLap truth = Lap(track, 24, carpet), seen = Lap(traced.Track, 24, carpet);
            found.Add(seen.Seconds / traced.Found.Seconds - 1);
            foreach (int pinion in new[] { 21, 24, 27 })
            {
                DrivenLap would = Lap(track, pinion, carpet), reads = Lap(traced.Track, pinion, carpet);
                lapS.Add(reads.Seconds / would.Seconds - 1);
                meanA.Add(reads.MeanBatteryA / would.MeanBatteryA - 1);
                rmsA.Add(reads.RmsMotorA / would.RmsMotorA - 1);
                copper.Add(reads.Copper25W / would.Copper25W - 1);
                iron.Add(reads.IronW / would.IronW - 1);
                if (pinion == 24)
                    continue;
                gainS.Add(reads.Seconds - seen.Seconds - (would.Seconds - truth.Seconds));
                copperRatio.Add(Math.Log(reads.Copper25W / seen.Copper25W / (would.Copper25W / truth.Copper25W)));
                ironRatio.Add(Math.Log(reads.IronW / seen.IronW / (would.IronW / truth.IronW)));
            }
        }
        output.WriteLine($"{name}: {Lap(track, 24, carpet).Seconds:0.0} s; worst of five drives: lap as found {Worst(found):P1}, lap time {Worst(lapS):P1}, three teeth's gain {Worst(gainS):0.000} s, mean current {Worst(meanA):P1}, rms {Worst(rmsA):P1}, copper {Worst(copper):P1}, iron {Worst(iron):P1}, three teeth's ratio of copper {Worst(copperRatio):P1}, of iron {Worst(ironRatio):P1}");
        Assert.True(Worst(found) < 0.015);
        Assert.True(Worst(lapS) < 0.02);
        Assert.True(Worst(gainS) < 0.05);
        Assert.True(Worst(meanA) < 0.04);
        Assert.True(Worst(rmsA) < 0.07);
        Assert.True(Worst(copper) < 0.14);
        Assert.True(Worst(iron) < 0.035);
        Assert.True(Worst(copperRatio) < 0.06);
        Assert.True(Worst(ironRatio) < 0.015);
    }

    [Fact]
    public void Where_the_driver_and_grip_set_the_speed_it_stays_whatever_the_pinion()
    {
        TracedLap traced = TracedLap.Of(SpeedTrace.Of(new Logger(25, 0.05, 0.02).Drive(Track.OffRoad, Car.OffRoad, Gears(24, false), Motor, 2)), null);
        double[] lowest = [.. new[] { 20, 24, 30 }.Select(pinion => Lap(traced.Track, pinion, false).LowestMS)], highest = [.. new[] { 20, 24, 30 }.Select(pinion => Lap(traced.Track, pinion, false).HighestMS)];
        Assert.Equal(lowest[0], lowest[2], 0.01);
        Assert.True(highest[0] < highest[1] && highest[1] < highest[2], string.Join(" ", highest));
        Assert.All(traced.Peaks, peak => Assert.True(traced.Track.Parts[peak.Part].IsStraight));
        Assert.Equal(8, traced.Peaks.Count);
    }

    // A car, motor and grip that the rig does not know: lap time and highest speeds of the trace tell enough of them for what other pinions take.
    [Fact]
    public void A_trace_tells_of_another_pinion_more_than_a_lap_time_on_an_invented_lap()
    {
        List<double> traced = [], invented = [];
        for (int seed = 1; seed <= 6; seed++)
        {
            RandomStream chance = new(100 + seed);
            double Off(double sd) => Math.Exp(sd * chance.NextNormal());
            Car car = Car.OffRoad with { Grip = Car.OffRoad.Grip * Off(0.15), Rolling = Car.OffRoad.Rolling * Off(0.3), Scrub = Car.OffRoad.Scrub * Off(0.3) };
            BrushlessMotor motor = Motor with { SpeedConstantRpm = Motor.SpeedConstantRpm * Off(0.05), ColdOhm = Motor.ColdOhm * Off(0.1), NoLoadA = Motor.NoLoadA * Off(0.2) };
            Track track = new([.. Track.OffRoad.Parts.Select(part => part with { LengthM = part.LengthM * Off(0.3) })]);
            GearRig truth = new(track, true, car, 2.6, motor, new(), new(24, 84, 30)), rig = new(Track.OffRoad, false, Car.OffRoad, 2.6, Motor, new(), new(24, 84, 30));
            TracedLap lap = TracedLap.Of(SpeedTrace.Of(new Logger(25, 0.08, 0.03).Drive(track, car, Gears(24, false), motor, seed)), null);
            GearRig seen = rig with { Track = lap.Track, OwnLap = true, Peaks = lap.Peaks };
            LapNote[] notes = [new(rig.Driven, lap.Found.Seconds, lap.Found.Alike, null, 0)];
            GearRig withTrace = LapBelief.Of(seen, notes, 360).At(new double[LapUnknowns.Count]), without = LapBelief.Of(rig, notes, 360).At(new double[LapUnknowns.Count]);
            foreach (int pinion in new[] { 21, 27 })
            {
                double true0 = Gain(truth, pinion);
                traced.Add(Math.Abs(Gain(withTrace, pinion) - true0));
                invented.Add(Math.Abs(Gain(without, pinion) - true0));
            }
        }
        output.WriteLine($"three teeth's gain, s a lap, off by in the mean: {traced.Average():0.000} with the trace, {invented.Average():0.000} with its lap time on an invented lap");
        Assert.True(traced.Average() < 0.7 * invented.Average());

        static double Gain(GearRig rig, int pinion) => rig.Lap(rig.Driven with { Pinion = pinion }, 1, 0.5).Seconds - rig.Lap(rig.Driven, 1, 0.5).Seconds;
    }

    private static double Worst(List<double> off) => off.Max(Math.Abs);

    private static DrivenLap Lap(Track lap, int pinion, bool carpet) => DrivenLap.Of(lap, CarOn(carpet), Gears(pinion, carpet), Motor, 30, new(), 1, 80);

    private static Car CarOn(bool carpet) => carpet ? Car.Carpet : Car.OffRoad;

    private static GearTrain Gears(int pinion, bool carpet) => new(pinion, 84, carpet ? 1.9 : 2.6);
}
