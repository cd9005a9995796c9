using Coolproof.Evidence;
using Coolproof.Notebook;
using Coolproof.Screen;
using Coolproof.Words;

namespace Coolproof.Commands;

/// <summary>A readings table judged for a command: with progress where somebody waits, and with what is said where no verdict can be given.</summary>
internal static class TableJudging
{
    /// <summary>Judges.</summary>
    public static Judgement Of(ReadingsTable table, JudgeSettings settings, Terminal terminal, CancellationToken cancel) => Of(table, [], settings, terminal, cancel);

    /// <summary>Judges together with the tables of earlier days.</summary>
    public static Judgement Of(ReadingsTable table, IReadOnlyList<ReadingsTable> before, JudgeSettings settings, Terminal terminal, CancellationToken cancel)
    {
        using var progress = new ProgressLine(terminal.Error, terminal.ShowsProgress);
        settings = settings with { Threads = Math.Min(4, Environment.ProcessorCount) };
        return before.Count == 0 ? Judge.Of(table, settings, progress, cancel) : Judge.After(table, before, settings, progress, cancel);
    }

    /// <summary>The same where the verdict on the new table by itself is there already.</summary>
    public static Judgement Together(ReadingsTable table, IReadOnlyList<ReadingsTable> before, Verdict alone, JudgeSettings settings, Terminal terminal, CancellationToken cancel)
    {
        using var progress = new ProgressLine(terminal.Error, terminal.ShowsProgress);
        return Judge.Together(table, before, alone, settings with { Threads = Math.Min(4, Environment.ProcessorCount) }, progress, cancel);
    }

    /// <summary>Says why there is no verdict.</summary>
    /// <returns>The exit code.</returns>
    public static int Unjudged(Judgement judgement, TemperatureUnitChoice units, Terminal terminal)
    {
        switch (judgement)
        {
            case Refused refused:
                terminal.Error.WriteLine($"coolproof: {Put(refused.Reason)} {Put(refused.Remedy)}");
                return Exit.BadInput;
            case NotConverged failed:
                terminal.Error.WriteLine("coolproof: no ranking is given, since the calculation did not pass its own checks.");
                terminal.Error.WriteLine($"  {Put(failed.Quantity)}: {Put(failed.Reason)}");
                terminal.Error.WriteLine($"  {Put(failed.Remedy)}");
                return Exit.Failed;
            default:
                throw new InvalidOperationException($"An unknown judgement: {judgement.GetType().Name}.");
        }

        string Put(string sentence) => Cells.Clean(units == TemperatureUnitChoice.Fahrenheit ? FahrenheitWords.Of(sentence) : sentence);
    }
}
