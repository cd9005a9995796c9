using System.Globalization;
using System.Text;

namespace Coolproof.Bench.Traces;

/// <summary>A logger's file of any length, made up: time each millisecond, can, current and turning, over runs of six minutes with four between them.</summary>
internal static class LoggedFile
{
    public static void Write(string path, int rows)
    {
        using StreamWriter file = new(path, false, new UTF8Encoding(false), 1 << 20);
        file.Write("time (s),can (C),current (A),rpm\n");
        Span<char> line = stackalloc char[80];
        ulong state = 0x9E3779B97F4A7C15;
        double can = 27;
        for (int i = 0; i < rows; i++)
        {
            state ^= state << 13;
            state ^= state >> 7;
            state ^= state << 17;
            double chance = (state >> 11) * (1.0 / (1UL << 53));
            bool driven = i % 600_000 < 360_000;
            can += ((driven ? 75 : 27) - can) * 3e-6;
            double current = driven ? 6 + (34 * chance) : 0.1 * chance, turning = driven ? 9000 + (22_000 * chance) : 0;
            line.TryWrite(CultureInfo.InvariantCulture, $"{i / 1000.0:0.000},{can + (0.1 * chance):0.00},{current:0.000},{turning:0}\n", out int length);
            file.Write(line[..length]);
        }
    }
}
