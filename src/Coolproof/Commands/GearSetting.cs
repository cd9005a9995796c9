using System.Globalization;
using System.Text.RegularExpressions;
using Coolproof.Advice.Gearing;
using Coolproof.Advice.Laps;
using Coolproof.Notebook;
using Coolproof.Thermal;

namespace Coolproof.Commands;

/// <summary>Car, card and notes put together from what was asked, the table, and what is typical; what was assumed is listed.</summary>
/// <param name="Rig">Car, motor, pack, lap.</param>
/// <param name="Card">What class, car and box of pinions allow.</param>
/// <param name="Notes">What the runs tell of their laps.</param>
/// <param name="Assumed">What was assumed, in words.</param>
public sealed partial record GearSetting(GearRig Rig, GearCard Card, IReadOnlyList<LapNote> Notes, IReadOnlyList<string> Assumed)
{
    /// <summary>The lap that a logger's speed gave; null where none was given.</summary>
    public TracedLap? Traced { get; init; }

    const int EitherSide = 6, LeastTeeth = 8;

    /// <summary>What stands in where nothing is known: module of the teeth (48 pitch), mm; turns of the motor; its timing, degrees.</summary>
    public const double TypicalModuleMm = 25.4 / 48, TypicalTurns = 13.5, TypicalTimingDeg = 30;

    /// <summary>What is listed where nobody noted a lap time.</summary>
    public const string NoLapTime = "no lap time, so all of it is known roughly";

    /// <summary>Turns of the motor.</summary>
    public double Turns { get; private init; }

    /// <summary>Pinions that are looked at where nobody says which are at hand.</summary>
    /// <param name="pinion">Teeth of the tests' pinion.</param>
    public static (double Least, double Most) PinionsAbout(double pinion) => (Math.Max(LeastTeeth, pinion - EitherSide), pinion + EitherSide);

    /// <summary>The setting, or why there is none.</summary>
    /// <param name="asked">What was asked.</param>
    /// <param name="table">The readings; where earlier days stand before them, the car is that of the new ones as far as they note it.</param>
    /// <param name="lap">A lap of one's own; null: an invented one.</param>
    internal static (GearSetting? Setting, string? Refused) Of(GearRequest asked, ReadingsTable table, GivenLap? lap)
    {
        if ((asked.Pinion ?? Most(l => l.PinionTeeth)) is not { } pinion) return (null, "the table notes no pinion: give the one of the tests with --pinion 24.");
        if ((asked.Spur ?? Most(l => l.SpurTeeth)) is not { } spur) return (null, "the table notes no spur: give its teeth with --spur 84.");
        if (asked.MassG is { } given && asked.LeastMassG is { } least && given < least) return (null, $"--mass {given:0} is below the {least:0} g that the class allows: give the car as it will be raced.");
        List<string> assumed = [];
        var driven = new GearChoice(pinion, spur, Or(asked.TimingDeg ?? Most(l => l.TimingDeg), TypicalTimingDeg, $"a timing of {TypicalTimingDeg}° in the tests"));
        var typical = asked.Carpet ? Car.Carpet : Car.OffRoad;
        var car = typical with
        {
            MassKg = Or(asked.MassG ?? asked.LeastMassG, 1000 * typical.MassKg, $"a car of {1000 * typical.MassKg:0} g") / 1000,
            TyreDiameterM = Or(asked.TyreMm, 1000 * typical.TyreDiameterM, $"tyres of {1000 * typical.TyreDiameterM:0} mm") / 1000,
            DrivenShare = asked.TwoWheelDrive ? 0.65 : 1,
        };
        var inner = Or(asked.InternalRatio, asked.Carpet ? 1.9 : 2.6, $"an internal ratio of {(asked.Carpet ? 1.9 : 2.6)}");
        var turns = Or(asked.Turns ?? TurnsNamed(Loads(table, table.EarlierRuns)) ?? TurnsNamed(Loads(table, 0)), TypicalTurns, $"a motor of {TypicalTurns} turns");
        var motor = BrushlessMotor.OfTurns(turns);
        motor = motor with { SpeedConstantRpm = asked.RpmPerVolt ?? motor.SpeedConstantRpm, ColdOhm = asked.MotorMohm / 1000 ?? motor.ColdOhm, NoLoadA = asked.NoLoadA ?? motor.NoLoadA };
        var pack = new Pack { Cells = asked.Cells ?? 2, CapacityAh = Or(asked.CapacityMah, 5000, "a pack of 5000 mAh") / 1000 };
        pack = pack with { CurrentLimitA = asked.CurrentLimitA ?? pack.CurrentLimitA };
        if (lap is null) assumed.Add($"an invented {(asked.Carpet ? "carpet" : "off-road")} lap");
        var pinions = asked.Pinions ?? PinionsAbout(pinion);
        var timings = asked.Timings ?? (driven.TimingDeg, driven.TimingDeg);
        var card = new GearCard((int)Math.Ceiling(pinions.Least), (int)pinions.Most, spur, timings.Least, timings.Most)
        {
            LeastRatio = asked.Ratio?.Least,
            MostRatio = asked.Ratio?.Most,
            Space = asked.SpaceMm is { } space ? new(asked.ModuleMm ?? TypicalModuleMm, space.Least, space.Most) : null,
        };
        if (card.Refusal(inner) is { } refused) return (null, refused);
        var notes = LapNotes.Of(table, driven);
        if (asked.LapS is { } lapS && notes.All(n => n.LapS is null)) notes = LapNotes.With(notes, driven, lapS, 1);
        TracedLap? traced = null;
        try
        {
            if (lap?.Logged is { } logged) traced = TracedLap.Of(logged.Trace(new GearTrain(pinion, spur, inner).Rollout(car.TyreDiameterM)), asked.LapS ?? notes.FirstOrDefault(n => n.Choice == driven)?.LapS);
        }
        catch (LapException cause)
        {
            return (null, $"the lap in {asked.LapFile} can't be used as it stands: {cause.Message}");
        }
        if (traced is not null) notes = LapNotes.With(notes, driven, traced.Found.Seconds, traced.Found.Alike);
        if (notes.All(n => n.LapS is null)) assumed.Add(NoLapTime);
        if (lap?.Logged is { Turning: true } turning) assumed.Add($"{turning.Channel} to be the motor's turning");
        var track = traced?.Track ?? lap?.Paced;
        var rig = new GearRig(track ?? (asked.Carpet ? Track.Carpet : Track.OffRoad), track is not null, car, inner, motor, pack, driven) { Peaks = traced?.Peaks ?? [] };
        return (new(rig, card, notes, assumed) { Traced = traced, Turns = turns }, null);

        double Or(double? known, double typicalOne, string said)
        {
            if (known is { } value) return value;
            assumed.Add(said);
            return typicalOne;
        }

        T? Most<T>(Func<LoadNotes, T?> of) where T : struct => MostFrequent(Loads(table, table.EarlierRuns).Select(of)) ?? MostFrequent(Loads(table, 0).Select(of));
    }

    static IEnumerable<LoadNotes> Loads(ReadingsTable table, int from) => table.Runs.Skip(from).Where(r => r.Kind is RunKind.Test or RunKind.Race).Select(r => r.Load);

    static double? TurnsNamed(IEnumerable<LoadNotes> loads) => loads.Select(l => TurnsIn().Match(l.Motor ?? "")).FirstOrDefault(m => m.Success) is { } found
        && double.TryParse(found.Groups[1].Value.Replace(',', '.'), CultureInfo.InvariantCulture, out var turns) && turns is >= 3 and <= 40 ? turns : null;

    static T? MostFrequent<T>(IEnumerable<T?> values) where T : struct => values.OfType<T>().GroupBy(v => v).OrderByDescending(g => g.Count()).Select(g => (T?)g.Key).FirstOrDefault();

    [GeneratedRegex(@"(\d+(?:[.,]\d+)?)[\s-]*(?:turns?|t)\b", RegexOptions.IgnoreCase)]
    private static partial Regex TurnsIn();
}
