using Coolproof.Notebook;
using Coolproof.Rehearsal;

namespace Coolproof.Bench.Day;

/// <summary>The tables that are measured: rehearsals of a fixed seed, delays and clock times noted; all made up.</summary>
internal static class BenchTable
{
    private const long Seed = 20_260_512;

    /// <summary>Runs of one evening: 6 options × 5 rounds.</summary>
    public const int RunsAnEvening = 30;

    private static readonly string[] Names = ["bare can", "clamp", "clamp and fan", "double fan", "duct", "wrap"];

    /// <summary>Writes a table of some evenings of 30 runs × 3 readings.</summary>
    public static void Write(string path, int evenings)
    {
        RehearsalOption[] options = [.. Names.Select(n => new RehearsalOption(n))];
        SimulatedDay day = Rehearse.Day(new RehearsalSettings(Seed, options, RunsAnEvening / options.Length) { Evenings = evenings });
        using StreamWriter writer = new(path) { NewLine = "\n" };
        RehearsalFiles.WriteTable(day, writer);
    }

    /// <summary>Reads a table as the program does.</summary>
    /// <exception cref="InvalidDataException">It isn't understood.</exception>
    public static ReadingsTable Read(string path)
    {
        TableRead read = ReadingsTableReader.Read(path);
        return read.Understood ? read.Table : throw new InvalidDataException($"{path}: {read.Problems[0]}");
    }
}
