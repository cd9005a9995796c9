using System.Diagnostics;
using System.Globalization;
using Coolproof.Bench.Traces;

// A logger's file in: the same file read by Coolproof and by DuckDB, one way a process, so that peak memory is that way's own (bench/peers/traces.py). Prints one tab-separated
// line: way, seconds, rows, and the sum of each column, by which both are seen to have read the same.
if (args is not [var way, var file, ..] || (way == "make" && args.Length != 3))
{
    Console.Error.WriteLine("usage: Coolproof.Bench.Traces make FILE.csv ROWS | own FILE.csv | kept FILE.csv | sums FILE.csv | table FILE.csv");
    return 2;
}

if (way == "make")
{
    LoggedFile.Write(file, int.Parse(args[2], CultureInfo.InvariantCulture));
    return 0;
}

long begin = Stopwatch.GetTimestamp();
ColumnSums sums = way switch
{
    "own" => OwnWay.Read(file),
    "kept" => OwnWay.Keep(file),
    "sums" => PeerWay.Sums(file),
    "table" => PeerWay.Table(file),
    _ => throw new ArgumentException($"own, kept, sums or table, not {way}"),
};
Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{way}\t{Stopwatch.GetElapsedTime(begin).TotalSeconds:R}\t{sums}"));
return 0;
