using Coolproof.Traces.Import;
using Coolproof.Traces.Kept;

namespace Coolproof.Bench.Traces;

/// <summary>The file by Coolproof: layout guessed, every cell parsed, all columns added up; with <see cref="Keep"/> also kept whole.</summary>
internal static class OwnWay
{
    public static ColumnSums Read(string path) => Read(path, (_, _) => { });

    public static ColumnSums Keep(string path)
    {
        string folder = path + ".kept";
        TraceWriter? writer = null;
        try
        {
            ColumnSums sums = Read(path, (layout, rows) => (writer ??= new TraceWriter(folder, layout)).Take(rows));
            string name = Path.Combine(folder, writer!.Done() + TraceWriter.Ending);
            Console.Error.WriteLine($"kept: {new FileInfo(name).Length / 1e6:0} MB of {new FileInfo(path).Length / 1e6:0}");
            return sums;
        }
        finally
        {
            writer?.Dispose();
            Directory.Delete(folder, true);
        }
    }

    static ColumnSums Read(string path, Action<TraceLayout, TraceRows> also)
    {
        using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.Read, 0, FileOptions.SequentialScan);
        LogFile log = LogFile.Open(file);
        TraceLayout layout = LayoutGuess.Of(log.Head);
        double time = 0;
        double[] sums = new double[3];
        LogRead read = log.Read(layout, rows =>
        {
            foreach (long us in rows.AtUs) time += us / 1e6;
            for (int c = 0; c < sums.Length; c++) foreach (double value in rows.Values(c)) sums[c] += value;
            also(layout, rows);
        }, Environment.ProcessorCount);
        if (read.Problems.Count > 0) throw new InvalidDataException(read.Problems.First[0].ToString());
        return new ColumnSums(read.Rows, time, sums[0], sums[1], sums[2]);
    }
}
