using System.Runtime.InteropServices;

namespace Coolproof.Bench.Day;

/// <summary>Rows of doubles in a file, little-endian, after two 32-bit counts: rows and columns.</summary>
internal static class NumberFile
{
    /// <summary>Writes rows of equal length.</summary>
    public static void Write(string path, IReadOnlyList<double[]> rows)
    {
        using BinaryWriter writer = new(File.Create(path));
        writer.Write(rows.Count);
        writer.Write(rows[0].Length);
        foreach (double[] row in rows)
            writer.Write(MemoryMarshal.AsBytes(row.AsSpan()));
    }

    /// <summary>Reads what <see cref="Write"/> wrote.</summary>
    /// <exception cref="InvalidDataException">The file is shorter or longer than its counts say.</exception>
    public static double[][] Read(string path)
    {
        byte[] bytes = File.ReadAllBytes(path);
        int rows = BitConverter.ToInt32(bytes, 0), columns = BitConverter.ToInt32(bytes, 4);
        if (bytes.Length != 8 + 8L * rows * columns)
            throw new InvalidDataException($"{path} has {bytes.Length} bytes, not those of {rows} × {columns} numbers.");
        ReadOnlySpan<double> numbers = MemoryMarshal.Cast<byte, double>(bytes.AsSpan(8));
        double[][] table = new double[rows][];
        for (int i = 0; i < rows; i++)
            table[i] = numbers.Slice(i * columns, columns).ToArray();
        return table;
    }
}
