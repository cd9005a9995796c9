using System.Text.Json.Nodes;

namespace Coolproof.Tests;

/// <summary>`coolproof gear` as a person runs it.</summary>
public class GearTests
{
    static readonly string Demo = TestFiles.Of("demo", "demo-day.csv");
    static readonly string[] Limits = ["--can-limit", "90C", "--insulation", "H", "--magnet", "SH", "--lap-time", "26s"];

    [Fact]
    public void An_answer_prints_as_its_schema_says_and_stays_within_the_card()
    {
        var text = Good("--pinions", "20..28", "--timings", "25..35", "--ratio", "8..10", "--json");
        Contract.Fits("gear", text);
        Assert.False(Contract.Allows("gear", text.Replace("\"oddsOfAny\"", "\"odds of any\"")));
        var answer = JsonNode.Parse(text)!;
        var gears = answer["gears"]!.AsArray();
        Assert.All(gears, g =>
        {
            Assert.InRange(g!["finalDriveRatio"]!.GetValue<double>(), 8, 10);
            Assert.InRange(g["timingDeg"]!.GetValue<double>(), 25, 35);
        });
        foreach (var option in answer["options"]!.AsArray())
            if (option!["best"] is { } best) Assert.True(option["gears"]![best.GetValue<int>()]!["oddsOfAny"]!.GetValue<double>() <= 0.1);
        Assert.Contains("rule book", answer["caution"]!.GetValue<string>());
    }

    [Fact]
    public void People_read_a_sentence_a_table_and_the_cautions_within_100_columns()
    {
        var said = Good("--units", "f");
        Assert.Contains("the quickest that stays under every limit", said.ReplaceLineEndings(" "));
        Assert.Contains("Check the rule book", said.ReplaceLineEndings(" "));
        Assert.Contains("fingers off", said.ReplaceLineEndings(" "));
        Assert.Contains("26.0 s noted", said.ReplaceLineEndings(" "));
        Assert.DoesNotContain("°C", said);
        Assert.All(said.Split('\n'), line => Assert.True(line.Length <= 100, line));
    }

    [Fact]
    public void The_picture_has_every_option_and_the_limit()
    {
        var drawn = Path.Combine(Directory.CreateTempSubdirectory("coolproof-").FullName, "gears.svg");
        Good("--pinions", "22..26", "--picture", drawn, "--theme", "dark");
        var svg = System.IO.File.ReadAllText(drawn).Replace('\u00a0', ' ');
        Assert.All(["bare can", "rear blower", "nose-scoop duct", "teeth", "lap s"], words => Assert.Contains(words, svg));
        Assert.Matches("(can|winding) limit", svg);
        Assert.Equal(2, ProgramRun.Of("gear", Demo, "--picture", "gears.gif").ExitCode);
    }

    [Fact]
    public void A_lap_of_one_s_own_is_driven_and_a_wrong_one_is_told_line_by_line()
    {
        var lap = File("part,length_m,radius_m,turn_deg\nstraight,40,,\nhairpin,,3,180\nstraight,40,,\nhairpin,,3,180\n");
        Assert.Matches(@"noted\) of (9\d|10\d) m", Good("--lap", lap, "--lap-time", "13s").ReplaceLineEndings(" "));
        var wrong = ProgramRun.Of("gear", Demo, "--lap", File("part,length_m,radius_m,turn_deg\nstraight,forty,,\nhairpin,,,180\n"));
        Assert.Equal(2, wrong.ExitCode);
        Assert.Contains("line 2", wrong.Error);
        Assert.Contains("line 3", wrong.Error);
        Assert.Empty(wrong.Out);
    }

    // A made-up trace: 30 s laps of a straight, a hairpin, a straight and a wider corner, in km/h with a decimal comma.
    [Fact]
    public void A_lap_is_found_in_a_logger_s_speed_and_what_the_gearing_decides_is_told()
    {
        var said = Good("--pinions", "22..26", "--lap", File(Logged(8))).ReplaceLineEndings(" ");
        Assert.Matches(@"The lap is that from \d+\.\d to \d+\.\d s of the speed trace: 30\.\d\d s, 2[45]\d m, the most typical of \d\.", said);
        Assert.Contains("elsewhere the speeds of the trace are kept", said);
        Assert.Matches(@"lap (29|30|31)\.\d s \(30\.\d s noted\)", said);
        Assert.DoesNotContain("an invented", said);
    }

    [Fact]
    public void A_trace_without_a_lap_is_one_clear_error_with_its_place_and_a_remedy()
    {
        (string Text, string Said)[] wrong =
        [
            ("time [s],speed\n0,5\n0.1,6\n", "no speed with a unit"), ("time [s],temp [C]\n0,25\n0.1,26\n0.2,26\n", "no speed with a unit"), ("nothing\nbut words\n", "length_m, radius_m and turn_deg"),
            ("time [s],speed [km/h]\n0,5\n0.1,6\n0.2,7\n", "3 speeds"), (Logged(8).Replace(",0;", ",0;-"), "below 0"), (Logged(1.4), "no lap repeats"),
        ];
        foreach (var (text, said) in wrong)
        {
            var run = ProgramRun.Of("gear", Demo, "--lap", File(text));
            Assert.True(run.ExitCode == 2 && run.Error.Contains(said, StringComparison.Ordinal), $"{said}: {run.Error}");
            Assert.Empty(run.Out);
        }
    }

    // Speed over a lap by corner speeds, 5 m/s² of throttle towards 11 m/s and 7 m/s² of brakes.
    static string Logged(double laps)
    {
        List<double> lap = [];
        foreach (var (corner, cornerS, straightS) in new[] { (5.0, 3.0, 9.0), (6.5, 4.0, 6.0), (4.5, 3.0, 5.0) })
        {
            for (var t = 0.0; t < cornerS; t += 0.1) lap.Add(corner);
            var next = corner == 5 ? 6.5 : corner == 6.5 ? 4.5 : 5;
            for (var t = 0.0; t < straightS; t += 0.1) lap.Add(Math.Min(11 - (11 - corner) * Math.Exp(-t / 1.2), next + 7 * (straightS - t)));
        }
        return "time [s];speed [km/h]\n" + string.Concat(Enumerable.Range(0, (int)(laps * lap.Count)).Select(i => FormattableString.Invariant($"{0.1 * i:0.0};{3.6 * lap[i % lap.Count]:0.0}\n"))).Replace('.', ',');
    }

    [Theory]
    [InlineData("--space 10..12", "Give other pinions, another spur")]
    [InlineData("--pinions 28..20", "the smaller first")]
    [InlineData("--ratio 20..21", "rule book")]
    [InlineData("--mass 1400 --class-mass 1500", "below the 1500 g")]
    [InlineData("--timing 80", "expected 0 to 60")]
    [InlineData("--capacity 0", "expected 200 to 20000")]
    [InlineData("--lap nowhere.csv", "can't be read")]
    public void A_wrong_question_is_one_clear_error(string asked, string said)
    {
        var run = ProgramRun.Of(["gear", Demo, .. asked.Split(' ')]);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(said, run.Error);
        Assert.Empty(run.Out);
    }

    static string File(string text)
    {
        var path = Path.Combine(Directory.CreateTempSubdirectory("coolproof-").FullName, "lap.csv");
        System.IO.File.WriteAllText(path, text);
        return path;
    }

    static string Good(params string[] asked) => ProgramRun.Good(["gear", Demo, .. Limits.Where((_, i) => !asked.Contains("--lap-time") || i < 6), .. asked]);
}
