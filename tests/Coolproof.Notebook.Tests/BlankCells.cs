using NodaTime;

namespace Coolproof.Notebook.Tests;

/// <summary>What a blank cell or a missing column means, column by column of FORMATS.md.</summary>
public sealed class BlankCells
{
    [Fact]
    public void A_row_with_only_an_option_and_a_reading_means_the_documented_defaults()
    {
        Run run = TableText.Understood("option,read_c\nbare,61\n", givenDriveS: 300).Runs[0];
        Assert.Equal(("day", "1", RunKind.Test), (run.Day, run.Name, run.Kind));
        Assert.Equal((300, true), (run.DriveS, run.DriveAssumed));
        Assert.Equal((0, CutShort.No, AirSource.Thermometer), (run.StoodS, run.CutShort, run.AirBy));
        Assert.Equal((FanInRun.Unknown, FanAfterStop.Unknown), (run.Fan, run.FanAfterStop));
        Assert.Equal((new LoadNotes(), new PackNotes()), (run.Load, run.Pack));
        Assert.Null(run.StartedAt);
        Assert.Null(run.RollInS);
        Assert.Null(run.AirC);
        Assert.Null(run.StartC);
        Assert.Null(run.Remounted);
        Assert.Null(run.PowerOffS);
        Assert.Equal([new Reading(2, 61, null)], run.Readings);
    }

    [Fact]
    public void A_blank_drive_is_the_median_of_the_runs_that_note_one_whatever_is_given()
    {
        ReadingsTable table = TableText.Understood("option,run,read_c,drive_s\na,1,61,300\na,1,60,300\na,1,59,300\nb,2,61,360\nc,3,61,\n", givenDriveS: 100);
        Assert.Equal([(300, false), (360, false), (330, true)], table.Runs.Select(run => (run.DriveS, run.DriveAssumed)));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(7201)]
    [InlineData(double.NaN)]
    public void A_given_drive_that_cannot_be_is_refused(double given) =>
        Assert.Contains("halt cannot come before go", TableText.OnlyProblem("option,read_c\nbare,61\n", given).Expected, StringComparison.Ordinal);

    [Fact]
    public void A_blank_run_is_the_run_of_the_row_above()
    {
        ReadingsTable table = TableText.Understood("option,run,read_c,drive_s\na,1,61,360\n,,60,\n,,59,\nb,2,50,360\n,,49,\n");
        Assert.Equal([("1", "a", 3), ("2", "b", 2)], table.Runs.Select(run => (run.Name, run.Option, run.Readings.Count)));
    }

    [Fact]
    public void Without_a_run_column_each_row_is_a_run()
    {
        ReadingsTable table = TableText.Understood("option,read_c,drive_s\na,61,360\na,60,360\nb,59,360\n");
        Assert.Equal(["1", "2", "3"], table.Runs.Select(run => run.Name));
    }

    [Fact]
    public void A_blank_day_is_the_date_of_the_start_else_one_day()
    {
        ReadingsTable clocked = TableText.Understood("option,run,read_c,drive_s,started_at\na,1,61,360,2026-06-13T17:05\na,1,60,,\nb,1,59,360,2026-06-14T17:05\n");
        Assert.Equal([("2026-06-13", "1", 2), ("2026-06-14", "1", 1)], clocked.Runs.Select(run => (run.Day, run.Name, run.Readings.Count)));
        Assert.All(TableText.Understood("option,run,read_c,drive_s\na,1,61,360\nb,2,59,360\n").Runs, run => Assert.Equal("day", run.Day));
    }

    [Fact]
    public void The_same_run_name_on_two_days_is_two_runs()
    {
        ReadingsTable table = TableText.Understood("day,option,run,read_c,drive_s\nSat,a,1,61,360\nSat,b,2,61,360\nSun,a,1,60,360\n,,1,59,\n");
        Assert.Equal([("Sat", "1", 1), ("Sat", "2", 1), ("Sun", "1", 2)], table.Runs.Select(run => (run.Day, run.Name, run.Readings.Count)));
    }

    [Fact]
    public void A_named_day_takes_in_the_runs_of_its_date()
    {
        ReadingsTable table = TableText.Understood("day,option,run,read_c,drive_s,started_at\nSat,a,1,61,360,2026-06-13T17:05\n,b,2,61,360,2026-06-13T17:30\n");
        Assert.All(table.Runs, run => Assert.Equal("Sat", run.Day));
    }

    [Fact]
    public void What_belongs_to_the_run_may_be_repeated_or_left_blank_after_its_first()
    {
        string repeated = "option,run,read_c,drive_s,ambient_c,fan,driver\na,1,61,360,24,ok,Kim\na,1,60,360,24,ok,kim\n";
        string blank = "option,run,read_c,drive_s,ambient_c,fan,driver\na,1,61,360,24,ok,Kim\n,,60,,,,\n";
        Assert.Equal(TableText.Written(TableText.Understood(repeated)), TableText.Written(TableText.Understood(blank)));
    }

    [Fact]
    public void A_winding_resistance_may_stand_without_a_reading_and_its_cold_value_once_for_the_run()
    {
        Run run = TableText.Understood("option,run,read_c,stop_to_read_s,drive_s,winding_mohm,winding_cold_mohm,winding_cold_c,winding_pair\na,1,61,10,360,,22,25,\n,,,20,,27,,,\n,,,30,,26.5,,,\n").Runs[0];
        Assert.Equal(new WindingResistance(27, 20, 22, 25, null), run.Readings[1].Winding);
        Assert.Equal(new WindingResistance(26.5, 30, 22, 25, null), run.Readings[2].Winding);
        Assert.Null(run.Readings[1].ReadC);
    }

    [Fact]
    public void Each_pair_of_a_winding_has_its_own_cold_value()
    {
        Run run = TableText.Understood("option,run,drive_s,winding_mohm,winding_at_s,winding_cold_mohm,winding_cold_c,winding_pair\na,1,360,27,10,22,25,ab\n,,,27.5,20,22.4,,b-c\n,,,27,30,,,AB\n,,,27.2,40,,,CB\n").Runs[0];
        Assert.Equal([(22, WindingPair.AB), (22.4, WindingPair.BC), (22, WindingPair.AB), (22.4, WindingPair.BC)], run.Readings.Select(reading => (reading.Winding!.ColdMilliohm, reading.Winding.Pair!.Value)));
        Assert.All(run.Readings, reading => Assert.Equal(25, reading.Winding!.ColdC));
    }

    [Fact]
    public void A_warm_up_or_void_run_need_not_have_been_read()
    {
        ReadingsTable table = TableText.Understood("option,kind,read_c,drive_s,note\na,Warm up,,180,tyres in\na,VOID,,60,\na,test,61,360,\n");
        Assert.Equal([(RunKind.WarmUp, 0), (RunKind.Void, 0), (RunKind.Test, 1)], table.Runs.Select(run => (run.Kind, run.Readings.Count)));
        Assert.Equal("tyres in", table.Runs[0].Note);
    }

    [Fact]
    public void Words_are_understood_in_any_case_with_blanks_or_hyphens()
    {
        Run run = TableText.Understood(
            "option,read_c,drive_s,kind,spot,hold,surface_of_spot,fan,fan_after_stop,cut_short,air_by,sky,wind,track,remounted\n"
            + "a,61,360,WARM_UP,Through Vent,Maximum,TAPE,Ok,ON,Crash,Forecast,Dusk,Light,Damp,Yes\n").Runs[0];
        Assert.Equal((RunKind.WarmUp, CutShort.Crash, AirSource.Forecast, FanInRun.Ok, FanAfterStop.On), (run.Kind, run.CutShort, run.AirBy, run.Fan, run.FanAfterStop));
        Assert.Equal((Sky.Dusk, Wind.Light, TrackState.Damp, true), (run.Sky, run.Wind, run.Track, run.Remounted));
        Assert.Equal((Spot.ThroughVent, Hold.Max, SpotSurface.Tape), (run.Readings[0].Spot, run.Readings[0].Hold, run.Readings[0].Surface));
    }

    [Fact]
    public void Unknown_columns_are_kept_as_notes()
    {
        Reading reading = TableText.Understood("option,read_c,drive_s,note,ride height,\na,61,360,gusty,12 mm,last\n").Runs[0].Readings[0];
        Assert.Equal("gusty; ride height: 12 mm; column 6: last", reading.Note);
    }

    [Fact]
    public void An_excluded_reading_is_kept_with_its_reason()
    {
        Assert.Equal(["hand slipped", null, null], TableText.Understood("option,read_c,drive_s,exclude\na,61,360,hand slipped\na,60,360,\na,59,360,no\n").Runs.Select(run => run.Readings[0].ExcludedBecause));
    }

    [Theory]
    [InlineData("2026-06-13T17:05", 17, 5, 0, null)]
    [InlineData("2026-06-13 17:05:30", 17, 5, 30, null)]
    [InlineData("2026-06-13T17:05:30+02:00", 17, 5, 30, 2)]
    [InlineData("2026-06-13 17:05 +0200", 17, 5, 0, 2)]
    [InlineData("2026-06-13t9:05z", 9, 5, 0, 0)]
    [InlineData("2026-6-13T09:05:00.000-03", 9, 5, 0, -3)]
    public void A_start_is_a_local_date_and_time_by_ISO_8601(string written, int hour, int minute, int second, int? offset)
    {
        Run run = TableText.Understood($"option,read_c,drive_s,started_at\na,61,360,{written}\n").Runs[0];
        Assert.Equal(new LocalDateTime(2026, 6, 13, hour, minute, second), run.StartedAt);
        Assert.Equal(offset is { } hours ? Offset.FromHours(hours) : null, run.StartedOffset);
    }

    [Fact]
    public void Names_are_told_apart_without_regard_to_case_and_kept_as_first_written()
    {
        ReadingsTable table = TableText.Understood("option,read_c,drive_s\nBare Can,61,360\nbare  can,60,360\nclamp,59,360\n");
        Assert.Equal(["Bare Can", "clamp"], table.Options);
        Assert.Equal(["Bare Can", "Bare Can", "clamp"], table.Runs.Select(run => run.Option));
    }
}
