using CsCheck;

namespace Coolproof.Notebook.Tests;

/// <summary>With started_at the order of rows makes no difference; without it, it is the order of time.</summary>
public sealed class OrderOfRows
{
    private const string Head = "run,option,read_c,stop_to_read_s,drive_s,started_at,vehicle\n";

    private static readonly string[] Rows =
    [
        "1,bare,61,10,360,2026-06-13T17:05:10,A", "1,bare,60,22,360,2026-06-13T17:05:10,A", "1,bare,59,40,360,2026-06-13T17:05:10,A",
        "2,clamp,55,12,360,2026-06-13T17:32:00,A", "2,clamp,54,25,360,2026-06-13T17:32:00,A", "3,bare,62,9,360,2026-06-13T18:01:00,A",
        "4,clamp,56,14,360,2026-06-13T17:06:00,B", "1,bare,58,11,360,2026-06-20T17:00:00,A", "2,clamp,52,30,360,2026-06-20T17:30:00,A",
    ];

    [Fact]
    public void With_start_times_any_order_of_rows_gives_the_same_runs()
    {
        string expected = TableText.Written(TableText.Understood(Head + string.Join('\n', Rows)));
        Gen.Shuffle(Rows).Sample(rows => TableText.Written(TableText.Understood(Head + string.Join('\n', rows))) == expected, iter: 300);
    }

    [Fact]
    public void With_start_times_options_stand_in_the_order_of_their_first_run_whatever_the_order_of_rows() =>
        Gen.Shuffle(Rows).Sample(rows => Assert.Equal(["bare", "clamp"], TableText.Understood(Head + string.Join('\n', rows)).Options), iter: 100);

    [Fact]
    public void With_start_times_runs_stand_in_the_order_of_time_and_readings_in_the_order_of_delay()
    {
        ReadingsTable table = TableText.Understood(Head + string.Join('\n', Rows.Reverse()));
        Assert.Equal(
            [("2026-06-13", "1"), ("2026-06-13", "4"), ("2026-06-13", "2"), ("2026-06-13", "3"), ("2026-06-20", "1"), ("2026-06-20", "2")],
            table.Runs.Select(run => (run.Day, run.Name)));
        Assert.Equal([10.0, 22, 40], table.Runs[0].Readings.Select(reading => reading.StopToReadS));
        Assert.Empty(table.Questions);
    }

    [Fact]
    public void Offsets_count_where_every_run_has_one()
    {
        ReadingsTable table = TableText.Understood(
            "run,option,read_c,drive_s,started_at,day\n1,a,61,360,2026-10-25T02:10:00+01:00,night\n2,b,60,360,2026-10-25T02:40:00+02:00,night\n");
        Assert.Equal(["2", "1"], table.Runs.Select(run => run.Name));
    }

    [Fact]
    public void Without_start_times_rows_stand_in_the_order_of_time()
    {
        Assert.Equal(["z", "a", "m"], TableText.Understood("run,option,read_c,drive_s\nz,b,61,360\na,a,60,360\nm,b,59,360\n").Runs.Select(run => run.Name));
    }

    [Fact]
    public void Readings_stand_in_row_order_where_a_delay_is_missing()
    {
        Run run = TableText.Understood("run,option,read_c,stop_to_read_s,drive_s\n1,a,61,30,360\n,,60,,\n,,59,10,\n").Runs[0];
        Assert.Equal([61.0, 60, 59], run.Readings.Select(reading => reading.ReadC));
    }

    [Fact]
    public void Where_some_runs_of_a_day_have_no_start_time_the_rows_are_the_order_of_time_and_it_is_asked()
    {
        ReadingsTable table = TableText.Understood("run,option,read_c,drive_s,started_at\n1,a,61,360,2026-06-13T17:05\n2,b,60,360,\n3,a,62,360,2026-06-13T18:05\n");
        Assert.Equal(["1", "2", "3"], table.Runs.Select(run => run.Name));
        TableProblem question = Assert.Single(table.Questions);
        Assert.Equal((3, "started_at"), (question.Line, question.Column));
    }

    [Fact]
    public void Two_vehicles_may_drive_at_once_and_a_start_to_the_minute_is_not_taken_to_the_second()
    {
        TableText.Understood("run,option,read_c,stop_to_read_s,drive_s,started_at,vehicle\n1,a,61,10,360,2026-06-13T17:05:30,A\n2,b,60,10,360,2026-06-13T17:06:30,B\n");
        TableText.Understood("run,option,read_c,stop_to_read_s,drive_s,started_at\n1,a,61,20,360,2026-06-13T17:05\n2,b,60,10,360,2026-06-13T17:11\n");
        TableText.OnlyProblem("run,option,read_c,stop_to_read_s,drive_s,started_at\n1,a,61,20,360,2026-06-13T17:05\n2,b,60,10,360,2026-06-13T17:10\n");
    }

    [Fact]
    public void An_overlap_by_a_drive_that_was_only_assumed_is_asked_and_not_refused()
    {
        ReadingsTable table = TableText.Understood("run,option,read_c,drive_s,started_at\n1,a,61,,2026-06-13T17:05:10\n2,b,60,360,2026-06-13T17:08:10\n3,b,60,360,2026-06-13T18:08:10\n");
        Assert.Equal((3, "started_at"), (Assert.Single(table.Questions).Line, table.Questions[0].Column));
    }
}
