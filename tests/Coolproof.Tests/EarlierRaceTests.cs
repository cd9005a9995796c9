using System.Globalization;
using System.Text.Json.Nodes;
using Coolproof.Notebook;

namespace Coolproof.Tests;

/// <summary>`forecast --earlier` and `gear --earlier`: earlier days in what is reckoned from a verdict's draws.</summary>
public sealed class EarlierRaceTests : IDisposable
{
    readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("coolproof-earlier-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void An_earlier_evening_of_the_same_simulated_car_narrows_the_forecast_and_is_named()
    {
        var (before, today) = Evenings();
        var alone = Json("forecast", today, "--air", "35C");
        var together = Json("forecast", today, "--air", "35C", "--earlier", before);
        Contract.Fits("forecast", together.ToJsonString());
        Assert.Null(alone["earlier"]);
        var earlier = together["earlier"]!;
        Assert.Equal((1, 4), (earlier["days"]!.GetValue<int>(), earlier["runs"]!.GetValue<int>()));
        Assert.Equal(("before.csv", 4), (earlier["from"]![0]!["file"]!.GetValue<string>(), earlier["from"]![0]!["runs"]!.GetValue<int>()));
        Assert.Equal(alone["day"]!["airC"]!.GetValue<double>(), together["day"]!["airC"]!.GetValue<double>());
        foreach (var (option, one) in together["options"]!.AsArray().Select((option, one) => (option!, one)))
        {
            var own = earlier["alone"]!["options"]![one]!;
            Assert.Equal(option["name"]!.GetValue<string>(), own["name"]!.GetValue<string>());
            Assert.True(JsonNode.DeepEquals(alone["options"]![one]!["races"]![0]!["highestCanC"], own["highestCanC"]), "what the day says alone is what it says without --earlier");
            Assert.True(Width(option["races"]![0]!["highestCanC"]!) < 0.9 * Width(own["highestCanC"]!), $"{Width(option["races"]![0]!["highestCanC"]!)} K together, {Width(own["highestCanC"]!)} K alone");
        }
        var said = ProgramRun.Good("forecast", today, "--earlier", before, "--air", "95F", "--units", "f").ReplaceLineEndings(" ");
        Assert.Contains("An earlier day with 4 runs is in this answer: ", said);
        Assert.Contains(" in before.csv. From this day alone: In a race of ", said);
        Assert.DoesNotContain("°C", said);
    }

    [Fact]
    public void A_day_that_contradicts_the_earlier_ones_is_pointed_out_in_words_and_numbers()
    {
        var (today, before) = (Table("today.csv", 62, 82), Table("before.csv", 84, 62));
        Assert.Contains("This day contradicts the earlier ones: the can with the bare can ran", ProgramRun.Good("forecast", today, "--earlier", before).ReplaceLineEndings(" "));
        var told = Json("forecast", today, "--earlier", before);
        Contract.Fits("forecast", told.ToJsonString());
        var contradiction = told["earlier"]!["contradictions"]![0]!;
        Assert.True(contradiction["newK"]!.GetValue<double>() < -10 && contradiction["earlierK"]!.GetValue<double>() > 10);
    }

    // Six runs of one driver stand before four of another, who drives much milder.
    [Fact]
    public void A_forecast_is_for_the_driver_of_the_new_day_however_many_runs_of_another_stand_before()
    {
        var today = Table("today.csv", 60, 55, driver: "second");
        var alone = Json("forecast", today);
        var together = Json("forecast", today, "--earlier", Table("before.csv", 90, 82, runs: 6, driver: "first"));
        Assert.InRange(Middle(together) - Middle(alone), -6, 6);
        double Middle(JsonNode told) => told["options"]![0]!["races"]![0]!["highestCanC"]!["q50"]!.GetValue<double>();
    }

    [Fact]
    public void Gearing_is_set_against_the_new_days_pinion_and_takes_the_laps_of_earlier_days()
    {
        var (today, before) = (Table("today.csv", 72, 64, pinion: 26), Table("before.csv", 70, 62.5, runs: 6, pinion: 24, laps: 14));
        var told = Json("gear", today, "--earlier", before, "--pinions", "25..27", "--can-limit", "95C", "--insulation", "H", "--magnet", "SH");
        Contract.Fits("gear", told.ToJsonString());
        Assert.Equal((26, 84), (told["driven"]!["pinion"]!.GetValue<int>(), told["driven"]!["spur"]!.GetValue<int>()));
        Assert.Equal("before.csv", told["earlier"]!["from"]![0]!["file"]!.GetValue<string>());
        Assert.Equal(6, told["earlier"]!["runs"]!.GetValue<int>());
        var said = ProgramRun.Good("gear", today, "--earlier", before, "--pinions", "25..27").ReplaceLineEndings(" ");
        Assert.Contains("An earlier day with 6 runs is in this answer: day in before.csv. From this day alone: ", said);
        Assert.DoesNotContain("no lap time", said);
        Assert.Contains("no lap time", ProgramRun.Good("gear", today, "--pinions", "25..27").ReplaceLineEndings(" "));
    }

    [Theory]
    [InlineData("forecast")]
    [InlineData("gear")]
    public void A_table_that_isnt_there_and_a_run_in_two_tables_are_one_clear_error(string command)
    {
        var today = Table("today.csv", 80, 70, pinion: 24);
        var missing = ProgramRun.Of(command, today, "--earlier", Path.Combine(folder.FullName, "nowhere.csv"));
        Assert.Equal(2, missing.ExitCode);
        Assert.EndsWith("nowhere.csv can't be read: there is no such file. Nothing was written.\n", missing.Error);
        Assert.Single(missing.Error.Trim().Split('\n'));
        Assert.Empty(missing.Out);
        var twice = ProgramRun.Of(command, today, "--earlier", today);
        Assert.Equal(2, twice.ExitCode);
        Assert.Contains("would count twice", twice.Error);
        Assert.Empty(twice.Out);
    }

    // Two evenings of one car that `rehearse` makes up, a table each.
    (string Before, string Today) Evenings()
    {
        var both = Path.Combine(folder.FullName, "both.csv");
        ProgramRun.Good("rehearse", "--options", "bare can,fan", "--evenings", "2", "--runs", "2", "--random-seed", "7", "--out", both);
        using var csv = File.OpenRead(both);
        var table = ReadingsTableReader.Read(csv, null).Table!;
        string[] days = [.. table.Runs.Select(run => run.Day).Distinct()];
        return (Of("before.csv", days[0]), Of("today.csv", days[1]));

        string Of(string file, string day)
        {
            var path = Path.Combine(folder.FullName, file);
            using var writer = new StreamWriter(path);
            ReadingsTableWriter.Write(table with { Runs = [.. table.Runs.Where(run => run.Day == day)] }, writer);
            return path;
        }
    }

    string Table(string file, double bareC, double fanC, int runs = 4, string driver = "", int? pinion = null, int? laps = null)
    {
        var path = Path.Combine(folder.FullName, file);
        var rows = Enumerable.Range(0, runs).SelectMany(run => Enumerable.Range(0, 2).Select(shot => string.Create(CultureInfo.InvariantCulture,
            $"{run + 1},{(run % 2 == 0 ? "bare can" : "fan")},360,8,25,{10 + (20 * shot)},{(run % 2 == 0 ? bareC : fanC) + (0.4 * run) - (2.5 * shot):0.0},{driver},{pinion},{(pinion is null ? "" : "84")},{laps}")));
        File.WriteAllLines(path, ["run,option,drive_s,roll_in_s,ambient_c,stop_to_read_s,read_c,driver,pinion,spur,laps", .. rows]);
        return path;
    }

    static double Width(JsonNode quantiles) => quantiles["q95"]!.GetValue<double>() - quantiles["q05"]!.GetValue<double>();

    static JsonNode Json(params string[] asked) => JsonNode.Parse(ProgramRun.Good([.. asked, "--json"]))!;
}
