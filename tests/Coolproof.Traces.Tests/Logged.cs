using System.Text;
using Coolproof.Traces.Import;

namespace Coolproof.Traces.Tests;

/// <summary>Logger files written in the test, read with the guessed layout.</summary>
internal static class Logged
{
    public sealed record Outcome(TraceLayout Layout, LogRead Read, long[] AtUs, double[][] Values);

    public static Outcome Of(string text, LayoutWish? wish = null, int threads = 2) => Of(Encoding.UTF8.GetBytes(text), wish, threads);

    public static Outcome Of(byte[] bytes, LayoutWish? wish = null, int threads = 2)
    {
        LogFile file = LogFile.Open(new MemoryStream(bytes));
        TraceLayout layout = LayoutGuess.Of(file.Head, wish);
        List<long> times = [];
        List<double>[] values = [.. layout.Channels.Select(_ => new List<double>())];
        LogRead read = file.Read(layout, rows =>
        {
            times.AddRange(rows.AtUs);
            for (int c = 0; c < values.Length; c++) values[c].AddRange(rows.Values(c));
        }, threads);
        return new Outcome(layout, read, [.. times], [.. values.Select(list => list.ToArray())]);
    }

    public static TraceProblem Refused(string text, LayoutWish? wish = null) => Assert.Throws<TraceRefusedException>(() => Of(text, wish)).Problem;
}
