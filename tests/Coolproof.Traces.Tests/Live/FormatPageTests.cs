using System.Globalization;
using System.Text.RegularExpressions;
using Coolproof.Traces.Import;
using Coolproof.Traces.Live;

namespace Coolproof.Traces.Tests.Live;

/// <summary>docs/formats/live-lines.md says what the reader does.</summary>
public partial class FormatPageTests
{
    static readonly long Now = DateTimeOffset.Parse("2026-06-09T16:05:08Z", CultureInfo.InvariantCulture).ToUnixTimeMilliseconds();

    static readonly string Page = File.ReadAllText(Path.Combine(Root(), "docs", "formats", "live-lines.md"));

    [Fact]
    public void Every_example_of_the_page_is_understood()
    {
        // What stands behind three blanks or more explains the example.
        var examples = Blocks().Matches(Page).Take(2).SelectMany(block => block.Groups[1].Value.Split('\n', StringSplitOptions.RemoveEmptyEntries)).Select(line => line.Split("   ")[0]).ToList();
        Assert.True(examples.Count > 10);
        Assert.All(examples, line => Assert.Null(LiveLineReader.Read(line, Now).Problem));
    }

    [Fact]
    public void Every_unit_of_the_page_is_known_with_the_limits_that_it_says()
    {
        var rows = Rows().Matches(Page).Select(row => (Units: row.Groups[1].Value, Kept: row.Groups[2].Value.Trim(), Limits: row.Groups[3].Value)).ToList();
        Assert.Equal(8, rows.Count);
        foreach (var (units, kept, limits) in rows)
            foreach (var word in units.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries))
            {
                var unit = ChannelUnit.Of(word);
                Assert.True(unit is not null, word);
                Assert.Equal(kept, unit.Name);
                Assert.Equal([unit.Least, unit.Most], Numbers().Matches(limits).Select(number => double.Parse(number.Value.Replace(",", "", StringComparison.Ordinal).Replace('−', '-'), CultureInfo.InvariantCulture)));
            }
    }

    static string Root()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Coolproof.slnx"))) folder = Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("The repository is not above the tests.");
        return folder;
    }

    [GeneratedRegex(@"```\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex Blocks();

    [GeneratedRegex(@"^\| (?:temperature|current|voltage|speed|turns|share|pressure|power) \| ([^|]+) \| ([^|]+) \| ([^|]+) \|$", RegexOptions.Multiline)]
    private static partial Regex Rows();

    [GeneratedRegex("[−0-9][0-9,]*")]
    private static partial Regex Numbers();
}
