using System.Globalization;
using System.Text.Json.Nodes;

namespace Coolproof.Tests;

/// <summary>Readings judged with the check of their gun, on the command line.</summary>
public class GunChecksTests
{
    static readonly string Day = TestFiles.Of("demo", "demo-day.csv");

    readonly string folder = Directory.CreateTempSubdirectory("coolproof-").FullName;

    string Checks(string gun, double off)
    {
        var path = Path.Combine(folder, $"{gun}-{off}.json");
        string C(double celsius) => (celsius + off).ToString("0.0", CultureInfo.InvariantCulture) + "C";
        ProgramRun.Good("gun", "check", "--ice", $"{C(0.2)},{C(-0.2)},{C(0)}", "--mug", $"{C(60.4)},{C(60)}@60C", "--gun", gun, "--keep", path);
        return path;
    }

    // The demo's evening as a gun would have read it that shows 4 °C too much.
    string FourOff()
    {
        var lines = File.ReadAllLines(Day);
        var read = Array.IndexOf(lines[0].Split(','), "read_c");
        var path = Path.Combine(folder, "four-off.csv");
        File.WriteAllLines(path, lines.Select((line, i) =>
        {
            var cells = line.Split(',');
            if (i > 0 && cells.Length > read && double.TryParse(cells[read], CultureInfo.InvariantCulture, out var celsius)) cells[read] = (celsius + 4).ToString("0.0", CultureInfo.InvariantCulture);
            return string.Join(',', cells);
        }));
        return path;
    }

    static JsonNode Judged(params string[] asked) => JsonNode.Parse(ProgramRun.Good(["compare", .. asked, "--json"]))!;

    static double Peak(JsonNode verdict, int option) => verdict["options"]![option]!["peakCanC"]!["mean"]!.GetValue<double>();

    [Fact]
    public void A_gun_four_degrees_off_that_was_checked_gives_the_right_peaks_and_the_same_differences()
    {
        string gun = File.ReadAllLines(Day) is [var head, ..] && head.Contains("instrument", StringComparison.Ordinal) ? throw new InvalidOperationException("the demo names its gun now") : "gun";
        JsonNode sound = Judged(Day, "--gun-checks", Checks(gun, 0)), off = Judged(FourOff(), "--gun-checks", Checks(gun, 4)), unchecked4 = Judged(FourOff());
        for (var option = 0; option < 6; option++)
        {
            Assert.Equal(Peak(sound, option), Peak(off, option), 0.8);
            Assert.True(Peak(unchecked4, option) > Peak(off, option) + 2, "without the check the 4 degrees stay");
        }
        foreach (var (a, b) in sound["pairs"]!.AsArray().Zip(off["pairs"]!.AsArray()))
            Assert.Equal(a!["differenceK"]!["mean"]!.GetValue<double>(), b!["differenceK"]!["mean"]!.GetValue<double>(), 0.5);
        Assert.Contains(off["warnings"]!.AsArray(), w => w!.GetValue<string>().StartsWith("All readings are by one gun that was checked: it shows 4.", StringComparison.Ordinal) || w.GetValue<string>().Contains("it shows 3.", StringComparison.Ordinal));
        Assert.Contains(unchecked4["warnings"]!.AsArray(), w => w!.GetValue<string>().Contains("one gun that was not checked", StringComparison.Ordinal));
    }

    [Fact]
    public void A_check_of_another_gun_changes_no_byte() =>
        Assert.Equal(ProgramRun.Good("compare", Day, "--json"), ProgramRun.Good("compare", Day, "--json", "--gun-checks", Checks("another gun", 4)));

    static readonly string Mounts = TestFiles.Of("demo", "mounts.json"), Parts = TestFiles.Of("demo", "spend.json");

    // Each command that judges a readings table, asked of a table.
    static string[] Asked(string command, string table) => command switch
    {
        "why" => [command, table, "5", "2"],
        "forecast" => [command, table, "--air", "36C"],
        "gear" => [command, table, "--lap-time", "26s", "--pinions", "23..25"],
        "mount" => [command, Mounts, "--with", table],
        "spend" => [command, Parts, "--with", table, "--mounts", Mounts],
        "plan" => [command, "--so-far", table, "--rain-in", "2h"],
        _ => [command, table],
    };

    [Theory]
    [InlineData("why", 0)]
    [InlineData("forecast", 2)]
    [InlineData("gear", 2)]
    [InlineData("mount", 2)]
    [InlineData("spend", 0)]
    [InlineData("cooldown", 0)]
    [InlineData("plan", 0)]
    public void Every_command_that_judges_a_table_takes_the_check_of_its_gun_and_no_other(string command, double coolerK)
    {
        var table = FourOff();
        string unchecked4 = ProgramRun.Good([.. Asked(command, table), "--json"]), right = ProgramRun.Good([.. Asked(command, table), "--json", "--gun-checks", Checks("gun", 4)]);
        Assert.Equal(unchecked4, ProgramRun.Good([.. Asked(command, table), "--json", "--gun-checks", Checks("another gun", 4)]));
        Assert.NotEqual(unchecked4, right);
        if (coolerK > 0) Assert.True(Can(right) < Can(unchecked4) - coolerK, $"{Can(right)} °C with the check, {Can(unchecked4)} °C without");

        double Can(string json) => (command switch
        {
            "forecast" => JsonNode.Parse(json)!["options"]![0]!["races"]![0]!["highestCanC"],
            "gear" => JsonNode.Parse(json)!["options"]![0]!["gears"]![0]!["peakCanC"],
            _ => JsonNode.Parse(json)!["driven"]![0]!["canC"],
        })!["q50"]!.GetValue<double>();
    }

    [Theory]
    [InlineData("why")]
    [InlineData("forecast")]
    [InlineData("gear")]
    [InlineData("mount")]
    [InlineData("spend")]
    [InlineData("cooldown")]
    [InlineData("plan")]
    public void A_file_of_checks_that_can_t_be_used_is_one_clear_error_of_every_command(string command)
    {
        var run = ProgramRun.Of([.. Asked(command, Day), "--gun-checks", Path.Combine(folder, "nowhere.json")]);
        Assert.Equal(2, run.ExitCode);
        Assert.StartsWith($"coolproof {command}: ", run.Error);
        Assert.EndsWith("nowhere.json can't be read: there is no such file. Nothing was written.\n", run.Error);
        Assert.Empty(run.Out);
    }

    [Theory]
    [InlineData("mount SHEET", "coolproof mount: --gun-checks tells of the guns that took the readings of a table: give it by --with.")]
    [InlineData("spend SHEET", "coolproof spend: --gun-checks tells of the guns that took the readings of a table: give it by --with.")]
    [InlineData("cooldown", "--gun-checks tells of the guns that took the readings of a table: give the table too")]
    [InlineData("plan", "--gun-checks tells of the guns that took the readings of a table: give it by --known or --so-far")]
    public void Checks_without_a_table_are_one_clear_error(string asked, string said)
    {
        var run = ProgramRun.Of([.. asked.Replace("SHEET", asked.StartsWith("mount", StringComparison.Ordinal) ? Mounts : Parts).Split(' '), "--gun-checks", Checks("gun", 0)]);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(said, run.Error);
        Assert.Empty(run.Out);
    }

    [Fact]
    public void A_report_hands_its_checks_on_and_compare_gives_the_same_bytes_with_them()
    {
        var place = Path.Combine(folder, "out");
        ProgramRun.Good("report", Day, "--gun-checks", Checks("gun", 2), "--no-pdf", "--out", place);
        var data = Path.Combine(place, "data");
        var about = JsonNode.Parse(File.ReadAllText(Path.Combine(data, "about.json")))!;
        Contract.Fits("report-about", about.ToJsonString());
        Contract.Fits("gun-checks", about.ToJsonString());
        string[] words = [.. about["compare"]!.AsArray().Select(w => w!.GetValue<string>())];
        Assert.Equal("about.json", words[Array.IndexOf(words, "--gun-checks") + 1]);
        Assert.Equal(File.ReadAllText(Path.Combine(data, "verdict.json")), ProgramRun.Good([.. words.Select(w => w is "about.json" or "readings.csv" ? Path.Combine(data, w) : w)]));
        Assert.Contains("one gun that was checked", File.ReadAllText(Path.Combine(place, "report.html")));
    }

    [Theory]
    [InlineData("{}", "version: found nothing", "gunChecks: found nothing")]
    [InlineData("{\"version\":1,\"gunChecks\":[{\"gun\":\"\",\"way\":\"steam\",\"readC\":900,\"trueC\":\"hot\"}]}", "gunChecks[0].way", "gunChecks[0].readC: found 900")]
    [InlineData("{\"version\":1,\"gunChecks\":[{\"gun\":\"gun\",\"readF\":90}]}", "gunChecks[0].readF", "Mind capitals")]
    [InlineData("nonsense", "line 1", "text that is no JSON")]
    public void A_file_that_can_t_be_right_is_told_with_its_places(string text, string first, string second)
    {
        var path = Path.Combine(folder, "bad.json");
        File.WriteAllText(path, text);
        var run = ProgramRun.Of("compare", Day, "--gun-checks", path);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(first, run.Error);
        Assert.Contains(second, run.Error);
        Assert.Empty(run.Out);
    }

    [Fact]
    public void A_day_of_the_notebook_has_its_own_checks() =>
        Assert.Contains("a day of the notebook has its own checks", ProgramRun.Of("report", "--day", "evening", "--gun-checks", Checks("gun", 0)).Error);
}
