namespace Coolproof.Notebook.Tests;

/// <summary>What is odd but happens is asked, and the table is kept.</summary>
public sealed class Questions
{
    /// <summary>Name, text, questions as "line|column|part of what was found".</summary>
    public static TheoryData<string, string, string[]> Cases() => new()
    {
        { "a reading below the air", "option,read_c,drive_s,ambient_c\na,19.5,360,24\n", ["2|read_c|19.5 °C, below the air of 24 °C"] },
        { "a can that starts below the air", "option,read_c,drive_s,ambient_c,start_c\na,60,360,24,20\n", ["2|start_c|20 °C, below the air"] },
        { "a very late reading", "option,read_c,drive_s,stop_to_read_s\na,60,360,601\n", ["2|stop_to_read_s|601 s"] },
        { "a very long roll-in", "option,read_c,drive_s,roll_in_s\na,60,360,61\n", ["2|roll_in_s|61 s"] },
        { "minutes typed as seconds", "option,read_c,drive_s\na,60,6\n", ["2|drive_s|6 s"] },
        { "cut short without its own time", "option,read_c,drive_s,cut_short\na,60,360,\na,50,,crash\n", ["3|cut_short|cut short, without its own drive time"] },
        { "a jump within a run", "option,run,read_c,drive_s\na,1,60,360\n,,95,\n", ["3|read_c|95 °C, beside 60 °C in line 2"] },
        { "no jump between two spots", "option,run,read_c,drive_s,spot\na,1,60,360,can\n,,95,,winding\n", [] },
        { "Fahrenheit in a column of Celsius", "option,read_c,drive_s\na,60,360\nb,65,360\na,150,360\nb,58,360\n", ["4|read_c|150"] },
        { "a hot one that is no Fahrenheit", "option,read_c,drive_s\na,60,360\nb,65,360\na,95,360\nb,58,360\n", [] },
        { "Celsius in a column of Fahrenheit", "option,read_f,drive_s\na,140,360\nb,145,360\na,63,360\nb,138,360\n", ["4|read_f|63"] },
        { "Fahrenheit named in the cell", "option,read_c,drive_s\na,60,360\nb,65,360\na,150 °F,360\nb,58,360\n", [] },
        { "a row typed twice", "option,read_c,drive_s\na,60.5,360\na,60.5,360\n", ["3||the same row as line 2"] },
        { "a reading typed twice", "option,run,read_c,drive_s,stop_to_read_s\na,1,60.5,360,12\n,,60.5,,12\n", ["3||the same reading at the same second"] },
        { "the same display twice at two times", "option,run,read_c,drive_s,stop_to_read_s\na,1,60.5,360,12\n,,60.5,,15\n", [] },
        { "a slip in a column's name", "option,read_c,drive_s,stop_to_reed_s\na,60,360,12\n", ["1|stop_to_reed_s|a column that is not known"] },
        { "a known column in an unknown unit", "option,read_c,drive_s,ambient_k\na,60,360,297\n", ["1|ambient_k|a column that is not known"] },
        { "an unknown column that is near to none", "option,read_c,drive_s,ride height\na,60,360,12\n", [] },
        { "a slip in an option's name", "option,read_c,drive_s\nfinned clamp,60,360\nfined clamp,59,360\n", ["3|option|fined clamp"] },
        { "two options with numbers", "option,read_c,drive_s\nclamp 25,60,360\nclamp 30,59,360\n", [] },
        { "air that jumps", "option,read_c,drive_s,ambient_c\na,60,360,20\nb,70,360,31\n", ["3|ambient_c|31 °C, after 20 °C in line 2"] },
        { "not remounted although the option changed", "option,read_c,drive_s,remounted\na,60,360,\nb,70,360,no\n", ["3|remounted|no, while b follows a"] },
        { "a fan after the stop and none before", "option,read_c,drive_s,fan,fan_after_stop\na,60,360,none,on\n", ["2|fan_after_stop|a fan after the stop"] },
        { "excluded without a reason", "option,read_c,drive_s,exclude\na,60,360,yes\n", ["2|exclude|yes"] },
        { "a cold winding alone", "option,read_c,drive_s,winding_cold_mohm,winding_cold_c\na,60,360,22,25\n", ["2|winding_cold_mohm|a cold winding resistance alone"] },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void What_is_odd_is_asked_and_kept(string name, string text, string[] questions)
    {
        ReadingsTable table = TableText.Understood(text);
        Assert.True(questions.Length == table.Questions.Count, name + ": " + string.Join("\n", table.Questions));
        foreach ((string expected, TableProblem question) in questions.Zip(table.Questions))
        {
            string[] parts = expected.Split('|');
            Assert.Equal((parts[0], parts[1]), (question.Line.ToString(System.Globalization.CultureInfo.InvariantCulture), question.Column));
            Assert.StartsWith(parts[2], question.Found, StringComparison.Ordinal);
            Assert.NotEmpty(question.Expected);
        }
    }

    [Fact]
    public void Letters_of_an_old_encoding_are_read_and_asked_about()
    {
        ReadingsTable table = TableText.Understood(TableText.Read(System.Text.Encoding.Latin1.GetBytes("option,read_c,drive_s\ntôle,61,360\n")));
        Assert.Equal(["tôle"], table.Options);
        Assert.Contains("Windows-1252", Assert.Single(table.Questions).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void More_questions_than_are_listed_are_counted()
    {
        string rows = string.Concat(Enumerable.Range(0, 450).Select(i => $"a,{i},10,360,24\n"));
        ReadingsTable table = TableText.Understood("option,run,read_c,drive_s,ambient_c\n" + rows);
        Assert.Equal(ReadingsTableLimits.ListedProblems + 1, table.Questions.Count);
        Assert.StartsWith("250 more", table.Questions[^1].Found, StringComparison.Ordinal);
        Assert.Equal(Enumerable.Range(2, 200), table.Questions.Take(200).Select(question => question.Line));
    }
}
