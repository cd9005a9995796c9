using Coolproof.Evidence.Words;
using Coolproof.Notebook;

namespace Coolproof.Evidence.Tests.Words;

public class AdviceTests
{
    private static readonly ReadingsTable Table = InventedDays.Plain(2, 3);
    private static readonly string[] Names = [.. Table.Options];

    private static IReadOnlyList<string> Of(ReadingsTable table, double difference = -1, double sd = 2, string source = "delay", PairCall? call = null)
    {
        OptionVerdict[] options = Said.Options(table);
        PairVerdict? pair = options.Length < 2 ? null : Said.Pair(options[0].Name, options[1].Name, difference, sd, call);
        IReadOnlyList<string> advice = Advice.Of(table, options, pair is null ? [] : [pair], pair, pair is null ? [] : [new(source, 1)], 2);
        Assert.All(advice, Said.AssertPlain);
        return advice;
    }

    [Theory]
    [InlineData(-4, 2.2, "About one more run each of option A and option B would settle")]
    [InlineData(-4, 2.6, "About two more runs each of option A and option B would settle")]
    [InlineData(-1.5, 2.2, "More runs of option A and option B are hardly worth it: they are within 4 K of each other, 4 in 5 sure.")]
    [InlineData(-4, 8, "Six more runs each would hardly settle option A against option B as things stand: make the largest doubt smaller first.")]
    [InlineData(-1.5, 6, "Six more runs each would hardly settle option A against option B")]
    public void An_open_pair_is_told_how_many_more_runs_would_settle_it(double difference, double sd, string said) =>
        Assert.Contains(Of(Table, difference, sd), a => a.StartsWith(said, StringComparison.Ordinal));

    [Fact]
    public void The_largest_doubt_has_its_remedy() => Assert.All(SourceOfDoubt.All, source =>
    {
        Assert.Contains(Of(Table, source: source.Name), a => a.StartsWith(source.Remedy, StringComparison.OrdinalIgnoreCase) && a.EndsWith($"the largest doubt is {source.Plain}.", StringComparison.Ordinal));
        Assert.Equal(["The question is answered.", $"For sharper numbers next time, {source.Remedy}: the largest doubt is {source.Plain}."], Of(Table, -9, source: source.Name).Take(2));
    });

    [Fact]
    public void A_question_that_is_answered_asks_for_no_more_runs()
    {
        IReadOnlyList<string> advice = Of(Table, -9);
        Assert.DoesNotContain(advice, a => a.StartsWith("About", StringComparison.Ordinal));
        Assert.Equal("The question is answered.", advice[0]);
    }

    [Fact]
    public void More_runs_are_said_to_help_less_where_all_runs_share_the_doubt()
    {
        Summary difference = Said.Around(-4, 2.6);
        Assert.Equal(2, RunsToSettle.Each(difference, 3, 3, [], 2));
        Assert.Null(RunsToSettle.Each(difference, 3, 3, [new("gun", 0.8), new("delay", 0.2)], 2));
    }

    // Three runs each, sd σ: with n more σ√(3/(3 + n)) must fall to 4/1.96 K; 2.6 K takes 3 × (2.6 × 1.96/4)² − 3 = 1.87 of them.
    [Fact]
    public void How_many_more_runs_follows_the_root_of_the_number_of_runs() => Assert.Equal(2, RunsToSettle.Each(Said.Around(-4, 2.6), 3, 3, [], 0.5));

    [Fact]
    public void A_fixed_order_is_advised_against_and_a_mixed_one_is_not()
    {
        Assert.Contains(Of(Table), a => a.StartsWith("Shuffle the order", StringComparison.Ordinal));
        Assert.Contains(Of(Table.With((r, i) => r with { Option = Names[i / 3] })), a => a.StartsWith("Mix the order", StringComparison.Ordinal));
        ReadingsTable mixed = Table.With((r, i) => r with { Option = Names[i is 0 or 3 or 4 ? 0 : 1] });
        Assert.DoesNotContain(Of(mixed), a => a.Contains("order", StringComparison.Ordinal));
    }

    [Fact]
    public void One_run_each_asks_for_a_repeat() => Assert.Contains(Of(InventedDays.Plain(2, 1)), a => a.StartsWith("Repeat every option", StringComparison.Ordinal));

    [Fact]
    public void One_option_asks_for_a_second() => Assert.StartsWith("Drive a second option", Of(InventedDays.Plain(1, 3))[0], StringComparison.Ordinal);

    [Fact]
    public void A_fan_that_failed_is_to_be_put_right() =>
        Assert.Contains(Of(Table.With((r, i) => i == 2 ? r with { Fan = FanInRun.Failed } : r)), a => a.StartsWith("Put the fan of option A right", StringComparison.Ordinal));

    [Fact]
    public void Options_without_a_common_spot_are_to_be_read_again_rather_than_driven_more()
    {
        ReadingsTable apart = Table.With((r, i) => i % 2 == 0 ? r with { Readings = [.. r.Readings.Select(x => x with { Spot = Spot.Endbell })] } : r);
        IReadOnlyList<string> advice = Of(apart, -9, 2, call: PairCall.Open);
        Assert.StartsWith("Read the same spot", advice[0], StringComparison.Ordinal);
        Assert.DoesNotContain(advice, a => a.StartsWith("About", StringComparison.Ordinal));
    }
}
