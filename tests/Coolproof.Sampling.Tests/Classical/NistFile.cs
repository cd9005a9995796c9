using System.Globalization;
using System.Text.RegularExpressions;

namespace Coolproof.Sampling.Tests.Classical;

/// <summary>One .dat file of the NIST Statistical Reference Datasets.</summary>
sealed partial record NistFile(string Name, string[] Lines)
{
    public static NistFile Read(string kind, string name) => new(name, File.ReadAllLines(TestData.Path("nist-strd", kind, name + ".dat")));

    public static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    /// <summary>The numbers of each data row as written.</summary>
    public string[][] DataText
    {
        get
        {
            var range = Lines.Select(line => DataRange().Match(line)).First(m => m.Success);
            var (first, last) = (int.Parse(range.Groups[1].Value), int.Parse(range.Groups[2].Value));
            return [.. Lines[(first - 1)..Math.Min(last, Lines.Length)].Where(l => l.Trim().Length > 0).Select(Words)];
        }
    }

    public double[][] Data => [.. DataText.Select(row => row.Select(Number).ToArray())];

    public string Level => Lines.First(l => l.Contains("Level of Difficulty")).Trim().Split(' ')[0];

    /// <summary>The numbers after a label, in the first line that has the label and a number.</summary>
    public double[] After(string label)
    {
        foreach (var line in Lines)
        {
            var at = line.IndexOf(label, StringComparison.Ordinal);
            if (at < 0) continue;
            var numbers = Numbers(line[(at + label.Length)..]);
            if (numbers.Length > 0) return numbers;
        }
        throw new InvalidDataException($"{Name}: nothing after '{label}'.");
    }

    /// <summary>The rows "b1 = start1 start2 value sd" of a nonlinear file or "B0 value sd" of a linear one.</summary>
    public double[][] ParameterRows =>
        [.. Lines.Take(60).Select(l => ParameterRow().Match(l)).Where(m => m.Success).Select(m => Numbers(m.Groups[1].Value))];

    static double[] Numbers(string text) =>
        [.. Words(text).Where(w => double.TryParse(w, CultureInfo.InvariantCulture, out _)).Select(Number)];

    static string[] Words(string text) => text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);

    [GeneratedRegex(@"Data\s+\(lines\s+(\d+)\s+to\s+(\d+)\)")]
    private static partial Regex DataRange();

    [GeneratedRegex(@"^\s*[bB]\(?\d+\)?\s*=?\s+(-?[\d.].*)$")]
    private static partial Regex ParameterRow();
}
