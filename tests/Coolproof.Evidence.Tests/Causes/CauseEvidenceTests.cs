using Coolproof.Evidence.Causes;
using Coolproof.Evidence.Model;
using Coolproof.Evidence.Tests.Curves;
using Coolproof.Notebook;

namespace Coolproof.Evidence.Tests.Causes;

public class CauseEvidenceTests
{
    private static readonly Posterior Rich = SampledDay.Of(InventedDays.Rich());

    /// <summary>Two players who earn 1 and 2 alone and 6 together share the 3 they gain by it: 2.5 and 3.5 (by the definition, from memory).</summary>
    [Fact]
    public void Players_share_what_they_gain_together()
    {
        double[] values = new double[2];
        Shapley.Fill([0, 1, 2, 6], values);
        Assert.Equal([2.5, 3.5], values);
    }

    [Fact]
    public void Parts_sum_to_the_whole_for_runs_and_for_days()
    {
        CauseEvidence evidence = new(Rich);
        int[] first = Explained("first"), second = Explained("second");
        foreach ((int[] a, int[] b) in new[] { (first[..1], second[^1..]), (first[..1], first[1..2]), (first, second) })
        {
            RunDifference difference = evidence.Between(a, b);
            Assert.Equal(difference.ReadK, difference.Parts.Sum(p => p.DifferenceK.Mean), 1e-9);
        }
    }

    /// <summary>The prediction that is split is the one that was fitted.</summary>
    [Fact]
    public void A_first_reading_is_predicted_as_the_density_does()
    {
        DayModel model = Rich.Fit.Model;
        DayDensity density = new(model);
        FirstReadings readings = new(1);
        double[] predicted = new double[1], u = Rich.Draws[17];
        density.Visit(u);
        for (int i = 0; i < model.Readings.Length; i++)
        {
            ModelReading reading = model.Readings[i];
            if (reading.On is not (ReadingOn.Can or ReadingOn.Endbell))
                continue;
            readings.Fill(density.Motor, model.Ratios[model.RollInRatio].Log(u), [RunInputs.Of(density, u, reading.Run, i, reading.ValueC)], predicted);
            Assert.Equal(density.Seen[i].Mean - density.Seen[i].Loss, predicted[0], 1e-9);
        }
    }

    /// <summary>Points of the model chosen so that the two runs differ in one thing only.</summary>
    [Theory]
    [InlineData("air")]
    [InlineData("length")]
    [InlineData("option")]
    public void What_alone_differs_gets_the_whole_difference(string planted)
    {
        ReadingsTable table = InventedDays.Plain(2, 1);
        Run plain = table.Runs[0] with { DriveS = 300, AirC = 25 };
        Run other = plain with
        {
            Name = "2",
            AirC = planted == "air" ? 32 : 25,
            DriveS = planted == "length" ? 420 : 300,
            Option = planted == "option" ? "option B" : plain.Option,
        };
        ReadingsTable two = table with { Runs = [plain, other], Options = [.. new[] { plain.Option, other.Option }.Distinct()] };
        RunDifference difference = new CauseEvidence(ChosenPoints.Of(two, new Dictionary<string, double> { ["watts shed per degree of option B"] = 1 })).Between([1], [0]);
        Cause cause = planted switch { "air" => Cause.Air, "length" => Cause.Length, _ => Cause.Option };
        Assert.True(Math.Abs(difference.Parts.Single(p => p.Cause == cause).DifferenceK.Mean) > 2);
        Assert.All(difference.Parts.Where(p => p.Cause != cause && p.Cause != Cause.Rest), p => Assert.Equal(0, p.DifferenceK.Mean, 1e-9));
    }

    [Fact]
    public void Runs_of_the_same_option_meet_and_each_run_weighs_the_same()
    {
        IReadOnlyList<(int A, int B, double Weight)> pairs = RunPairs.Of([0, 1, 2], [2, 0]);
        Assert.Contains(pairs, p => p is (0, 1, _));
        Assert.Contains(pairs, p => p is (2, 0, _));
        Assert.All(Enumerable.Range(0, 3), i => Assert.Equal(1.0 / 3, pairs.Where(p => p.A == i).Sum(p => p.Weight), 1e-12));
        Assert.All(Enumerable.Range(0, 2), j => Assert.Equal(1.0 / 2, pairs.Where(p => p.B == j).Sum(p => p.Weight), 1e-12));
    }

    [Fact]
    public void A_run_without_a_reading_is_refused() => Assert.Throws<ArgumentException>(() => new CauseEvidence(Rich).Between([99], [0]));

    private static int[] Explained(string day) =>
        [.. Rich.Table.Runs.Select((r, i) => (Run: r, At: i)).Where(x => x.Run.Day == day && CauseEvidence.Explains(x.Run)).Select(x => x.At)];
}
