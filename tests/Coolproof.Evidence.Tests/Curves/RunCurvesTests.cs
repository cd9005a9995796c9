using Coolproof.Evidence.Curves;
using Coolproof.Evidence.Model;
using Coolproof.Notebook;

namespace Coolproof.Evidence.Tests.Curves;

public class RunCurvesTests(ITestOutputHelper output)
{
    private static readonly Lazy<Posterior> Rich = new(() => SampledDay.Of(InventedDays.Rich()));
    private static readonly Lazy<IReadOnlyList<RunCurve>> RichCurves = new(() => RunCurves.Of(Rich.Value));

    [Fact]
    public void Read_plus_parts_is_corrected_and_with_air_and_warmth_fair()
    {
        CorrectedReading[] all = [.. RichCurves.Value.SelectMany(c => c.Readings)];
        Assert.NotEmpty(all);
        Assert.All(all, r => Assert.Equal(r.ReadC + r.PartDelayK + r.PartAimK + r.PartGunK, r.CorrectedC));
        Assert.All(all, r => Assert.Equal(r.CorrectedC + r.PartAmbientK + r.PartWarmthK, r.FairC));
        Assert.All(all, r => Assert.True(r.PartAimK > 0 && double.IsFinite(r.FairC)));
    }

    [Fact]
    public void Every_reading_of_can_and_endbell_is_listed_once_and_none_that_is_excluded_or_elsewhere()
    {
        ReadingsTable rich = InventedDays.Rich();
        ReadingsTable table = rich with
        {
            Runs = [.. rich.Runs.Select((run, i) => run with
            {
                Readings = [.. run.Readings.Select((r, k) => (i, k) switch
                {
                    (1, 0) => r with { ExcludedBecause = "a slip" },
                    (3, 0) => r with { Spot = Spot.Fin },
                    (5, 0) => r with { Spot = Spot.Winding },
                    _ => r,
                })],
            })],
        };
        int[] expected = [.. table.Runs.SelectMany(run => run.Readings)
            .Where(r => r.ExcludedBecause is null && r.ReadC is not null && r.Spot is Spot.Can or Spot.Endbell).Select(r => r.Line)];
        IReadOnlyList<RunCurve> curves = RunCurves.Of(ChosenPoints.Of(table, [], []));
        Assert.Equal(expected, curves.SelectMany(c => c.Readings).Select(r => r.Line));
        Assert.Equal(table.Runs.Select(r => (r.Day, r.Name, r.Option)), curves.Select(c => (c.Day, c.Run, c.Option)));
    }

    [Fact]
    public void The_curves_go_through_what_the_model_says_at_the_end_the_halt_and_each_reading()
    {
        ReadingsTable table = InventedDays.Rich();
        Dictionary<string, double> point = new() { ["core to can"] = -0.7, ["stopped ratio, fan on"] = 0.4, ["winding share of capacity"] = 0.3 };
        Posterior posterior = ChosenPoints.Of(table, point, point);
        DayModel model = posterior.Fit.Model;
        DayDensity density = new(model);
        density.Visit(posterior.Draws[0]);
        double worst = 0;
        foreach (ModelRun run in model.Runs)
        {
            RunCurve curve = RunCurves.Of(posterior)[run.TableRun];
            RunState s = density.States[run.TableRun];
            worst = Math.Max(worst, Math.Abs(curve.CanC[0].Mean - s.Air - s.End2));
            worst = Math.Max(worst, Math.Abs(curve.WindingC[0].Mean - s.Air - s.End1 - s.EndExcess));
            worst = Math.Max(worst, Math.Abs(curve.CanC[3].Mean - s.Air - s.Halt2));
            for (int i = run.FirstReading; i < run.EndReading; i++)
            {
                // A grid that ends at this reading. One of unknown delay the model sees from the halt, even past the fan's stop.
                double delay = density.Seen[i].Delay;
                if (model.Readings[i].Gap >= 0 && delay > run.FanStopsS)
                    continue;
                RunGrid grid = new([-5, -3, -1, 0, .. Enumerable.Range(1, 20).Select(k => delay * k / 20)], 3);
                AfterStop after = new(model, [(run.TableRun, grid)]);
                after.Step(density, posterior.Draws[0]);
                (double can, double winding) = after.Read(density, 0, RunGrid.Points - 1);
                worst = Math.Max(worst, Math.Abs(can - density.Seen[i].Can));
                if (model.Readings[i].On is ReadingOn.WindingByResistance or ReadingOn.WindingByGun)
                    worst = Math.Max(worst, Math.Abs(winding - density.Seen[i].Winding));
            }
        }
        output.WriteLine($"worst {worst:E1} K");
        Assert.True(worst < 1e-9, $"{worst} K");
    }

    [Fact]
    public void Bands_are_ordered_and_grids_cover_the_readings()
    {
        Assert.All(RichCurves.Value, curve =>
        {
            Assert.Equal(curve.SecondsAfterHalt.Count, curve.CanC.Count);
            Assert.Equal(curve.SecondsAfterHalt.Count, curve.WindingC.Count);
            Assert.All(curve.CanC.Concat(curve.WindingC).Append(curve.AirC),
                s => Assert.True(s.Q05 <= s.Q25 && s.Q25 <= s.Q50 && s.Q50 <= s.Q75 && s.Q75 <= s.Q95 && s.Sd > 0));
            Assert.True(curve.SecondsAfterHalt[0] < 0);
            Assert.True(curve.SecondsAfterHalt[^1] >= Math.Max(90, curve.Readings.Max(r => 1.3 * r.DelayS)) - 1e-9);
        });
    }

    [Fact]
    public void A_delay_that_was_noted_stands_as_noted_and_one_that_was_not_lies_between_its_neighbours()
    {
        ReadingsTable table = InventedDays.Rich();
        foreach ((RunCurve curve, Run run) in RichCurves.Value.Zip(table.Runs))
        {
            Assert.All(curve.Readings, r => Assert.Equal(run.Readings.Single(x => x.Line == r.Line).StopToReadS is not null, r.DelayNoted));
            Assert.All(curve.Readings.Where(r => r.DelayNoted), r => Assert.Equal(run.Readings.Single(x => x.Line == r.Line).StopToReadS, r.DelayS));
            Assert.All(curve.Readings.Zip(curve.Readings.Skip(1)), pair => Assert.True(pair.First.DelayS < pair.Second.DelayS));
        }
    }

    [Fact]
    public void Readings_of_the_winding_are_brought_to_the_winding_at_the_end_of_driving()
    {
        ReadingsTable table = Shots(run => run with
        {
            Readings = [run.Readings[0] with { Spot = Spot.Winding }, run.Readings[1] with { ReadC = null, Winding = new(61, 22, 50, 25, null) }],
        });
        Posterior posterior = ChosenPoints.Of(table, [], []);
        DayDensity density = new(posterior.Fit.Model);
        density.Visit(posterior.Draws[0]);
        RunState s = density.States[0];
        RunCurve curve = RunCurves.Of(posterior)[0];
        Assert.Empty(curve.Readings);
        (WindingReading gun, WindingReading resistance) = (curve.WindingReadings[0], curve.WindingReadings[1]);
        Assert.Equal((false, true, 8.0, 22.0), (gun.ByResistance, resistance.ByResistance, gun.DelayS, resistance.DelayS));
        Assert.Equal((table.Runs[0].Readings[0].ReadC, table.Runs[0].Readings[0].Line), (gun.ReadC, gun.Line));
        // Copper at 61 mΩ that had 50 mΩ at 25 °C: (235 + 25) 61/50 − 235 = 82.2 °C (IEC 60034-1, from memory).
        Assert.Equal(82.2, resistance.ReadC, 1e-9);
        Assert.Equal(gun.ReadC + s.End1 + s.EndExcess - density.Seen[0].Winding, gun.CorrectedC, 1e-9);
        Assert.Equal(resistance.ReadC + s.End1 + s.EndExcess - density.Seen[1].Winding, resistance.CorrectedC, 1e-9);
        Assert.True(resistance.CorrectedC > resistance.ReadC);
    }

    [Fact]
    public void A_reading_at_the_stop_with_a_perfect_gun_and_aim_is_left_as_it_is()
    {
        ReadingsTable table = Shots(run => run with { RollInS = 0, Readings = [run.Readings[0] with { StopToReadS = 0 }] });
        Dictionary<string, double> perfect = new()
        {
            ["gain of gun on bare metal or an unknown surface"] = -Priors.GainBare.Mean / Priors.GainBare.Sd,
            ["aim loss of gun"] = -20,
            ["offset of gun"] = 0,
        };
        Assert.All(RunCurves.Of(ChosenPoints.Of(table, perfect, perfect)).SelectMany(c => c.Readings), r =>
        {
            // Without a roll-in noted as nothing the model takes a thousandth of a second.
            Assert.Equal(0, r.PartDelayK, 1e-3);
            Assert.InRange(r.PartAimK, 0, 0.01);
            Assert.Equal(0, r.PartGunK, 1e-9);
            Assert.Equal(r.ReadC, r.CorrectedC, 0.02);
        });
    }

    [Fact]
    public void A_can_that_falls_after_the_stop_is_put_up_and_one_that_rises_is_put_down()
    {
        Dictionary<string, double> falls = new() { ["stopped ratio, fan on"] = 2, ["core to can"] = -1 };
        Dictionary<string, double> rises = new() { ["stopped ratio, fan on"] = -8, ["core to can"] = -3 };
        foreach ((Dictionary<string, double> point, int sign) in new[] { (falls, 1), (rises, -1) })
        {
            foreach (RunCurve curve in RunCurves.Of(ChosenPoints.Of(Shots(run => run), point, point)))
            {
                CorrectedReading last = curve.Readings[^1];
                Assert.Equal(sign, Math.Sign(last.PartDelayK));
                int after = curve.SecondsAfterHalt.ToList().FindIndex(t => t >= last.DelayS);
                Assert.Equal(sign, Math.Sign(curve.CanC[0].Mean - curve.CanC[after].Mean));
            }
        }
    }

    [Fact]
    public void The_gun_part_takes_off_offset_and_gain_and_an_endbell_s_difference_and_undoes_the_setting()
    {
        ReadingsTable table = Shots(run => run with
        {
            Readings = [run.Readings[0], run.Readings[1] with { Spot = Spot.Endbell }, run.Readings[2] with { EmissivitySet = 0.9 }],
        });
        Dictionary<string, double> point = new()
        {
            ["gain of gun on bare metal or an unknown surface"] = 0,
            ["offset of gun"] = 1.5,
            ["endbell over can"] = 1,
        };
        Posterior posterior = ChosenPoints.Of(table, point, point);
        DayDensity density = new(posterior.Fit.Model);
        density.Visit(posterior.Draws[0]);
        double gain = Math.Exp(Priors.GainBare.Mean), offset = 1.5 * Priors.OffsetSd, endbell = Math.Exp(Priors.Endbell.Mean + Priors.Endbell.Sd);
        CorrectedReading[] readings = [.. RunCurves.Of(posterior)[0].Readings];
        double[] can = [.. density.Seen[..3].ToArray().Select(s => s.Can)];
        double undone = GunSetting.Undo(readings[2].ReadC, 0.9, table.Runs[0].AirC!.Value) - readings[2].ReadC;
        Assert.NotEqual(0, undone, 0.1);
        Assert.Equal(-offset - (gain - 1) * can[0], readings[0].PartGunK, 1e-9);
        Assert.Equal(-offset - (gain * endbell - 1) * can[1], readings[1].PartGunK, 1e-9);
        Assert.Equal(undone - offset - (gain - 1) * can[2], readings[2].PartGunK, 1e-9);
    }

    [Fact]
    public void The_warmth_part_is_what_the_same_run_has_less_with_a_start_at_air()
    {
        ReadingsTable table = Shots(run => run);
        string first = table.Runs[0].Name;
        Dictionary<string, double> warm = new() { [$"can before run {first}"] = 3, [$"core before run {first}"] = 5 };
        RunCurve started = RunCurves.Of(ChosenPoints.Of(table, warm, warm))[0], cold = RunCurves.Of(ChosenPoints.Of(table, [], []))[0];
        double less = cold.CanC[0].Mean - started.CanC[0].Mean;
        Assert.True(less < -0.3);
        Assert.All(started.Readings, r => Assert.Equal(less, r.PartWarmthK, 1e-9));
        Assert.All(cold.Readings, r => Assert.Equal(0, r.PartWarmthK, 1e-12));
    }

    [Fact]
    public void The_air_part_brings_the_run_s_air_to_the_fair_air() =>
        Assert.All(RichCurves.Value, c => Assert.All(c.Readings, r => Assert.Equal(Rich.Value.Fair.AmbientC - c.AirC.Mean, r.PartAmbientK, 1e-12)));

    private static ReadingsTable Shots(Func<Run, Run> change)
    {
        ReadingsTable table = InventedDays.Plain(2, 2, clock: true);
        return table with { Runs = [.. table.Runs.Select(change)] };
    }
}
