using System.Security.Cryptography;
using System.Text;
using Coolproof.Evidence;
using Coolproof.Notebook;
using Coolproof.Notebook.Journal;

namespace Coolproof.Board;

/// <summary>What is to be judged for a day together with earlier ones.</summary>
/// <param name="Own">The day by itself.</param>
/// <param name="Days">The earlier days in the order of time.</param>
/// <param name="Before">Their readings.</param>
/// <param name="Mark">The same for the same readings and settings.</param>
internal sealed record EarlierTask(JudgeTask Own, IReadOnlyList<Guid> Days, IReadOnlyList<ReadingsTable> Before, string Mark)
{
    /// <summary>The task; null for a question, which has its days together already, and for a day to which no earlier one belongs.</summary>
    /// <param name="notebook">The notebook.</param>
    /// <param name="about">UUID of the day.</param>
    /// <param name="threads">Threads to judge with.</param>
    public static EarlierTask? Of(PitNotebook notebook, Guid about, int threads)
    {
        if (notebook.Find<NotedDay>(about) is not { } day || JudgeTask.Of(notebook, about, threads) is not { } own) return null;
        if (EarlierDays.Of(notebook, day, own.Table.Table.Runs.Count) is not { Count: > 0 } days) return null;
        return new(own, [.. days.Select(one => one.Day.Id)], [.. days.Select(one => one.Table)], MarkOf(own.Mark, days.Select(one => one.Table), own.Settings));
    }

    /// <summary>The same for the same readings and settings.</summary>
    /// <param name="own">Mark of the day by itself.</param>
    /// <param name="before">Readings of the earlier days.</param>
    /// <param name="settings">How they are judged.</param>
    public static string MarkOf(string own, IEnumerable<ReadingsTable> before, JudgeSettings settings) =>
        Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', before.Select(table => JudgeTask.MarkOf(table, settings)).Prepend(own)))));
}
