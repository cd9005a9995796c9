using System.Text.Json;
using System.Text.Json.Nodes;
using Coolproof.EndToEnd.Support;
using Coolproof.Notebook.Journal;

namespace Coolproof.EndToEnd.RunClock;

/// <summary>What a phone makes of entries is what the bench makes of them: the modules in the browser mirror the notebook, case by case and on invented days.</summary>
public class MirrorTests
{
    static readonly string Modules = Path.Combine(RepositoryRoot.Path, "src", "Coolproof", "wwwroot", "run-clock");
    static readonly string Script = Path.Combine(RepositoryRoot.Path, "tests", "Coolproof.EndToEnd", "Scripts", "mirror.mjs");

    [Fact]
    public async Task Bench_and_phone_say_the_same_next_step_of_each_written_case()
    {
        var cases = StepCase.All();
        var phone = await OnThePhoneAsync([.. cases.Select(one => one.Day)]);
        foreach (var (one, answer) in cases.Zip(phone))
        {
            Assert.True(one.Expected == StepAnswer.Of(one.Day.OnTheBench().Runs.Single()), $"the bench: {one.Name}: {StepAnswer.Of(one.Day.OnTheBench().Runs.Single())}");
            Assert.True(one.Expected == StepAnswer.Of(answer.Runs.Single()), $"the phone: {one.Name}: {StepAnswer.Of(answer.Runs.Single())}");
        }
    }

    [Theory]
    [InlineData(1, 400)]
    public async Task Bench_and_phone_make_the_same_of_invented_days_of_three_phones(int seed, int count)
    {
        var chance = new Random(seed);
        List<MirrorDay> days = [.. Enumerable.Range(0, count).Select(_ => InventedDays.One(chance))];
        var phone = await OnThePhoneAsync(days);
        foreach (var (day, answer) in days.Zip(phone))
        {
            var (bench, said) = (JsonSerializer.Serialize(day.OnTheBench(), MirrorAnswer.Json), JsonSerializer.Serialize(answer, MirrorAnswer.Json));
            Assert.True(bench == said, $"day {days.IndexOf(day)}\nbench {bench}\nphone {said}\n{day.Request()}");
        }
        // Else the comparison could not fail: the days hold what it is about.
        var runs = days.SelectMany(day => day.OnTheBench().Runs).ToList();
        Assert.All(Enum.GetNames<RunStep>(), step => Assert.Contains(runs, run => run.Step == step));
        Assert.Contains(runs, run => run.Ids.Count > 1);
        Assert.Contains(runs, run => run.Stop is { Chosen: true });
        Assert.Contains(days, day => day.OnTheBench().Offers.Count > 0);
    }

    [Fact]
    public async Task The_order_in_which_entries_arrive_on_a_phone_makes_no_difference()
    {
        var chance = new Random(2);
        List<MirrorDay> days = [.. Enumerable.Range(0, 60).Select(_ => InventedDays.One(chance))];
        List<MirrorDay> shuffled = [.. days.Select(day => day with { Entries = [.. day.Entries.OrderBy(_ => chance.Next())] })];
        var (first, second) = (await OnThePhoneAsync(days), await OnThePhoneAsync(shuffled));
        Assert.Equal(JsonSerializer.Serialize(first, MirrorAnswer.Json), JsonSerializer.Serialize(second, MirrorAnswer.Json));
    }

    static async Task<List<MirrorAnswer>> OnThePhoneAsync(IReadOnlyList<MirrorDay> days)
    {
        var input = new JsonArray([.. days.Select(day => (JsonNode?)day.Request())]).ToJsonString();
        return JsonSerializer.Deserialize<List<MirrorAnswer>>(await Node.RunAsync(input, Script, Modules), MirrorAnswer.Json)!;
    }
}
