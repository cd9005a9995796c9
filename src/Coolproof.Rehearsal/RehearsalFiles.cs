using Coolproof.Notebook;

namespace Coolproof.Rehearsal;

/// <summary>A simulated day as a readings table, and its truth as a second file.</summary>
public static class RehearsalFiles
{
    /// <summary>How the note of every made-up table begins.</summary>
    public const string MadeUp = "all made up";

    /// <summary>Writes the readings table; the note of its first row says that all is made up.</summary>
    /// <param name="day">The day.</param>
    /// <param name="writer">Where to; left open.</param>
    /// <param name="unit">Unit of the temperatures.</param>
    public static void WriteTable(SimulatedDay day, TextWriter writer, TemperatureUnitChoice unit = TemperatureUnitChoice.Celsius)
    {
        Run first = day.Runs[0];
        Reading marked = first.Readings[0] with
        {
            Note = $"{MadeUp}: a simulated rehearsal, generator {TruthRanges.GeneratorVersion}, seed {day.Settings.Seed}",
        };
        Run firstMarked = first with { Readings = [marked, .. first.Readings.Skip(1)] };
        ReadingsTableWriter.Write(day.Table with { Runs = [firstMarked, .. day.Runs.Skip(1)] }, writer, unit);
    }

    /// <summary>Writes the truth as JSON (<see cref="TruthDocument"/>).</summary>
    /// <param name="day">The day.</param>
    /// <param name="writer">Where to; left open.</param>
    /// <param name="ambientC">Reference air, °C; null: the median noted.</param>
    /// <param name="driveS">Reference seconds of hard driving; null: the median.</param>
    public static void WriteTruth(SimulatedDay day, TextWriter writer, double? ambientC = null, double? driveS = null) =>
        writer.Write(TruthDocument.Of(day, ambientC, driveS).ToJson());
}
