using System.Text;
using Coolproof.Commands;
using Coolproof.Evidence;
using Coolproof.Notebook;
using Coolproof.Pages.Gears;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Primitives;

namespace Coolproof.Tests.Pages;

/// <summary>What the form of gearing shows pale is what is reckoned with.</summary>
public class GearAskedTests
{
    [Theory]
    [InlineData("a 10.5 turns motor", 10.5)]
    [InlineData("the old one", GearSetting.TypicalTurns)]
    public void Turns_are_those_that_the_motors_name_in_the_table_tells_else_typical(string motor, double turns)
    {
        var asked = Asked(motor);
        Assert.Equal(turns, asked.Setting!.Turns);
        var entry = asked.Entries.Single(one => one.Field.Name == "turns");
        Assert.Null(entry.Value);
        Assert.Equal(turns, entry.Assumed);
        Assert.Equal(Thermal.BrushlessMotor.OfTurns(turns), asked.Setting.Rig.Motor);
    }

    [Theory]
    [InlineData("24", 18, 30)]
    [InlineData("10", 8, 16)]
    public void Pinions_about_the_tests_are_looked_at_where_one_end_is_left_blank(string pinion, int least, int most)
    {
        var asked = Asked("the old one", ("pinion", pinion), ("to", $"{most}"));
        Assert.Equal((least, most), (asked.Setting!.Card.LeastPinion, asked.Setting.Card.MostPinion));
        Assert.Equal(0.529, asked.Entries.Single(one => one.Field.Name == "module").Assumed);
    }

    static GearAsked Asked(string motor, params (string Name, string Value)[] typed)
    {
        var table = ReadingsTableReader.Read(new MemoryStream(Encoding.UTF8.GetBytes($"option,run,drive_min,ambient_c,read_c,motor,pinion,spur,laps\nbare can,1,6,27,79.8,{motor},24,84,14\n")), null).Table!;
        QueryCollection query = new(typed.ToDictionary(one => one.Name, one => new StringValues(one.Value)));
        return new(query, new(null, null, null, null, null), table, new FairConditions(27, 360), TemperatureUnitChoice.Celsius);
    }
}
