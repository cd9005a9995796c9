using System.Globalization;

namespace Coolproof.Notebook;

/// <summary>Reads mounts from JSON, version 1 (docs/formats/mount-sheet.schema.json): all that can't be right is listed at once, and nothing is half read.</summary>
public static class MountSheetReader
{
    private const double Mm = 1e-3, Cm2 = 1e-4, PerHour = 1.0 / 3600, CubicFootPerMinute = 4.719474432e-4, MmOfWater = 9.80665, DefaultSpeedMS = 6;

    /// <summary>Past this the air would leave the blades faster than any small fan blows: another unit was meant.</summary>
    private const double FastestMS = 40;

    /// <summary>Most mounts in one file, and most fans in one mount.</summary>
    public const int MostMounts = 12, MostFans = 4;

    /// <summary>Reads a file.</summary>
    /// <param name="text">The file's text.</param>
    public static AskedRead<MountSheet> Read(string text) => AskedFields.Read(text, Sheet);

    private static MountSheet Sheet(AskedFields f)
    {
        f.Needed("version", 1, 1, "", "Write \"version\": 1.");
        double air = f.Either(("airC", -40, 60, "°C"), ("airF", -40, 140, "°F"), t => Units.CelsiusFrom(t, TemperatureUnitChoice.Fahrenheit)) ?? 25;
        double humidity = (f.Number("humidityPercent", 0, 100, "%") ?? 50) / 100, altitude = f.Number("altitudeM", -400, 5000, "m") ?? 0;
        double speed = f.Either(("carSpeedKmh", 0, 150, "km/h"), ("carSpeedMph", 0, 93, "mph"), mph => mph * 1.609344) / 3.6 ?? DefaultSpeedMS;
        if (!f.Has("can")) f.Wrong("can", "the can's diameterMm and lengthMm in braces", "Measure the motor with a ruler; without its size nothing can be said.", "nothing");
        double mass = (f.Number("motorMassG", 20, 1000, "g") ?? 165) / 1000;
        double can = f.Either(("canC", -10, 150, "°C"), ("canF", 14, 302, "°F"), t => Units.CelsiusFrom(t, TemperatureUnitChoice.Fahrenheit)) ?? 70;
        if (can < air + 5) f.Wrong(f.Has("canF") ? "canF" : "canC", $"a can at least 5 K warmer than the air of {Text(air)} °C", "It is the temperature that the prediction is for.", $"{Text(can)} °C");
        MotorCan motor = f.Part("can", c => new MotorCan(Metres(c, "diameterMm", 15, 80), Metres(c, "lengthMm", 15, 150), mass, can)) ?? new(0.036, 0.05, mass, can);
        if (!f.Has("mounts")) f.Wrong("mounts", "a list of mounts", "Write \"mounts\": [ { \"name\": … } ].", "nothing");
        IReadOnlyList<Mount> mounts = f.Items("mounts", MostMounts, m => Mount(m, speed));
        if (f.Has("mounts") && mounts.Count == 0) f.Wrong("mounts", "one mount at least", "");
        for (int i = 0; i < mounts.Count; i++)
            if (mounts.Take(i).Any(before => before.Name.Length > 0 && string.Equals(before.Name, mounts[i].Name, StringComparison.OrdinalIgnoreCase)))
                f.Wrong($"mounts[{i}].name", "a name of its own", "Two mounts must not have one name.", $"\"{mounts[i].Name}\" again");
        return new(air, humidity, altitude, speed, motor, mounts);
    }

    private static Mount Mount(AskedFields f, double carSpeed)
    {
        Mount mount = new()
        {
            Name = f.Name("name", "The name by which you know it; the same as in the readings table where it was driven."),
            Fans = f.Items("fans", MostFans, Fan),
            InRow = f.Word("fansStand", "side by side", "one behind the other") != "side by side",
            Duct = f.Part("duct", d => new MountDuct(
                d.Needed("mouthCm2", 0.1, 200, "cm²", "Its area where the air comes in.") * Cm2, d.Needed("outletCm2", 0.1, 200, "cm²", "Its area where the air leaves towards the can.") * Cm2,
                (d.Number("lengthMm", 0, 2000, "mm") ?? 0) * Mm, (int)Math.Round(d.Number("bends", 0, 10, "quarter turns") ?? 0), d.YesNo("facesForward", true))),
            Shroud = f.Part("shroud", s => new MountShroud(
                Metres(s, "clearanceMm", 0.3, 50), (s.Number("coversPercent", 5, 100, "% of the can's length") ?? 100) / 100, (s.Number("leakCm2", 0, 100, "cm²") ?? 0) * Cm2)),
            GapM = f.Has("gapMm") || f.Has("fans") || f.Has("duct") ? f.Needed("gapMm", 0.3, 200, "mm", "From the can to where the air leaves the fan or the duct; in a shroud, the same.") * Mm : 0,
            AngleDeg = f.Number("angleDeg", 0, 60, "degrees", "0 blows straight at the can's axis; past 60 it blows by it.") ?? 0,
            AsideM = (f.Number("asideMm", -150, 150, "mm from the middle of the can's length") ?? 0) * Mm,
            ShellFromCanM = f.Number("shellFromCanMm", 0.5, 300, "mm from can to shell") * Mm,
            RimOpen = (f.Number("rimOpenPercent", 5, 100, "% of the inlet's rim") ?? 100) / 100,
            ShellHoleM2 = (f.Number("shellHoleCm2", 0, 200, "cm²") ?? 0) * Cm2,
            GrilleOpen = (f.Number("grilleOpenPercent", 10, 100, "% of the grille that is free") ?? 100) / 100,
            AirFromShell = f.Word("airFrom", "outside", "shell") == "shell",
            VentsM2 = f.Number("shellVentsCm2", 0.1, 500, "cm²", "All openings that let air out of the shell, wheel arches too; leave it out without a shell.") * Cm2,
            FinsM2 = (f.Number("finsCm2", 0, 2000, "cm², both sides of each fin") ?? 0) * Cm2,
            ClampCovers = (f.Number("clampCoversPercent", 0, 95, "% of the can's side") ?? 0) / 100,
        };
        Together(f, mount, carSpeed);
        return mount;
    }

    // What each may be by itself, but not together.
    private static void Together(AskedFields f, Mount mount, double carSpeed)
    {
        bool ram = mount.Duct is { FacesForward: true } && carSpeed > 0;
        if (mount.Fans.Count == 0 && !f.Has("fans") && mount.Duct is { } && !ram)
            f.Wrong("duct", "a fan, or a duct that faces forward on a car that moves", "Nothing moves the air in it: give the fan, \"facesForward\": true, or carSpeedKmh.", "a duct without flow");
        if (mount.Fans.Count == 0 && !f.Has("fans") && mount.Duct is null && carSpeed == 0)
            f.Wrong("fans", "a fan, a duct that faces forward, or a carSpeedKmh above 0", "Without any flow there is nothing to predict.", "nothing that moves air");
        if (mount.Shroud is { } && mount.Fans.Count == 0 && !f.Has("fans") && mount.Duct is null)
            f.Wrong("shroud", "a fan or a duct that blows into it", "", "a shroud without either");
        if (mount.ShellGapM is <= 0 && f.Has("shellFromCanMm"))
            f.Wrong("shellFromCanMm", $"more than {Text(mount.FanEdgeM / Mm)} mm, where the fan's far edge is (gap {Text(mount.GapM / Mm)} mm and thickness)", "Measure from the can to the inside of the shell over the fan.");
        foreach (string blocked in new[] { "rimOpenPercent", "shellHoleCm2" })
            if (f.Has(blocked) && !f.Has("shellFromCanMm")) f.Wrong("shellFromCanMm", $"the distance from can to shell, since {blocked} is given", "", "nothing");
    }

    private static MountFan Fan(AskedFields f)
    {
        double size = Metres(f, "sizeMm", 10, 92), hub = f.Number("hubMm", 1, 80, "mm") * Mm ?? 0.5 * size;
        if (f.Has("sizeMm") && hub > size - 0.004) f.Wrong("hubMm", $"less than the fan's size of {Text(size / Mm)} mm", "It is the round middle that the blades sit on.");
        double? flow = f.Either(("freeFlowM3H", 0.05, 400, "m³/h"), ("freeFlowCfm", 0.03, 235, "cubic feet a minute"), cfm => cfm * CubicFootPerMinute / PerHour) * PerHour;
        if (!f.Has("freeFlowM3H") && !f.Has("freeFlowCfm")) f.Wrong("freeFlowM3H", "the free flow from 0.05 to 400 m³/h (or freeFlowCfm)", "It stands on the fan's box or sheet; without it nothing can be said of the fan.", "nothing");
        double? stall = f.Either(("stallPa", 0.5, 5000, "Pa"), ("stallMmH2O", 0.05, 510, "mm of water"), mm => mm * MmOfWater);
        double? rated = f.Number("ratedV", 1, 60, "V"), supplied = f.Number("suppliedV", 0.5, 60, "V");
        if (supplied is not null && !f.Has("ratedV")) f.Wrong("ratedV", "the voltage that flow and pressure are printed for", "Without it the supplied voltage tells nothing.", "nothing");
        if (supplied / rated is > 2) f.Wrong("suppliedV", $"at most twice the rated {Text(rated!.Value)} V", "A fan doesn't live long on more.");
        MountFan fan = new(size, Math.Min(hub, size - 0.004), (f.Number("thicknessMm", 2, 60, "mm") ?? 10) * Mm, flow ?? 1e-3, stall, (supplied / rated) ?? 1);
        if (f.Has("sizeMm") && flow / fan.SweptM2 is { } fast and > FastestMS)
            f.Wrong(f.Has("freeFlowM3H") ? "freeFlowM3H" : "freeFlowCfm", $"a flow that leaves blades of this size at less than {FastestMS:0} m/s", $"This one would leave at {Text(Math.Round(fast))} m/s: mind the unit, and the fan's size.");
        return fan;
    }

    private static double Metres(AskedFields f, string name, double low, double high) => f.Needed(name, low, high, "mm", "Measure it with a ruler.") * Mm;

    private static string Text(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}
