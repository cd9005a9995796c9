using System.CommandLine;
using Coolproof.Pictures;
using Coolproof.Screen;
using Coolproof.Thermal;

namespace Coolproof.Commands;

/// <summary>`coolproof gear FILE` as it is typed.</summary>
internal static class GearCommand
{
    /// <summary>The command.</summary>
    public static Command On(Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = "The readings table of the tests (CSV); - reads it from standard input." };
        var earlier = EarlierFiles.Option("A readings table of earlier days of the same motor: all days are reckoned with together, at this one's driver, surface and gearing.");
        var checks = GunChecksFile.Option();
        var track = new WordOption("--track", "Kind of track: car and lap that stand in where nothing is given.", "off-road", "carpet");
        var lap = new Option<string?>("--lap") { HelpName = "LAP.csv", Description = "The lap as straights and corners (docs/gear.md). Otherwise an invented one, sized by the lap time." };
        var lapTime = Figure("--lap-time", "26.4s", "s", 4, 300, "Mean lap time of the tests, where the table notes none.");
        var air = new QuantityOption("--air", "38C|100F", "Air in the shade on race day. Otherwise the middle of the tests.", Typed.Air);
        var race = new QuantityOption("--race", "8min|480s|8:00", "Length of the race. Otherwise the middle of the tests.", Typed.Drive);
        var pinion = QuantityOption.Whole("--pinion", "Teeth of the pinion in the tests, where the table notes none.", 6, 80);
        var spur = QuantityOption.Whole("--spur", "Teeth of the spur. Otherwise the table's.", 20, 200);
        var timing = Figure("--timing", "30", "", BrushlessMotor.LeastTimingDeg, BrushlessMotor.MostTimingDeg, "Timing in the tests in degrees, where the table notes none. Otherwise 30.");
        var pinions = new RangeOption("--pinions", "18..30", "", 6, 80, "Pinions at hand. Otherwise six teeth to either side of the tests'.");
        var timings = new RangeOption("--timings", "20..40", "", BrushlessMotor.LeastTimingDeg, BrushlessMotor.MostTimingDeg, "Timing that the class allows, in degrees. Otherwise the tests' only.");
        var ratio = new RangeOption("--ratio", "7.5..9.5", "", 1, 40, "Final drive ratio that the class allows. Otherwise any.");
        var space = new RangeOption("--space", "24..28mm", "mm", 5, 120, "How far apart the motor's mount lets motor shaft and spur be, in mm. Otherwise not looked at.");
        var module = Figure("--module", "0.5", "", 0.2, 2, "Module of the teeth in mm (25.4 over the pitch). Otherwise 0.529 (48 pitch).");
        var inner = Figure("--internal", "2.6", "", 0.5, 10, "Turns of the spur for one of the wheels. Otherwise 2.6 off-road, 1.9 on carpet.");
        var tyre = Figure("--tyre", "85mm", "mm", 30, 200, "Diameter of the driven tyres as measured. Otherwise 85mm off-road, 63mm on carpet.");
        var mass = Figure("--mass", "1600g", "g", 300, 8000, "The car as raced. Otherwise 1600g off-road, 1350g on carpet.");
        var leastMass = Figure("--class-mass", "1550g", "g", 300, 8000, "Least mass that the class allows.");
        var twoWheels = new Option<bool>("--two-wheel-drive") { Description = "Only the rear wheels are driven." };
        var turns = Figure("--turns", "13.5", "", 3, 40, "Turns of the motor. Otherwise as its name in the table says, or 13.5.");
        var speed = Figure("--rpm-per-volt", "3100", "", 300, 15000, "Speed of the motor for a volt. Otherwise typical of its turns.");
        var ohm = Figure("--motor-mohm", "22", "", 1, 500, "Two phases in series, cold, in milliohm. Otherwise typical of its turns.");
        var noLoad = Figure("--no-load-a", "4", "", 0.3, 20, "Current without load at 7.4 V and 30 degrees. Otherwise 4.");
        var cells = QuantityOption.Whole("--cells", "Cells in series. Otherwise 2.", 1, 6);
        var capacity = Figure("--capacity", "5000", "", 200, 20000, "Charge of the pack in mAh. Otherwise 5000.");
        var limit = Figure("--current-limit", "120A", "A", 5, 500, "Most current that the controller lets into the motor. Otherwise 150A.");
        var limits = new LimitOptions();
        var hotter = new QuantityOption("--hotter", "5K|9F", "How much hotter the day is whose price in teeth is told. Otherwise 5K.", Typed.Difference);
        var seed = QuantityOption.Whole("--random-seed", "The same table, question and seed give the same answer. Otherwise 1.", 0, int.MaxValue);
        var units = WordOption.Units("Degrees for people.");
        var picture = PictureFile.Option("Also draws each option over the pinions to a file.");
        var dark = new WordOption("--theme", "Ground of the picture.", "light", "dark", "sun");
        var json = new Option<bool>("--json") { Description = "Prints JSON, version 1 (docs/formats). Always in °C, s and m." };
        var command = new Command("gear", "Pinion and timing: lap time against heat, for each option the quickest that stays under the limits.")
        {
            file, earlier, checks, track.Option, lap, lapTime.Option, air.Option, race.Option, pinion.Option, spur.Option, timing.Option, pinions.Option, timings.Option, ratio.Option, space.Option, module.Option, inner.Option, tyre.Option, mass.Option,
            leastMass.Option, twoWheels, turns.Option, speed.Option, ohm.Option, noLoad.Option, cells.Option, capacity.Option, limit.Option, limits.Can.Option, limits.Insulation, limits.Magnet, limits.Odds.Option, hotter.Option,
            seed.Option, units.Option, picture, dark.Option, json,
        };
        command.SetAction((parsed, cancel) => Task.FromResult(new GearAsking(terminal).Run(
            new TableAsked(parsed.GetValue(file)!, parsed.GetValue(checks)) { Earlier = parsed.GetValue(earlier) ?? [] },
            new GearRequest(limits.In(parsed))
            {
                Carpet = track.In(parsed) == "carpet",
                LapFile = parsed.GetValue(lap),
                LapS = lapTime.In(parsed),
                AirC = air.In(parsed),
                RaceS = race.In(parsed),
                Pinion = (int?)pinion.In(parsed),
                Spur = (int?)spur.In(parsed),
                TimingDeg = timing.In(parsed),
                Pinions = pinions.In(parsed),
                Timings = timings.In(parsed),
                Ratio = ratio.In(parsed),
                SpaceMm = space.In(parsed),
                ModuleMm = module.In(parsed),
                InternalRatio = inner.In(parsed),
                TyreMm = tyre.In(parsed),
                MassG = mass.In(parsed),
                LeastMassG = leastMass.In(parsed),
                TwoWheelDrive = parsed.GetValue(twoWheels),
                Turns = turns.In(parsed),
                RpmPerVolt = speed.In(parsed),
                MotorMohm = ohm.In(parsed),
                NoLoadA = noLoad.In(parsed),
                Cells = (int?)cells.In(parsed),
                CapacityMah = capacity.In(parsed),
                CurrentLimitA = limit.In(parsed),
                HotterK = hotter.In(parsed) ?? 5,
                Seed = (long)(seed.In(parsed) ?? 1),
                Units = units.UnitIn(parsed),
                Json = parsed.GetValue(json),
                Picture = parsed.GetValue(picture),
                Theme = dark.In(parsed) switch { "dark" => Theme.Dark, "sun" => Theme.Sun, _ => Theme.Light },
            },
            cancel)));
        return command;
    }

    static QuantityOption Figure(string name, string example, string unit, double least, double most, string description) =>
        new(name, example, description, (string text, out double value) => Typed.Figure(text, unit, least, most, out value));
}
