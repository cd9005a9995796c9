using System.Security.Cryptography;
using System.Text;
using Coolproof.Evidence;
using Coolproof.Notebook;
using Coolproof.Notebook.Journal;

namespace Coolproof.Board;

/// <summary>What is to be judged for a day or a question: its readings as they stand in a notebook, and how.</summary>
/// <param name="Table">The readings.</param>
/// <param name="Settings">How they are judged.</param>
/// <param name="Mark">The same for the same readings and settings, whatever else changes in the notebook.</param>
internal sealed record JudgeTask(NotebookTable Table, JudgeSettings Settings, string Mark)
{
    const double SameWithinK = 2;
    const long Seed = 1;

    /// <summary>The task; null when the notebook has no such day or question.</summary>
    /// <param name="notebook">The notebook.</param>
    /// <param name="about">UUID of a day or a question.</param>
    /// <param name="threads">Threads to judge with.</param>
    public static JudgeTask? Of(PitNotebook notebook, Guid about, int threads)
    {
        // A day is judged at the conditions that its question asks for.
        if (AskedAbout.Of(notebook, about) is not var (day, asked, _)) return null;
        var table = day is null ? NotebookTable.Of(notebook, question: about) : NotebookTable.Of(notebook, day: about);
        var settings = new JudgeSettings(asked?.AirC, asked?.DriveS, asked?.SameWithinK ?? SameWithinK, Seed, threads);
        return new JudgeTask(table, settings, MarkOf(table.Table, settings));
    }

    /// <summary>The same for the same readings and settings.</summary>
    internal static string MarkOf(ReadingsTable table, JudgeSettings settings)
    {
        // Records print all their fields; lists inside them are printed one by one.
        var text = new StringBuilder($"{settings with { Threads = 0 }}\n");
        foreach (var run in table.Runs)
        {
            text.Append(run with { Readings = [] }).Append('\n');
            foreach (var reading in run.Readings) text.Append(reading with { Line = 0 }).Append('\n');
        }
        foreach (var check in table.GunChecks) text.Append(check).Append('\n');
        return Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())));
    }
}
