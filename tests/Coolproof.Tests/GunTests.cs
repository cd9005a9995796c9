using System.Text.Json.Nodes;

namespace Coolproof.Tests;

/// <summary>`coolproof gun` and `coolproof winding` as a person runs them.</summary>
public class GunTests
{
    [Theory]
    [InlineData("gun correct 62C --json")]
    [InlineData("gun correct 45C --surface steel-oxidised --set 1 --off 20% --json")]
    [InlineData("gun correct 45C --emissivity 0.8 --json")]
    [InlineData("gun check --ice 0.9C,0.7C,1.0C --boiling 95.1C,95.6C --altitude 300m --json")]
    [InlineData("gun check --mug 62.1C@60C --json")]
    [InlineData("gun spot --ratio 12:1 --distance 200mm --target 12mm --json")]
    [InlineData("gun surfaces --json")]
    [InlineData("gun probe k 2.436mV --json")]
    [InlineData("gun probe pt100 60C --json")]
    public void Everything_printed_keeps_to_the_published_form(string asked)
    {
        var text = ProgramRun.Good(asked.Split(' '));
        Contract.Fits("gun", text);
        Assert.False(Contract.Allows("gun", text.Replace("\"asked\"", "\"question\"")));
        Assert.Equal(text, ProgramRun.Good(asked.Split(' ')));
    }

    [Theory]
    [InlineData("winding --cold 50.0mohm@23C --hot 61.2mohm@8s --hot 60.1mohm@18s --air 27C --json", true)]
    [InlineData("winding --cold 50.0mohm@23C --hot 61.2mohm --json", false)]
    public void A_winding_keeps_to_its_form_and_needs_seconds_to_go_back_to_the_stop(string asked, bool stop)
    {
        var text = ProgramRun.Good(asked.Split(' '));
        Contract.Fits("winding", text);
        Assert.False(Contract.Allows("winding", text.Replace("\"hot\"", "\"warm\"")));
        var answer = JsonNode.Parse(text)!;
        // Source: IEC 60034-1 by the reference's worked case: 50.0 mΩ at 23 °C and 61.2 mΩ are 80.792 °C (k 235).
        Assert.Equal(80.79, answer["hot"]![0]!["temperatureC"]!["estimate"]!.GetValue<double>(), 2);
        Assert.Equal(stop, answer["atTheStop"] is not null);
        if (stop) Assert.True(answer["atTheStop"]!["temperatureC"]!["q50"]!.GetValue<double>() > 81);
    }

    [Fact]
    public void A_check_that_is_kept_is_a_file_of_gun_checks_and_is_never_written_over()
    {
        var path = Path.Combine(Directory.CreateTempSubdirectory("coolproof-").FullName, "checks.json");
        string[] asked = ["gun", "check", "--ice", "0.9C", "--boiling", "98.0C", "--pressure", "987hPa", "--gun", "heat gun", "--keep", path];
        ProgramRun.Good(asked);
        Contract.Fits("gun-checks", File.ReadAllText(path));
        var kept = JsonNode.Parse(File.ReadAllText(path))!["gunChecks"]!.AsArray();
        // Source: water-saturation.csv of the reference, between 98 000 and 99 000 Pa: 99.24 °C at 987 hPa.
        Assert.Equal(99.24, kept[1]!["trueC"]!.GetValue<double>(), 2);
        Assert.Equal("heat gun", kept[0]!["gun"]!.GetValue<string>());
        var again = ProgramRun.Of(asked);
        Assert.Equal(1, again.ExitCode);
        Assert.Contains("take another name", again.Error);
    }

    [Theory]
    [InlineData("gun correct 62C --units f")]
    [InlineData("gun check --ice 0.9C --boiling 98.0C --pressure 987hPa")]
    [InlineData("gun spot --ratio 12 --distance 200mm --target 12mm")]
    [InlineData("gun surfaces")]
    [InlineData("winding --cold 50.0mohm@23C --hot 61.2mohm@8s")]
    public void People_read_it_within_a_hundred_columns(string asked)
    {
        var said = ProgramRun.Good(asked.Split(' '));
        Assert.All(said.Split('\n'), line => Assert.True(line.Length <= 100, line));
    }

    [Fact]
    public void Shiny_metal_is_sent_to_the_tape_and_hot_water_has_its_caution()
    {
        Assert.Contains("put matt tape on it", ProgramRun.Good("gun", "correct", "45C", "--surface", "aluminium-polished").ReplaceLineEndings(" "));
        Assert.Contains("scald", ProgramRun.Good("gun", "check", "--mug", "62.1C@60C"));
        Assert.Contains("143.6 °F", ProgramRun.Good("gun", "correct", "62C", "--units", "f"));
    }

    [Fact]
    public void The_spot_is_drawn_to_scale()
    {
        var path = Path.Combine(Directory.CreateTempSubdirectory("coolproof-").FullName, "spot.svg");
        ProgramRun.Good("gun", "spot", "--ratio", "12", "--distance", "200mm", "--target", "12mm", "--picture", path);
        var svg = File.ReadAllText(path).Replace('\u00a0', ' ');
        Assert.Contains("Spot 16.7 mm, 17 % beside it", svg);
        Assert.Contains("10 mm", svg);
    }

    [Theory]
    [InlineData("gun correct 62", "like 62C")]
    [InlineData("gun correct 62C --surface velvet", "Take one of: tape")]
    [InlineData("gun correct 62C --surface tape --emissivity 0.9", "Take one of them out")]
    [InlineData("gun correct -20C --emissivity 0.1 --set 1 --surroundings 40C", "no surface of that emissivity")]
    [InlineData("gun check", "nothing was shot")]
    [InlineData("gun check --boiling 98C", "--altitude or --pressure")]
    [InlineData("gun check --ice 0.5C --altitude 300m", "give --boiling too")]
    [InlineData("gun check --mug 62C", "@ and what the probe shows")]
    [InlineData("gun check --ice 0.5C@0C", "what is true there is known")]
    [InlineData("gun check --ice 22C", "shoot it again")]
    [InlineData("gun spot --ratio 12", "--distance 150mm, --target 12mm")]
    [InlineData("gun probe j 2mV", "expected k, t or pt100")]
    [InlineData("gun probe k 200mV", "no temperature of a type K thermocouple")]
    [InlineData("gun probe pt100 60C --junction 20C", "a Pt100 has none")]
    [InlineData("winding --cold 50mohm@23C --hot 61mohm@5s --brushed", "brushes and commutator")]
    [InlineData("winding --cold 50mohm@23C --hot 61mohm@5s --meter two-wire", "four-wire")]
    [InlineData("winding --cold 50mohm@23C --hot 61mohm@5s --step 1mohm", "too coarse")]
    [InlineData("winding --hot 61mohm@5s", "A hot value without a cold one tells nothing")]
    [InlineData("winding --cold 50mohm@23C --hot 161mohm@5s", "no temperature of a winding that lives")]
    [InlineData("winding --cold 50mohm@23C --hot 61mohm@9s --hot 60mohm@5s", "in the order of time")]
    public void What_can_t_be_answered_is_one_clear_error_with_its_remedy(string asked, string said)
    {
        var run = ProgramRun.Of(asked.Split(' '));
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(said, run.Error);
        Assert.Empty(run.Out);
    }
}
