using Coolproof.Evidence;
using Coolproof.Notebook;
using Coolproof.Notebook.Journal;
using Coolproof.Words;
using MathNet.Numerics.Distributions;
using NodaTime;

namespace Coolproof.Tests.Pages;

/// <summary>The question is answered as it was asked, and no more is claimed than the pairs carry.</summary>
public class QuestionAnswerTests
{
    static readonly NotedOption[] Options =
    [
        Option("bare can", 0, 0), Option("clip-on finned clamp", 14, 31), Option("clamp with 25 mm fan", 27, 46), Option("nose-scoop duct", 9, 18, undone: true), Option("twin 30 mm fans in duct", 34, 61), Option("rear blower", 29, 41),
    ];

    [Fact]
    public void Which_is_answered_by_the_verdicts_sentence_with_money_and_grams()
    {
        var verdict = Verdict(PairCall.ACooler);
        Assert.StartsWith(verdict.Sentence, Say(verdict, "which"));
        Assert.EndsWith("It costs 34 € and 61 g, 7 € and 15 g more than the clamp with 25 mm fan.", Say(verdict, "which"));
    }

    [Fact]
    public void What_is_open_names_no_winner_but_says_which_costs_less() =>
        Assert.EndsWith("Meanwhile the twin 30 mm fans in duct costs 7 € and 15 g more than the clamp with 25 mm fan.", Say(Verdict(PairCall.Open), "which"));

    [Theory]
    [InlineData(PairCall.ACooler, "Yes, as far as heat goes: the nose-scoop duct takes")]
    [InlineData(PairCall.BCooler, "No: with the nose-scoop duct the can runs")]
    [InlineData(PairCall.Same, "No difference that matters: the nose-scoop duct and the bare can are the same within 2.0 °C")]
    [InlineData(PairCall.Open, "Can't be told yet whether it pays: the nose-scoop duct takes")]
    public void Whether_it_pays_is_yes_no_the_same_or_open_with_its_price(PairCall call, string begins)
    {
        var said = Say(Between(call), "pays", options: [Options[0].Id, Options[3].Id]);
        Assert.StartsWith(begins, said);
        Assert.Contains("it costs 9 € and 18 g more", said);
        if (call != PairCall.BCooler) Assert.EndsWith("Fitting it can't be undone.", said);
    }

    [Fact]
    public void A_budget_that_is_passed_is_said() =>
        Assert.EndsWith("That is over your 30 € and your 50 g.", Say(Verdict(PairCall.ACooler), "which", ("budget", 30.0), ("budgetG", 50.0)));

    [Fact]
    public void A_limit_sorts_the_options_into_kept_passed_and_open()
    {
        var said = Say(Verdict(PairCall.ACooler), "limit", ("limitC", 80.0));
        Assert.StartsWith("Stays under 80 °C on the can in 30.0 °C air after 6.0 minutes: the twin 30 mm fans in duct (99 in 100)", said);
        Assert.Contains("Passes it: the bare can (99 in 100).", said);
        Assert.Contains("Can't be told yet, odds of staying under: the nose-scoop duct (1 in 2)", said);
    }

    [Fact]
    public void What_the_readings_cannot_tell_is_not_answered()
    {
        Assert.StartsWith("Gearing needs the lap times too", Say(Verdict(PairCall.ACooler), "gear"));
        Assert.StartsWith("The readings tell of can and winding; the magnets are not judged yet.", Say(Verdict(PairCall.ACooler), "limit", ("limitC", 80.0), ("limitOn", "magnet")));
    }

    [Fact]
    public void Fahrenheit_and_ounces_are_spoken_throughout()
    {
        var said = new QuestionAnswer(Between(PairCall.ACooler), Question("pays", [Options[0].Id, Options[3].Id]), Options, new DegreeWords(TemperatureUnitChoice.Fahrenheit), new CostWords("$", MassUnitChoice.Ounce)).Say();
        Assert.Contains("°F", said);
        Assert.DoesNotContain("°C", said);
        Assert.Contains("9 $ and 0.63 oz more", said);
    }

    [Theory]
    [InlineData(70)]
    [InlineData(75)]
    [InlineData(80)]
    [InlineData(83.5)]
    [InlineData(95)]
    public void Odds_of_a_limit_are_those_of_the_distribution_that_gave_the_quantiles(double limit) =>
        Assert.Equal(Normal.CDF(80, 4, limit), Passing.Below(Samples.Around(80, 4), limit), 3);

    [Fact]
    public void A_quantity_without_any_spread_is_below_or_above() =>
        Assert.Equal((0.0, 0.5, 1.0), (Passing.Below(Samples.Around(80, 0), 79), Passing.Below(Samples.Around(80, 0), 80), Passing.Below(Samples.Around(80, 0), 81)));

    static Verdict Verdict(PairCall call)
    {
        var verdict = Samples.Of(6);
        return verdict with { MainPair = verdict.MainPair! with { Call = verdict.MainPair.A == "twin 30 mm fans in duct" || call is PairCall.Open or PairCall.Same ? call : PairCall.BCooler } };
    }

    static Verdict Between(PairCall call)
    {
        var verdict = Samples.Of(6);
        return verdict with { Pairs = [.. verdict.Pairs.Select(pair => pair.On == ComparedOn.Can && pair is { A: "bare can", B: "nose-scoop duct" } ? pair with { Call = call switch { PairCall.ACooler => PairCall.BCooler, PairCall.BCooler => PairCall.ACooler, var same => same } } : pair)] };
    }

    static string Say(Verdict verdict, string sort, params (string, object?)[] more) => Say(verdict, sort, [.. Options.Select(option => option.Id)], more);

    static string Say(Verdict verdict, string sort, Guid[] options, params (string, object?)[] more) =>
        new QuestionAnswer(verdict, Question(sort, options, more), Options, new DegreeWords(TemperatureUnitChoice.Celsius), new CostWords("€", MassUnitChoice.Gram)).Say();

    static NotedQuestion Question(string sort, Guid[] options, params (string, object?)[] more) =>
        new(Guid.CreateVersion7(), EntryBody.Of([("text", "?"), ("sort", sort), ("options", options), .. more]), Instant.MinValue, false);

    static NotedOption Option(string name, double price, double massG, bool undone = false) =>
        new(Guid.CreateVersion7(), EntryBody.Of(("name", name), ("price", price), ("massG", massG), ("cantBeUndone", undone)), Instant.MinValue, false, []);
}
