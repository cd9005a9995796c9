using System.Text;

namespace Coolproof.Notebook.Tests;

/// <summary>Ugly tables that FORMATS.md says are understood; each must come out as the same one run.</summary>
public sealed class UnderstoodTables
{
    private const string Plain = "option,read_c,stop_to_read_s,drive_s,ambient_c\nbare can,61.5,15,360,24.5\n";

    /// <summary>Name of the case and its bytes. All say: bare can, 61.5 °C after 15 s, driven for 360 s in air of 24.5 °C.</summary>
    public static TheoryData<string, byte[]> SameTable()
    {
        TheoryData<string, byte[]> cases = [];
        void Text(string name, string text) => cases.Add(name, Encoding.UTF8.GetBytes(text));
        Text("plain", Plain);
        cases.Add("byte order mark", [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(Plain)]);
        cases.Add("UTF-16 little-endian with mark", [0xFF, 0xFE, .. Encoding.Unicode.GetBytes(Plain)]);
        cases.Add("UTF-16 big-endian with mark", [0xFE, 0xFF, .. Encoding.BigEndianUnicode.GetBytes(Plain)]);
        cases.Add("UTF-16 little-endian without mark", Encoding.Unicode.GetBytes(Plain));
        cases.Add("UTF-16 big-endian without mark", Encoding.BigEndianUnicode.GetBytes(Plain));
        cases.Add("Latin-1 degree signs", Encoding.Latin1.GetBytes("option,read_c,stop_to_read_s,drive_s,ambient_c\nbare can,61.5 °C,15,360,24.5°\n"));
        Text("CRLF", Plain.Replace("\n", "\r\n"));
        Text("CR alone", Plain.Replace('\n', '\r'));
        Text("no line end at the end", Plain.TrimEnd());
        Text("semicolons", Plain.Replace(',', ';'));
        Text("tabs", Plain.Replace(',', '\t'));
        Text("semicolons and decimal commas", Plain.Replace(',', ';').Replace('.', ','));
        Text("tabs and decimal commas", Plain.Replace(',', '\t').Replace('.', ','));
        Text("quoted decimal commas", "option,read_c,stop_to_read_s,drive_s,ambient_c\nbare can,\"61,5\",15,360,\"24,5\"\n");
        Text("separator declared", "sep=;\r\n" + Plain.Replace(',', ';'));
        Text("everything quoted", "\"option\",\"read_c\",\"stop_to_read_s\",\"drive_s\",\"ambient_c\"\n\"bare can\",\"61.5\",\"15\",\"360\",\"24.5\"\n");
        Text("blank lines at the end", Plain + "\n\n  \n,,,,\n");
        Text("blank lines before and between", "\n\noption,read_c,stop_to_read_s,drive_s,ambient_c\n\n,,,,\nbare can,61.5,15,360,24.5\n");
        Text("separators at the end of lines", "option,read_c,stop_to_read_s,drive_s,ambient_c,,\nbare can,61.5,15,360,24.5,,,,\n");
        Text("degree signs and units in cells", "option,read_c,stop_to_read_s,drive_s,ambient_c\nbare can,61.5 °C,15 s,360 sec,24.5°\n");
        Text("units in cells of columns without unit", "option,read,stop to read,drive,ambient\nbare can,61.5 °C,15 s,6 min,24.5 C\n");
        Text("Fahrenheit by the column", "option,read_f,stop_to_read_s,drive_s,ambient_f\nbare can,142.7,15,360,76.1\n");
        Text("Fahrenheit by the cell", "option,read_c,stop_to_read_s,drive_s,ambient_c\nbare can,142.7 °F,15,360,76.1F\n");
        Text("minutes by the column", "option,read_c,stop_to_read_min,drive_min,ambient_c\nbare can,61.5,0.25,6,24.5\n");
        Text("minutes and seconds as on a clock", "option,read_c,stop_to_read_s,drive_s,ambient_c\nbare can,61.5,0:15,6:00,24.5\n");
        Text("minutes and seconds in words", "option,read_c,stop_to_read_s,drive_s,ambient_c\nbare can,61.5,15 sec.,5min 60s,24.5\n");
        Text("header in other case and with blanks", "Option , Read °C,Stop to read (s),DRIVE_S,Ambient [°C]\nbare can,61.5,15,360,24.5\n");
        Text("header in one word with capitals", "Option,ReadC,StopToReadS,DriveS,AmbientC\nbare can,61.5,15,360,24.5\n");
        Text("columns in another order", "ambient_c,drive_s,read_c,option,stop_to_read_s\n24.5,360,61.5,bare can,15\n");
        Text("cooling for option", Plain.Replace("option", "cooling"));
        Text("setup for option", Plain.Replace("option", "setup"));
        Text("blanks around and within", "option,read_c,stop_to_read_s,drive_s,ambient_c\n  bare   can , 61.5 ,15 , 360, 24.5\n");
        Text("a plus sign and a no-break blank", "option,read_c,stop_to_read_s,drive_s,ambient_c\nbare can,+61.5\u00A0°C,15,360,24.5\n");
        Text("both units filled and agreeing as rounded", "option,read_c,read_f,stop_to_read_s,drive_s,ambient_c\nbare can,61.5,143,15,360,24.5\n");
        Text("either unit filled", "option,read_c,read_f,stop_to_read_s,drive_s,ambient_c\nbare can,,142.7,15,360,24.5\n");
        Text("dashes for blanks", "option,read_c,stop_to_read_s,drive_s,ambient_c,start_c,roll_in_s\nbare can,61.5,15,360,24.5,-,n/a\n");
        return cases;
    }

    [Theory]
    [MemberData(nameof(SameTable))]
    public void Ugly_tables_that_say_the_same_are_understood_the_same(string name, byte[] bytes)
    {
        ReadingsTable table = TableText.Understood(TableText.Read(bytes));
        Run run = Assert.Single(table.Runs);
        Reading reading = Assert.Single(run.Readings);
        Assert.True(run.Option == "bare can", name);
        Assert.Equal(61.5, reading.ReadC!.Value, 1e-9);
        Assert.Equal(15, reading.StopToReadS);
        Assert.Equal(360, run.DriveS);
        Assert.False(run.DriveAssumed);
        Assert.Equal(24.5, run.AirC!.Value, 1e-9);
        Assert.Equal(("day", "1"), (run.Day, run.Name));
        Assert.Equal(["bare can"], table.Options);
        Assert.Empty(table.Questions);
    }
}
