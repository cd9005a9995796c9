using Coolproof.Advice.Laps;
using Coolproof.Thermal;

namespace Coolproof.Advice.Tests.Laps;

/// <summary>Traces with no lap in them, or a lap that is hard to find.</summary>
public class OddTracesTests
{
    private static readonly List<(double AtS, double SpeedMS)> Drive = new Logger(10, 0.1, 0.03).Drive(Track.OffRoad, Car.OffRoad, new(24, 84, 2.6), BrushlessMotor.OfTurns(13.5), 1);
    private static readonly double LapS = DrivenLap.Of(Track.OffRoad, Car.OffRoad, new(24, 84, 2.6), BrushlessMotor.OfTurns(13.5), 30, new(), 1, 80).Seconds;

    public static TheoryData<string, string> Nonsense => new()
    {
        { "three points", "3 speeds" },
        { "standing", "m in" },
        { "one speed", "stays about" },
        { "below zero", "below 0" },
        { "a value a second", "steps over corners" },
        { "a lap and a half", "no lap repeats" },
        { "noise", "no lap repeats" },
        { "gaps everywhere", "no lap is whole" },
        { "in km/h though m/s was said", "no scale car" },
    };

    [Theory]
    [MemberData(nameof(Nonsense))]
    public void Nonsense_is_one_error_with_a_remedy(string what, string said)
    {
        Random chance = new(1);
        List<(double AtS, double SpeedMS)> trace = what switch
        {
            "three points" => Drive[..3],
            "standing" => [.. Drive.Select(one => (one.AtS, 0.0))],
            "one speed" => [.. Drive.Select(one => (one.AtS, 6 + 0.1 * Math.Sin(one.AtS)))],
            "below zero" => [.. Drive.Select(one => (one.AtS, -one.SpeedMS))],
            "a value a second" => [.. Drive.Where((_, i) => i % 10 == 0)],
            "a lap and a half" => [.. Drive.Where(one => one.AtS > 8 + 1.2 * LapS && one.AtS < 8 + 2.6 * LapS)],
            "noise" => [.. Drive.Select(one => (one.AtS, 3 + 6 * chance.NextDouble()))],
            "gaps everywhere" => [.. Drive.Where(one => one.AtS % (0.6 * LapS) > 2)],
            _ => [.. Drive.Select(one => (one.AtS, one.SpeedMS * 36))],
        };
        string message = Assert.Throws<LapException>(() => TracedLap.Of(SpeedTrace.Of(trace), null)).Message;
        Assert.Contains(said, message);
        Assert.Matches("[Gg]ive |[Ll]og |[Ss]ay |look at ", message);
    }

    [Fact]
    public void A_single_lap_from_line_to_line_is_taken_whole()
    {
        TracedLap traced = TracedLap.Of(SpeedTrace.Of([.. Drive.Where(one => one.AtS > 8 + 2 * LapS && one.AtS < 8 + 3 * LapS)]), null);
        Assert.Equal(1, traced.Found.Alike);
        Assert.InRange(traced.Found.Seconds, 0.98 * LapS, LapS);
    }

    [Fact]
    public void Cells_that_say_nothing_a_slip_of_the_sensor_and_a_lap_with_a_crash_do_no_harm()
    {
        List<(double AtS, double SpeedMS)> spoilt = [.. Drive.Select((one, i) => (one.AtS, i % 97 == 0 ? double.NaN : i % 101 == 0 ? 40 : one.AtS > 60 && one.AtS < 70 ? 0 : one.SpeedMS))];
        FoundLap lap = TracedLap.Of(SpeedTrace.Of(spoilt), null).Found;
        Assert.InRange(lap.Seconds, 0.97 * LapS, 1.03 * LapS);
        Assert.True(lap.Alike >= 3 && (lap.ToS < 60 || lap.FromS > 70), $"{lap}");
    }

    // An oval has two halves alike: which of them is the lap only its time tells. Heat and current are the same either way.
    [Fact]
    public void The_lap_time_tells_one_lap_from_half_of_one()
    {
        Track oval = new([TrackPart.Straight(30), TrackPart.Corner(3, 180), TrackPart.Straight(30), TrackPart.Corner(3, 180)]);
        GearTrain gears = new(24, 84, 2.6);
        BrushlessMotor motor = BrushlessMotor.OfTurns(13.5);
        double seconds = DrivenLap.Of(oval, Car.OffRoad, gears, motor, 30, new(), 1, 80).Seconds;
        SpeedTrace trace = SpeedTrace.Of(new Logger(20, 0.1, 0.03) { Laps = 10 }.Drive(oval, Car.OffRoad, gears, motor, 3));
        Assert.Equal(seconds, TracedLap.Of(trace, seconds * 1.05).Found.Seconds, 0.03 * seconds);
        Assert.Equal(seconds / 2, TracedLap.Of(trace, null).Found.Seconds, 0.03 * seconds);
        Assert.Contains("no lap of about 60 s", Assert.Throws<LapException>(() => TracedLap.Of(trace, 60)).Message);
    }
}
