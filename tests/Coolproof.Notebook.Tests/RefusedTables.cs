namespace Coolproof.Notebook.Tests;

/// <summary>Tables that are refused, and what is said of them: line, column, what was found, what would be right.</summary>
public sealed class RefusedTables
{
    private const string Head = "option,run,read_c,stop_to_read_s,drive_s\n";

    /// <summary>Name, text, and problems as "line|column|found|part of what is expected".</summary>
    public static TheoryData<string, string, string[]> Cases() => new()
    {
        { "only a header", Head, ["1||a header with no rows under it|at least one reading"] },
        { "only blanks", "\n \n\t\n", ["1||nothing but blanks|a header row and at least one reading"] },
        { "no header", "bare can,61.5\nclamp,58\n", ["1||bare can, 61.5|needed are option and read_c or read_f"] },
        { "no option column", "mount,read_c,drive_s\nx,61,360\n", ["1|option|no such column; there are mount, read_c, drive_s|also understood: cooling, setup"] },
        { "no reading column", "option,drive_s\nbare,360\n", ["1|read_c|no such column; there are option, drive_s|read_c or read_f"] },
        { "reading in an unknown unit", "option,read_k,drive_s\nbare,334,360\n", ["1|read_c|no such column; there are option, read_k, drive_s|read_c or read_f"] },
        { "neither", "drive_s\n360\n", ["1|option|no such column; there are drive_s|option", "1|read_c|no such column; there are drive_s|read_c"] },
        { "no drive and none given", "option,read_c\nbare,61\n", ["1|drive_s|no such column|--drive"] },
        { "a drive column with nothing in it", "option,read_c,drive_s\nbare,61,\n", ["1|drive_s|no run with a drive time|--drive"] },
        { "blank option", Head + ",1,61,15,360\n", ["2|option|blank|the cooling option's name"] },
        { "blank reading", Head + "bare,1,61,15,360\nbare,2,,15,360\n", ["3|read_c|blank|a reading, or a winding resistance with its cold value"] },
        { "blank run in the first row", Head + "bare,,61,15,360\n", ["2|run|blank|there is no row above"] },
        { "no number", Head + "bare,1,hot,15,360\n", ["2|read_c|hot|a temperature in °C, such as 61.5"] },
        { "two points in a number", Head + "bare,1,\"1,234.5\",15,360\n", ["2|read_c|1,234.5|a temperature in °C"] },
        { "not a number as programs write it", Head + "bare,1,NaN,Infinity,1e3\n", ["2|read_c|NaN|a temperature", "2|stop_to_read_s|Infinity|a time", "2|drive_s|1e3|a time"] },
        { "kelvins in a cell", Head + "bare,1,334 K,15,360\n", ["2|read_c|334 K|a temperature in °C"] },
        { "900 °C", Head + "bare,1,900,15,360\n", ["2|read_c|900|between -40 °C and 350 °C"] },
        { "only possible in the other unit", Head + "bare,1,400,15,360\n", ["2|read_c|400|if 400 is °F, write 400 °F"] },
        { "colder than any track", Head + "bare,1,-41,15,360\n", ["2|read_c|-41|between -40 °C and 350 °C"] },
        { "a negative delay", Head + "bare,1,61,-15,360\n", ["2|stop_to_read_s|-15|a delay cannot be negative"] },
        { "a negative delay with a typeset minus", Head + "bare,1,61,−0:15,360\n", ["2|stop_to_read_s|−0:15|a time, such as 15 s"] },
        { "halt before go", Head + "bare,1,61,15,-360\n", ["2|drive_s|-360|the halt cannot come before go"] },
        { "no drive at all", Head + "bare,1,61,15,0\n", ["2|drive_s|0|more than 0 s"] },
        { "a drive of over two hours", Head + "bare,1,61,15,7201\n", ["2|drive_s|7201|at most 2 h"] },
        { "a drive that a spreadsheet turned into hours", Head + "bare,1,61,15,06:00:00\n", ["2|drive_s|06:00:00|write 6:00 or 6 min"] },
        { "a time without a unit", "option,read_c,drive\nbare,61,6\n", ["2|drive|6|a column named drive_s or drive_min"] },
        { "a reading without a unit", "option,read,drive_s\nbare,61,360\n", ["2|read|61|a column named read_c or read_f"] },
        { "air of an oven", "option,read_c,drive_s,ambient_c\nbare,90,360,61\nbare,90,360,82\n", ["2|ambient_c|61|air between -30 °C and 60 °C", "3|ambient_c|82|if 82 is °F, write 82 °F"] },
        { "stood longer than it drove", "option,read_c,drive_s,stood_s\nbare,61,360,361\n", ["2|stood_s|361 s|no more than the drive of 360 s"] },
        { "stood longer than the drive taken for it", "option,read_c,drive_s,stood_s\nbare,61,360,\nbare,61,,400\n", ["3|stood_s|400 s|the run's own drive_s"] },
        { "emissivity", "option,read_c,drive_s,emissivity_set\nbare,61,360,0.04\nbare,61,360,95\n", ["2|emissivity_set|0.04|between 0.05 and 1", "3|emissivity_set|95|between 0.05 and 1"] },
        { "teeth", "option,read_c,drive_s,pinion,spur\nbare,61,360,0,70.5\n", ["2|pinion|0|5 to 80 whole teeth", "2|spur|70.5|10 to 250 whole teeth"] },
        { "timing", "option,read_c,drive_s,timing_deg\nbare,61,360,120\n", ["2|timing_deg|120|between -30 and 90 degrees"] },
        { "charge with a thousands separator", "option,read_c,drive_s,charge_back_mah\nbare,61,360,\"1,850\"\n", ["2|charge_back_mah|1,850|without a thousands separator"] },
        { "an unknown word", "option,read_c,drive_s,kind,spot\nbare,61,360,heat,roof\n", ["2|kind|heat|one of: test, warm-up, race, void", "2|spot|roof|one of: can, fin, endbell, through-vent, winding, esc"] },
        { "neither yes nor no", "option,read_c,drive_s,remounted\nbare,61,360,maybe\n", ["2|remounted|maybe|yes or no"] },
        { "a date of the wrong form", "option,read_c,drive_s,started_at\nbare,61,360,13.06.2026 17:05\nbare,61,360,2026-06-13\nbare,61,360,2026-02-30T10:00\nbare,61,360,1026-06-13T10:00\n",
            ["2|started_at|13.06.2026 17:05|2026-06-13T17:05", "3|started_at|2026-06-13|2026-06-13T17:05", "4|started_at|2026-02-30T10:00|2026-06-13T17:05", "5|started_at|1026-06-13T10:00|a year between 2000 and 2100"] },
        { "two units that disagree", "option,read_c,read_f,drive_s\nbare,61.5,150,360\n", ["2|read_f|150|the same as column read_c of this row, or blank"] },
        { "two names for one option", "option,cooling,read_c,drive_s\nbare,clamp,61.5,360\n", ["2|cooling|clamp|the same as column option of this row, or blank"] },
        { "decimal comma without quotes", "option,read_c,drive_s\nbare,61,5,360\n", ["2||4 cells|a decimal comma in it needs quotes"] },
        { "a quote that is never closed", "option,read_c,drive_s\nbare,61,360\n\"clamp,58,360\nbare,60,360\n", ["3|option|a quote that is never closed: \"clamp,58,360 ⏎ bare,60,360 ⏎ |a second quote"] },
        { "text after a closing quote", "option,read_c,drive_s\n\"clamp\" fan,58,360\n", ["2|option|text after a closing quote: clamp fan|those inside it doubled"] },
        { "a NUL in a cell", "option,read_c,drive_s,note\nbare,61,360,a\0b\n", ["2|note|a control character in: a\\u0000b|text that can be printed"] },
        { "run name used twice", Head + "bare,1,61,15,360\nclamp,2,58,15,360\nbare,1,62,15,360\n", ["4|run|1, which stands at line 2 already|a name that no other run of the day has"] },
        { "run name used twice for two options", Head + "bare,1,61,15,360\nclamp,1,58,15,360\n", ["3|option|clamp|bare as in line 2, or blank"] },
        { "air that disagrees within a run", "option,run,read_c,drive_s,ambient_c\nbare,1,61,360,24\n,,60,,\n,1,59,,29\n", ["4|ambient_c|29 °C|24 °C as in line 2, or blank"] },
        { "a blank run on another day", "option,day,run,read_c,drive_s\nbare,Sat,1,61,360\nbare,Sun,,61,360\n", ["3|run|blank, on Sun|a blank run is the run of the row above"] },
        { "runs that overlap", "option,read_c,drive_s,started_at\nbare,61,360,2026-06-13T17:05:10\nclamp,58,360,2026-06-13T17:10:20\n", ["3|started_at|2026-06-13T17:10:20, 310 s after the run of line 2 began|it drove and rolled for 360 s"] },
        { "readings of one run without a run column", "option,read_c,stop_to_read_s,drive_s,started_at\nbare,61,10,360,2026-06-13T17:05:10\nbare,60,20,360,2026-06-13T17:05:10\n",
            ["3|started_at|2026-06-13T17:05:10, 0 s after the run of line 2 began|add a column run"] },
        { "rows against the clock where not every run has one", "option,read_c,drive_s,started_at\nbare,61,360,2026-06-13T17:30\nclamp,58,360,\nbare,61,360,2026-06-13T17:05\n",
            ["4|started_at|2026-06-13T17:05:00, before the run above it (line 2, 2026-06-13T17:30:00)|a start time for every run of the day"] },
        { "a day cannot be told", "option,day,run,read_c,drive_s\nbare,Fri,9,61,360\nbare,Sat,1,61,360\nbare,Sun,1,61,360\nbare,Fri,8,60,360\nbare,,1,61,360\n", ["6|day|blank|run 1 stands in 2 days"] },
        { "a hot winding without a cold one", "option,read_c,drive_s,winding_mohm\nbare,61,360,27\n", ["2|winding_mohm|27 mΩ|without the cold resistance and its temperature a hot one says nothing"] },
        { "a hot winding without the cold one's temperature", "option,read_c,drive_s,winding_mohm,winding_cold_mohm\nbare,61,360,27,22\n", ["2|winding_mohm|27 mΩ|winding_cold_c"] },
        { "a winding of a thousand degrees", "option,drive_s,winding_mohm,winding_cold_mohm,winding_cold_c\nbare,360,110,22,25\n", ["2|winding_mohm|110 mΩ hot, 22 mΩ cold|these give 1065 °C for copper"] },
        { "several at once, in the order of lines", "option,run,read_c,drive_s\n,1,900,-5\nbare,2,x,360\n,3,60,360\n",
            ["2|option|blank|name", "2|read_c|900|350", "2|drive_s|-5|go", "3|read_c|x|a temperature", "4|option|blank|name"] },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void A_bad_table_is_refused_with_every_problem_named(string name, string text, string[] problems)
    {
        TableRead read = TableText.Read(text);
        Assert.False(read.Understood, name);
        Assert.Null(read.Table);
        Assert.Equal(
            problems.Select(problem => string.Join('|', problem.Split('|')[..3])),
            read.Problems.Select(problem => $"{problem.Line}|{problem.Column}|{problem.Found}"));
        foreach ((string expected, TableProblem problem) in problems.Zip(read.Problems)) Assert.Contains(expected.Split('|')[3], problem.Expected, StringComparison.Ordinal);
    }
}
