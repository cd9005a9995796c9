using Coolproof.Board;
using Coolproof.Evidence;

namespace Coolproof.Reports;

/// <summary>Judged reports, the last few, so that page, print, pictures and data of one report are judged once.</summary>
internal sealed class ReportBoard(Judging judging)
{
    const int MostHeld = 16;

    readonly Lock turn = new();
    readonly Dictionary<string, Task<ReportJudging>> held = [];
    readonly Queue<string> order = new();

    /// <summary>What came of judging a subject.</summary>
    /// <param name="subject">The subject.</param>
    /// <param name="cancel">Stops waiting; the work goes on for whoever asks next.</param>
    public Task<ReportJudging> OfAsync(ReportSubject subject, CancellationToken cancel)
    {
        var mark = $"{Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(subject.Csv))} {subject.Settings}";
        lock (turn)
        {
            if (held.TryGetValue(mark, out var there) && !there.IsFaulted) return there.WaitAsync(cancel);
            if (!held.ContainsKey(mark)) order.Enqueue(mark);
            if (order.Count > MostHeld) held.Remove(order.Dequeue());
            var work = Task.Run(() => ReportJudging.Of(subject, (table, how) => judging(table, how, Unwatched, CancellationToken.None)), CancellationToken.None);
            held[mark] = work;
            return work.WaitAsync(cancel);
        }
    }

    static readonly IProgress<JudgeProgress> Unwatched = new Progress<JudgeProgress>();
}
