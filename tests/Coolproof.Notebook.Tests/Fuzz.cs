using System.Diagnostics;
using System.Text;
using CsCheck;

namespace Coolproof.Notebook.Tests;

/// <summary>Mutated tables: never an exception, never a hang, always either problems that name their places or a table that can be written and read back.</summary>
public sealed class Fuzz
{
    private static readonly string[] Seeds =
    [
        "option,read_c\nbare,61.5\nclamp,58\n",
        "option;run;read_c;stop_to_read_s;drive_min;ambient_c;kind\nbare;1;61,5;15;6;24,5;test\n;;60,8;22;;;\nclamp;2;58,0;14;6:00;25 °C;race\n",
        "day,run,started_at,option,read_f,stop_to_read_s,drive_s,note\nSat,1,2026-06-13T17:05,\"25\"\" fan\",142 °F,15 s,360,\"a, b\"\nSat,2,2026-06-13 17:35:10+02:00,bare,150,12,360,\n",
        "option\trun\twinding_mohm\twinding_at_s\twinding_cold_mohm\twinding_cold_c\twinding_pair\tdrive_s\tread_c\texclude\tweight\nbare\t1\t27\t12\t22\t25\tAB\t360\t61\t\t12\n\t\t26.5\t20\t\t\tab\t\t\tslip\t\n",
        "option,kind,remounted,spot,hold,surface_of_spot,fan,fan_after_stop,cut_short,air_by,sky,wind,track,track_c,read_c,drive_s,pinion,timing_deg,emissivity_set\n"
            + "bare,warm-up,yes,can,max,tape,ok,on,crash,gun,sun,calm,dry,35,61,360,18,30,0.95\n",
    ];

    private static readonly string[] Scraps =
    [
        ",", ";", "\t", "\n", "\r", "\r\n", "\"", "\"\"", "\0", " ", "°", "-", "−", "+", ".", "1e999", "NaN", "999999999999999999999999", ":", "::", "%", "C", "F", "K", "min", "s", "\uFEFF", "\uFFFD",
        "option", "run", "read_c", "read_f", "day", "started_at", "sep=;\n", "2026-06-13T17:05", "2026-02-30T25:61", "=1+1", "<script>", "💥", "ß", "İ", "test", "void", "1", "0", "\u0085", "\u2028",
    ];

    private static readonly Gen<byte[]> Mutated =
        from seed in Gen.Int[0, Seeds.Length - 1]
        from encoding in Gen.Int[0, 9]
        from steps in Gen.Select(Gen.Int[0, 7], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Int[0, 255], Gen.Int[0, Scraps.Length - 1]).Array[1, 6]
        select steps.Aggregate(Encoded(Seeds[seed], encoding), (bytes, step) => Step(bytes, step.Item1, step.Item2, step.Item3, (byte)step.Item4, Scraps[step.Item5]));

    [Fact]
    public void Mutated_tables_are_either_read_or_refused() => Mutated.Sample(Check, iter: 20_000);

    [Fact]
    [Trait("Suite", "long")]
    public void A_million_mutated_tables_are_either_read_or_refused() => Mutated.Sample(Check, iter: 1_000_000);

    [Fact]
    public void Random_bytes_are_either_read_or_refused() => Gen.Byte.Array[0, 6000].Sample(Check, iter: 3000);

    private static byte[] Encoded(string text, int encoding) => encoding switch
    {
        0 => Encoding.Unicode.GetBytes(text),
        1 => [0xFE, 0xFF, .. Encoding.BigEndianUnicode.GetBytes(text)],
        2 => Encoding.Latin1.GetBytes(text),
        3 => [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(text)],
        _ => Encoding.UTF8.GetBytes(text),
    };

    private static byte[] Step(byte[] bytes, int kind, double from, double to, byte value, string scrap)
    {
        int a = (int)(from * bytes.Length);
        int b = Math.Min(bytes.Length, a + (int)(to * 40));
        return kind switch
        {
            0 => [.. bytes[..a], value, .. bytes[Math.Min(bytes.Length, a + 1)..]],
            1 => [.. bytes[..a], .. bytes[b..]],
            2 => [.. bytes[..b], .. bytes[a..]],
            3 => bytes[..a],
            4 => [.. bytes[..a], .. bytes[b..], .. bytes[a..b]],
            5 => [.. bytes[..a], .. Encoding.UTF8.GetBytes(scrap), .. bytes[b..]],
            _ => [.. bytes[..a], .. Encoding.UTF8.GetBytes(scrap), .. bytes[a..]],
        };
    }

    private static void Check(byte[] bytes)
    {
        long started = Stopwatch.GetTimestamp();
        TableRead read = ReadingsTableReader.Read(new MemoryStream(bytes), givenDriveS: 300);
        Assert.True(Stopwatch.GetElapsedTime(started) < TimeSpan.FromSeconds(5), "hangs");
        if (!read.Understood)
        {
            Assert.NotEmpty(read.Problems);
            Assert.Equal(read.Problems.OrderBy(problem => problem.Line), read.Problems);
            Assert.All(read.Problems, problem => Assert.True(problem.Line >= 0 && problem.Expected.Length > 0 && problem.Found.Length > 0));
            return;
        }

        Assert.Empty(read.Problems);
        Assert.NotEmpty(read.Table!.Runs);
        Assert.All(read.Table.Runs, CheckPhysics);
        string written = TableText.Written(read.Table);
        TableRead back = TableText.Read(written, givenDriveS: 300);
        Assert.True(back.Understood, written + string.Join('\n', back.Problems));
        string? difference = SameTable.Difference(read.Table, back.Table!);
        Assert.True(difference is null, difference);
    }

    private static void CheckPhysics(Run run)
    {
        Assert.True(run.Option.Length > 0 && run.Name.Length > 0 && run.Day.Length > 0);
        Assert.InRange(run.DriveS, 0.001, 7200);
        Assert.InRange(run.StoodS, 0, run.DriveS);
        Assert.True(run.AirC is null or (>= -30 and <= 60));
        foreach (Reading reading in run.Readings)
        {
            Assert.True(reading.ReadC is not null || reading.Winding is not null);
            Assert.True(reading.ReadC is null or (>= -40 and <= 350));
            Assert.True(reading.StopToReadS is null or (>= 0 and <= 3600));
        }
    }
}
