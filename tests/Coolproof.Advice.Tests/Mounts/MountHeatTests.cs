using Coolproof.Advice.Mounts;
using Coolproof.Evidence;
using Coolproof.Evidence.Forecasts;
using Coolproof.Notebook;
using Coolproof.Sampling;

namespace Coolproof.Advice.Tests.Mounts;

public class MountHeatTests(ITestOutputHelper output)
{
    static readonly MountFan Thirty = new(0.030, 0.015, 0.010, 8.0 / 3600, 45, 1);
    static readonly Mount OnTop = new() { Name = "30 mm fan on top", Fans = [Thirty], GapM = 0.010, ShellFromCanM = 0.024 };

    static MountSheet Sheet(params Mount[] mounts) => new(25, 0, 0, 6, new(0.036, 0.050, 0.165, 70), mounts);

    static MountHeat Middle(Mount mount) => MountHeat.Of(Sheet(mount), mount, default);

    // Worked by hand in docs/mount.md, four figures carried.
    [Fact]
    public void The_operating_point_and_its_heat_worked_by_hand()
    {
        MountHeat heat = Middle(OnTop);
        MountFlow flow = heat.Flow;
        Near(4.038e6, flow.Losses.Single(l => l.Where == MountLoss.ShellOverInlet).Resistance, "shell");
        Near(6.462e5, flow.Losses.Single(l => l.Where == MountLoss.CanBeforeOutlet).Resistance, "can");
        Near(1.748e-3, flow.FlowM3S, "flow");
        Near(16.94, flow.PressurePa, "pressure");
        Near(3.981, flow.LeavesMS, "speed at the blades");
        Near(3.417, flow.AtCanMS, "speed at the can");
        Near(0.5911, flow.Covered, "covered");
        Near(6936, heat.Reynolds, "Re");
        Near(43.78, heat.NusseltNumber, "Nu");
        Near(0.1111, heat.StreamWPerK, "W/K");
        Assert.Equal(MountRule.OutsideCorrelation, heat.Rule);
    }

    [Fact]
    public void Each_rule_is_taken_within_its_range_only()
    {
        Mount nozzle = new() { Name = "nozzle", GapM = 0.030, Fans = [Thirty with { StallPa = 400 }], Duct = new(6e-4, 4.5e-5, 0.1, 1, false) };
        Assert.Equal(MountRule.Jet, Middle(nozzle).Rule);
        Assert.Equal(MountRule.OutsideCorrelation, Middle(nozzle with { AngleDeg = 30 }).Rule);
        Assert.Equal(MountRule.OutsideCorrelation, Middle(nozzle with { GapM = 0.010 }).Rule);
        Assert.Equal(MountRule.CrossFlow, Middle(new() { Name = "two of 40 mm", GapM = 0.005, Fans = [new(0.040, 0.02, 0.010, 4e-3, 60, 1), new(0.040, 0.02, 0.010, 4e-3, 60, 1)] }).Rule);
        Assert.Equal(MountRule.NoStream, Middle(new() { Name = "bare can" }).Rule);
    }

    [Fact]
    public void What_is_in_the_way_takes_away_and_what_is_added_adds()
    {
        double plain = Middle(OnTop).TotalWPerK;
        Assert.True(Middle(OnTop with { ShellFromCanM = 0.021 }).TotalWPerK < plain);
        Assert.True(Middle(OnTop with { ShellHoleM2 = 4e-4 }).TotalWPerK > plain);
        Assert.True(Middle(OnTop with { GrilleOpen = 0.5 }).TotalWPerK < plain);
        Assert.True(Middle(OnTop with { RimOpen = 0.5 }).TotalWPerK < plain);
        Assert.True(Middle(OnTop with { AngleDeg = 45 }).TotalWPerK < plain);
        Assert.True(Middle(OnTop with { AsideM = 0.02 }).TotalWPerK < plain);
        Assert.True(Middle(OnTop with { AirFromShell = true }).TotalWPerK < plain);
        Assert.True(Middle(OnTop with { FinsM2 = 5e-3 }).TotalWPerK > plain);
        Assert.True(Middle(OnTop with { Fans = [Thirty, Thirty] }).TotalWPerK > plain);
        Assert.True(Middle(OnTop with { Fans = [Thirty with { SpeedRatio = 1.3 }] }).TotalWPerK > plain);
        Mount shrouded = OnTop with { ShellFromCanM = null, Shroud = new(0.004, 1, 0) };
        Assert.True(Middle(shrouded with { Shroud = new(0.004, 1, 2e-4) }).TotalWPerK < Middle(shrouded).TotalWPerK);
        MountSheet high = Sheet(OnTop) with { AltitudeM = 2500 };
        Assert.True(MountHeat.Of(high, OnTop, default).TotalWPerK < plain);
    }

    [Fact]
    public void A_duct_that_faces_the_wind_blows_the_harder_the_faster_the_car_goes_and_not_at_all_at_rest()
    {
        Mount scoop = new() { Name = "scoop", GapM = 0.02, Duct = new(8e-4, 4e-4, 0.15, 1, true) };
        double[] flows = [.. new double[] { 0, 4, 8, 16 }.Select(speed => MountHeat.Of(Sheet(scoop) with { CarSpeedMS = speed }, scoop, default).Flow.FlowM3S)];
        Assert.Equal(0, flows[0]);
        Assert.Equal(2, flows[2] / flows[1], 9);
        Assert.Equal(2, flows[3] / flows[2], 9);
    }

    [Fact]
    public void A_stream_never_carries_off_more_than_its_air_can_and_every_part_is_a_number()
    {
        for (int i = 0; i < 3000; i++)
        {
            RandomStream chance = new(5, i);
            MountSheet sheet = MadeUpMounts.Sheet(chance, 1);
            MountHeat heat = MountHeat.Of(sheet, sheet.Mounts[0], MountChance.Shared(chance).Drawn(chance));
            Assert.True(heat.StreamWPerK <= heat.Flow.CarriedKgS * 1020 + 1e-12);
            Assert.All([heat.StreamWPerK, heat.ElsewhereWPerK, heat.RadiatedWPerK, heat.PlateWPerK], part => Assert.True(part >= 0 && double.IsFinite(part)));
            Assert.InRange(heat.Flow.ReachesCan, 0, 1);
            Assert.InRange(heat.Flow.Covered, 0, 1);
            Assert.True(heat.Flow.FreeM3S == 0 || sheet.Mounts[0].Duct is { } || heat.Flow.FlowM3S <= heat.Flow.FreeM3S * (1 + 1e-12));
        }
    }

    [Fact]
    public void A_mount_that_was_driven_puts_the_others_right_and_narrows_them()
    {
        Mount bare = new() { Name = "bare can" }, other = OnTop with { Name = "not driven" };
        MountSheet sheet = Sheet(bare, other);
        MountAnswer ruler = MountPredictions.Of(sheet, 1), after = MountPredictions.Of(sheet, Believed("Bare can", 0.8), 1);
        Assert.True(ruler.Mounts[0].WattsPerKelvin.Q50 < 0.6);
        Assert.InRange(after.Mounts[0].WattsPerKelvin.Q50, 0.75, 0.85);
        Assert.Null(after.Mounts[0].Found!.Together); // one mount driven: there is no difference to tell
        Assert.True(after.Mounts[1].WattsPerKelvin.Q50 > ruler.Mounts[1].WattsPerKelvin.Q50);
        Assert.True(Width(after.Mounts[1]) < 0.8 * Width(ruler.Mounts[1]), $"{Width(after.Mounts[1])} of {Width(ruler.Mounts[1])}");
        Assert.Equal(ruler.Mounts[0].WattsPerKelvin.Q50, after.Mounts[0].Found!.Predicted.Q50, 9);
        Assert.True(after.Mounts[0].Found!.Odds > 0.8);
        Assert.Null(after.Mounts[1].Found);
        Assert.Empty(after.Driven);
        Assert.True(after.Mounts[1].Against!.Q50 < 0);
    }

    [Fact]
    public void What_was_predicted_of_how_two_driven_mounts_differ_counts_beside_few_readings_and_hardly_beside_many()
    {
        MountSheet sheet = Sheet(new Mount { Name = "bare can" }, OnTop);
        IReadOnlyList<MountPrediction> ruler = MountPredictions.Of(sheet, 1).Mounts;
        double bare = ruler[0].WattsPerKelvin.Q50, top = ruler[1].WattsPerKelvin.Q50;
        // The readings have the fan half as good again as the ruler has it, twice the level of both.
        MountAnswer few = Beside(sheet, 2 * bare, 3 * top, 0.2), many = Beside(sheet, 2 * bare, 2.2 * top, 0.02);
        double Ratio(MountAnswer answer, Func<MountFound, Summary?> of) => of(answer.Mounts[1].Found!)!.Q50 / of(answer.Mounts[0].Found!)!.Q50;
        Assert.InRange(Ratio(few, f => f.Together), 1.02 * Ratio(few, f => f.Predicted), 0.98 * Ratio(few, f => f.Found));
        Assert.Equal(Ratio(many, f => f.Found), Ratio(many, f => f.Together), 0.02);
        // Their level stays the readings'.
        Assert.Equal(1, few.Mounts[0].Found!.Together!.Q50 * few.Mounts[1].Found!.Together!.Q50 / (few.Mounts[0].Found!.Found.Q50 * few.Mounts[1].Found!.Found.Q50), 0.1);
    }

    [Fact]
    public void A_ruler_that_contradicts_the_readings_is_not_weighed()
    {
        MountPrediction driven = Beside(Sheet(new Mount { Name = "bare can" }, OnTop), 0.4, 2.5, 0.03).Mounts[1];
        Assert.True(driven.Found!.Contradicts);
        Assert.Null(driven.Found.Together);
        Assert.Equal(driven.Found.Found.Q50, driven.WattsPerKelvin.Q50, 9);
    }

    [Theory]
    [InlineData(4, 0.3)]
    [InlineData(5, 0.3)]
    public void Many_mounts_that_vague_readings_find_as_predicted_are_not_said_to_contradict(int mounts, double logSd)
    {
        Mount[] all = [.. Enumerable.Range(0, mounts).Select(k => k == 0 ? new Mount { Name = "bare can" } : OnTop with { Name = $"fan {k}" })];
        MountSheet sheet = Sheet(all[0], all[1]) with { Mounts = all };
        double[] ruler = [.. MountPredictions.Of(sheet, 1).Mounts.Select(m => m.WattsPerKelvin.Q50)];
        MountAnswer answer = MountPredictions.Of(sheet, Believed([.. all.Select(m => m.Name)], ruler, logSd, 3), 1);
        Assert.All(answer.Mounts, m => Assert.False(m.Found!.Contradicts));
    }

    [Fact]
    public void Sharp_readings_far_from_the_ruler_contradict_it()
    {
        MountPrediction driven = Beside(Sheet(new Mount { Name = "bare can" }, OnTop), 2, 0.4, 0.02).Mounts[0];
        Assert.True(driven.Found!.Contradicts);
    }

    [Fact]
    public void Ruler_and_readings_together_hold_the_truth_nine_times_in_ten()
    {
        const int cars = 200;
        const double readSd = 0.15;
        MountSheet sheet = Sheet(new Mount { Name = "bare can" }, OnTop);
        int held = 0;
        double narrower = 0;
        for (int car = 0; car < cars; car++)
        {
            RandomStream chance = new(77, car);
            double[] truth = [.. MountPredictions.LogWPerK(sheet, 1, 1000 + car).Select(log => log[0] + MountPriors.MissedLogSd * chance.NextNormal())], read = [.. truth.Select(t => Math.Exp(t + readSd * chance.NextNormal()))];
            RaceEvidence evidence = Believed([sheet.Mounts[0].Name, sheet.Mounts[1].Name], read, readSd, car);
            double[][] logs = MountPredictions.LogWPerK(sheet, evidence, car);
            Summary alone = Summary.Of([.. evidence.Draws.Select(d => d.Options[1].LogConductance - d.Options[0].LogConductance)]), told = Summary.Of([.. logs[1].Zip(logs[0], (one, other) => one - other)]);
            held += told.Q05 <= truth[1] - truth[0] && truth[1] - truth[0] <= told.Q95 ? 1 : 0;
            narrower += (told.Q95 - told.Q05) / (alone.Q95 - alone.Q05) / cars;
        }
        output.WriteLine($"{held} of {cars} held; {narrower:f2} of the width by the readings alone");
        Assert.InRange((double)held / cars, 0.9 - 2.5 * Math.Sqrt(0.9 * 0.1 / cars), 0.9 + 2.5 * Math.Sqrt(0.9 * 0.1 / cars));
        Assert.InRange(narrower, 0.5, 0.66);
    }

    [Fact]
    public void Chances_of_being_the_coolest_add_up_and_one_seed_gives_one_answer()
    {
        MountSheet sheet = Sheet(new Mount { Name = "bare can" }, OnTop);
        MountAnswer answer = MountPredictions.Of(sheet, Believed("rear blower", 0.9), 4);
        Assert.Equal(1, answer.Mounts.Sum(m => m.OddsCoolest) + answer.Driven.Sum(d => d.OddsCoolest), 9);
        Assert.Equal(answer.Mounts[1].CanC, MountPredictions.Of(sheet, Believed("rear blower", 0.9), 4).Mounts[1].CanC);
    }

    static MountAnswer Beside(MountSheet sheet, double firstWPerK, double secondWPerK, double logSd) =>
        MountPredictions.Of(sheet, Believed([.. sheet.Mounts.Select(m => m.Name)], [firstWPerK, secondWPerK], logSd, 3), 1);

    static RaceEvidence Believed(string option, double wPerK) => Believed([option], [wPerK], 0.1, 3);

    // Options known to a log-sd, on motors of the usual doubt.
    static RaceEvidence Believed(string[] options, double[] wPerK, double logSd, long seed)
    {
        RandomStream chance = new(seed);
        return new(options, [.. PriorMotors.Draws(800, 2).Select(m => new RaceDraw(m.CoreOverCan, m.CoreToCanPerS, m.WindingShare, m.SlotS, m.CopperShare, Math.Log(m.HeatKPerS), 0.1, 0.05, 0.03,
            [.. wPerK.Select(w => new RaceOption(Math.Log(w / 50) + logSd * chance.NextNormal(), -0.3, -1.4))]))], new(25, 360), 360, null, []);
    }

    static double Width(MountPrediction m) => Math.Log(m.WattsPerKelvin.Q95 / m.WattsPerKelvin.Q05);

    static void Near(double byHand, double reckoned, string what) => Assert.True(Math.Abs(reckoned / byHand - 1) < 0.003, $"{what}: by hand {byHand}, reckoned {reckoned}");
}
