using Coolproof.Notebook;
using Coolproof.Rehearsal;
using Coolproof.Screen;

namespace Coolproof.Commands;

/// <summary>`coolproof rehearse` from the settings to the files.</summary>
internal sealed class Rehearsing(Terminal terminal)
{
    /// <summary>Simulates, writes, says where.</summary>
    /// <param name="settings">What the day is made of.</param>
    /// <param name="path">The table's place; null: standard output, without the truth.</param>
    /// <param name="units">Unit of the table's temperatures.</param>
    /// <returns>The exit code.</returns>
    public int Run(RehearsalSettings settings, string? path, TemperatureUnitChoice units)
    {
        SimulatedDay day;
        try
        {
            day = Rehearse.Day(settings);
        }
        catch (ArgumentException wrong)
        {
            terminal.Error.WriteLine($"coolproof rehearse: no such day can be made up: {Cells.Clean(wrong.Message)} Nothing was written.");
            return Exit.BadInput;
        }
        if (path is null)
        {
            RehearsalFiles.WriteTable(day, terminal.Out, units);
            terminal.Out.Flush();
            return Exit.Done;
        }
        var truth = RehearsalPlace.TruthBeside(path);
        try
        {
            WholeFile.Write(path, writer => RehearsalFiles.WriteTable(day, writer, units));
            WholeFile.Write(truth, writer => RehearsalFiles.WriteTruth(day, writer));
        }
        catch (Exception cause) when (cause is IOException or UnauthorizedAccessException)
        {
            terminal.Error.WriteLine($"coolproof rehearse: {Cells.Clean(cause.Message)} What was there before is as it was; choose a folder that you may write to.");
            return Exit.Failed;
        }
        terminal.Out.Write(
            $"All made up: {settings.Options.Count} cooling options, {day.Runs.Count} runs, {day.Runs.Sum(run => run.Readings.Count)} readings in {path}\n" +
            $"The truth behind them: {truth} (judge first, look afterwards)\nNext: ./coolproof compare {path}\n");
        terminal.Out.Flush();
        return Exit.Done;
    }
}
