using System.Globalization;
using System.Text.Json;

namespace Coolproof.Tests;

/// <summary>`compare --earlier`: earlier days together with a new one.</summary>
public sealed class EarlierDaysTests : IDisposable
{
    const string Columns = "day,run,option,drive_s,roll_in_s,ambient_c,stop_to_read_s,read_c";
    readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("coolproof-earlier-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void Earlier_days_narrow_the_answer_and_the_new_day_alone_is_told_beside_it()
    {
        var (today, before) = (Table("today.csv", "today", 80, 70), Table("before.csv", "last week", 81, 70.5));
        var alone = Compared(ProgramRun.Good("compare", today, "--json"));
        var together = Compared(ProgramRun.Good("compare", today, "--json", "--earlier", before));
        Assert.True(Sd(together) < Sd(alone), $"{Sd(together)} K together, {Sd(alone)} K alone");
        Assert.Equal(4, together.GetProperty("options")[0].GetProperty("runs").GetInt32());
        Assert.Equal(alone.GetProperty("reference").ToString(), together.GetProperty("reference").ToString());
        Assert.StartsWith("An earlier day with 4 runs is in this answer. From this day alone: ", Warnings(together)[0]);
        Assert.False(alone.TryGetProperty("earlier", out _));
        var earlier = together.GetProperty("earlier");
        Assert.Equal((1, 4, 2), (earlier.GetProperty("days").GetInt32(), earlier.GetProperty("runs").GetInt32(), earlier.GetProperty("optionsAsked").GetInt32()));
        Assert.True(JsonElement.DeepEquals(alone.GetProperty("options"), earlier.GetProperty("alone").GetProperty("options")));
        Assert.True(JsonElement.DeepEquals(alone.GetProperty("pairs"), earlier.GetProperty("alone").GetProperty("pairs")));
        Assert.EndsWith(earlier.GetProperty("alone").GetProperty("sentence").GetString()!, Warnings(together)[0]);
        Assert.Equal(JsonValueKind.Null, earlier.GetProperty("changed").ValueKind);
        Assert.Equal(0, earlier.GetProperty("contradictions").GetArrayLength());
        Contract.Fits("compare", together.ToString());
    }

    [Fact]
    public void A_day_that_contradicts_the_earlier_ones_is_pointed_out()
    {
        var (today, before) = (Table("today.csv", "today", 62, 82), Table("before.csv", "today", 84, 62));
        var together = Compared(ProgramRun.Good("compare", today, "--json", "--earlier", before));
        var warnings = Warnings(together);
        var contradiction = together.GetProperty("earlier").GetProperty("contradictions")[0];
        Assert.True(contradiction.GetProperty("newK").GetDouble() < -10 && contradiction.GetProperty("earlierK").GetDouble() > 10 && contradiction.GetProperty("sds").GetDouble() > 2);
        Contract.Fits("compare", together.ToString());
        Assert.StartsWith("This day contradicts the earlier ones: the can with the bare can ran ", warnings[0]);
        Assert.Contains("K cooler than with the fan, before it ran ", warnings[0]);
    }

    [Fact]
    public void An_option_that_cools_otherwise_than_before_is_named()
    {
        var (today, before) = (Table("today.csv", "today", 80, 82), Table("before.csv", "before", 81, 58));
        var together = Compared(ProgramRun.Good("compare", today, "--json", "--earlier", before));
        var changed = together.GetProperty("earlier").GetProperty("changed");
        Assert.Equal(("fan", 1), (changed.GetProperty("option").GetString(), changed.GetProperty("days").GetInt32()));
        Assert.InRange(changed.GetProperty("ratio").GetDouble(), 0.4, 0.9);
        Contract.Fits("compare", together.ToString());
        Assert.Contains(Warnings(together), w => w.StartsWith("The fan shed ") && w.Contains("% less heat per degree on this day than on the day before (") && w.Contains("times as likely after a change of a fifth as after none): is it the same one"));
    }

    [Fact]
    public void A_run_that_stands_in_both_tables_is_refused()
    {
        var today = Table("today.csv", "today", 80, 70);
        var run = ProgramRun.Of("compare", today, "--earlier", today);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("would count twice", run.Error);
        Assert.Empty(run.Out);
    }

    string Table(string file, string day, double bareC, double fanC)
    {
        var path = Path.Combine(folder.FullName, file);
        var rows = Enumerable.Range(0, 4).SelectMany(run => Enumerable.Range(0, 2).Select(shot => string.Create(CultureInfo.InvariantCulture,
            $"{day},{run + 1},{(run % 2 == 0 ? "bare can" : "fan")},360,8,25,{10 + (20 * shot)},{(run % 2 == 0 ? bareC : fanC) + (0.4 * run) - (2.5 * shot):0.0}")));
        File.WriteAllLines(path, [Columns, .. rows]);
        return path;
    }

    static JsonElement Compared(string json) => JsonDocument.Parse(json).RootElement;

    static double Sd(JsonElement verdict) => verdict.GetProperty("pairs").EnumerateArray().First(p => p.GetProperty("on").GetString() == "can").GetProperty("differenceK").GetProperty("sd").GetDouble();

    static string[] Warnings(JsonElement verdict) => [.. verdict.GetProperty("warnings").EnumerateArray().Select(w => w.GetString()!)];
}
