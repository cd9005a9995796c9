using Coolproof.Advice.Spending;
using Coolproof.Evidence;
using Coolproof.Evidence.Forecasts;
using Coolproof.Notebook;
using Coolproof.Sampling;

namespace Coolproof.Advice.Tests.Spending;

public class BestUseTests
{
    static SpendPart Part(string name, double price, double grams) => new(new CoolingPart(name, (decimal)price, grams));

    static SpendSheet Sheet(IReadOnlyList<SpendPart> parts, params TogetherParts[] driven) => new("€", 100, null, new(0, null, true), null, "bare can", parts, driven, []);

    // Options with so many watts per degree, known to some percent, on motors of one kind.
    static RaceEvidence Driven(params (string Name, double WPerK)[] options)
    {
        RandomStream chance = new(11);
        return new([.. options.Select(o => o.Name)], [.. Enumerable.Range(0, 400).Select(_ => new RaceDraw(1.25, 0.06, 0.24, 25, 0.5, Math.Log(0.8), 0.1, 0.05, 0.03,
            [.. options.Select(o => new RaceOption(Math.Log(o.WPerK / 50) + 0.03 * chance.NextNormal(), -0.3, -1.4))]))], new(25, 360), 360, null, []);
    }

    static readonly MotorDraw Motor = new(1.25, 0.06, 0.24, 25, 0.5, 0.8, 0.74, []);

    static double CanC(double wPerK) => FairPeak.Of(Motor, wPerK / 50, new(25, 360)).CanC;

    [Fact]
    public void What_was_driven_as_an_option_is_taken_as_measured_whatever_its_parts_do_alone()
    {
        SpendSheet sheet = Sheet([Part("clamp", 18, 22), Part("fan", 14, 9)], new("clamp", ["clamp"]), new("fan", ["fan"]), new("clamp with a fan", ["clamp", "fan"]));
        SpendAnswer answer = BestUse.Of(sheet, Driven(("bare can", 0.7), ("clamp", 0.8), ("fan", 0.9), ("clamp with a fan", 0.95)), 1);
        Assert.Equal(["clamp", "fan"], answer.Best.Parts);
        Assert.Equal(SpendBasis.Driven, answer.Best.Basis);
        Assert.Equal(CanC(0.7) - CanC(0.95), answer.Best.CanCoolerK.Q50, 0.4);
        Assert.Equal([0m, 14m, 32m], answer.Steps.Select(s => s.Choice.Money));
    }

    [Fact]
    public void Parts_never_driven_together_add_their_watts_with_a_wider_doubt()
    {
        SpendSheet sheet = Sheet([Part("clamp", 18, 22), Part("scoop", 12, 9)], new("clamp", ["clamp"]), new("scoop", ["scoop"]));
        (string, double)[] options = [("bare can", 0.7), ("clamp", 0.85), ("scoop", 0.8)];
        SpendAnswer apart = BestUse.Of(sheet, Driven(options), 1), together = BestUse.Of(sheet with { Driven = [.. sheet.Driven, new("both", ["clamp", "scoop"])] }, Driven([.. options, ("both", 0.95)]), 1);
        Assert.Equal(SpendBasis.AddedUp, apart.Best.Basis);
        Assert.Equal(CanC(0.7) - CanC(0.95), apart.Best.CanCoolerK.Q50, 0.6);
        Assert.Equal(SpendBasis.Driven, together.Best.Basis);
        Assert.True(apart.Best.CanCoolerK.Sd > 1.3 * together.Best.CanCoolerK.Sd, $"{apart.Best.CanCoolerK.Sd} and {together.Best.CanCoolerK.Sd}");
    }

    [Fact]
    public void What_a_part_does_alone_is_found_from_options_that_differ_by_it()
    {
        SpendSheet sheet = Sheet([Part("clamp", 18, 22), Part("fan", 14, 9), Part("scoop", 5, 5)], new("clamp", ["clamp"]), new("clamp with a fan", ["clamp", "fan"]), new("scoop", ["scoop"]));
        SpendAnswer answer = BestUse.Of(sheet with { Money = 20 }, Driven(("bare can", 0.7), ("clamp", 0.75), ("clamp with a fan", 0.95), ("scoop", 0.72)), 1);
        Assert.Equal(["fan", "scoop"], answer.Best.Parts);
        Assert.Equal(CanC(0.7) - CanC(0.92), answer.Best.CanCoolerK.Q50, 0.6);
        Assert.Equal(["clamp", "fan"], answer.BeyondMoney!.Choice.Parts);
        Assert.True(answer.BeyondMoney.MoreK!.Q50 > 0);
        Assert.Equal(13m, answer.BeyondMoney.MoreMoney);
    }

    [Fact]
    public void Grams_count_only_above_the_minimum_and_cost_laps_only_there()
    {
        SpendSheet sheet = Sheet([Part("clamp", 18, 30), Part("scoop", 12, 30)], new("clamp", ["clamp"]), new("scoop", ["scoop"])) with { Grams = 0, Rules = new(35, null, true), LapSPer100G = 0.2 };
        RaceEvidence evidence = Driven(("bare can", 0.7), ("clamp", 0.85), ("scoop", 0.8));
        SpendAnswer light = BestUse.Of(sheet, evidence, 1), heavy = BestUse.Of(sheet with { Grams = null }, evidence, 1), over = BestUse.Of(sheet with { Rules = new(-10, null, true) }, evidence, 1);
        Assert.Equal(["clamp"], light.Best.Parts);
        Assert.Equal(0, light.Best.LapS);
        Assert.Equal(["clamp", "scoop"], light.BeyondGrams!.Choice.Parts);
        Assert.Equal(25, heavy.Best.CountedG, 9);
        Assert.Equal(0.05, heavy.Best.LapS!.Value, 9);
        Assert.Empty(over.Best.Parts);
        Assert.Equal(30, BestUse.Of(sheet with { Rules = new(-10, null, true), Grams = 30 }, evidence, 1).Best.CountedG, 9);
    }

    [Fact]
    public void A_guess_in_kelvin_is_kept_and_what_nobody_knows_is_not_bought()
    {
        SpendSheet sheet = Sheet([Part("sleeve", 10, 5) with { CoolsK = new(4, 2, 6) }, Part("charm", 1, 1)]);
        SpendAnswer answer = BestUse.Of(sheet, null, 1);
        Assert.Equal(["sleeve"], answer.Best.Parts);
        Assert.Equal(SpendBasis.Guessed, answer.Best.Basis);
        Assert.InRange(answer.Best.CanCoolerK.Q50, 2.5, 5);
        Assert.Equal(["charm"], answer.Unknown);
    }

    [Fact]
    public void A_predicted_mount_is_bought_with_its_own_doubt_and_as_much_as_the_mounts_own_answer_says()
    {
        MountSheet mounts = new(25, 0, 0, 6, new(0.036, 0.05, 0.165, 70),
            [new() { Name = "bare can" }, new() { Name = "big fan", GapM = 0.006, Fans = [new(0.040, 0.02, 0.015, 16.0 / 3600, 90, 1)], Shroud = new(0.004, 1, 0) }]);
        SpendSheet sheet = Sheet([Part("fan", 20, 20), Part("shroud", 5, 5), Part("clamp", 60, 20)], new TogetherParts("clamp", ["clamp"])) with { Money = 50, Predicted = [new("big fan", ["fan", "shroud"])] };
        RaceEvidence evidence = Driven(("bare can", 0.7), ("clamp", 0.8));
        SpendAnswer answer = BestUse.Of(sheet, evidence, 1, mounts);
        Assert.Equal(["fan", "shroud"], answer.Best.Parts);
        Assert.Equal(SpendBasis.Predicted, answer.Best.Basis);
        Coolproof.Advice.Mounts.MountPrediction told = Coolproof.Advice.Mounts.MountPredictions.Of(mounts, evidence, 1).Mounts[1];
        Assert.Equal(CanC(0.7) - told.CanC.Q50, answer.Best.CanCoolerK.Q50, 1.0);
        Assert.Equal("predicted", Assert.Single(BestUse.Problems(sheet, evidence)).Field);
        Assert.Equal("predicted[0].mount", Assert.Single(BestUse.Problems(sheet with { Predicted = [new("other", ["fan"])] }, evidence, mounts)).Field);
        Assert.Empty(BestUse.Problems(sheet, evidence, mounts));
    }

    [Fact]
    public void What_the_class_forbids_is_left_out_and_said()
    {
        SpendSheet sheet = Sheet(
            [Part("window", 0, 0) with { OpensShell = true, CoolsK = new(5, 4, 6) }, Part("fan", 10, 5) with { Fans = 1, CoolsK = new(4, 2, 6) }, Part("blower", 12, 5) with { Fans = 1, CoolsK = new(5, 2, 6) }]) with
        { Rules = new(0, 1, false) };
        SpendAnswer answer = BestUse.Of(sheet, null, 1);
        Assert.Equal(["blower"], answer.Best.Parts);
        Assert.Equal(["window"], answer.NotAllowed);
    }

    [Fact]
    public void An_option_that_is_not_in_the_table_is_named()
    {
        SpendSheet sheet = Sheet([Part("clamp", 18, 22)], new TogetherParts("clampp", ["clamp"]));
        Assert.Equal("driven[0].option", Assert.Single(BestUse.Problems(sheet, Driven(("bare can", 0.7), ("clamp", 0.8)))).Field);
        Assert.Equal("driven", Assert.Single(BestUse.Problems(sheet, null)).Field);
        Assert.Equal(2, BestUse.Problems(sheet with { Base = "nothing" }, Driven(("bare can", 0.7))).Count);
    }
}
