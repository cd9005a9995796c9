namespace Coolproof.Notebook.Tests;

public class MountSheetTests
{
    const string Good = """
        { "version": 1, "airF": 82.4, "carSpeedKmh": 21.6, "can": { "diameterMm": 36, "lengthMm": 52 },
          "mounts": [
            { "name": "bare can" },
            { "name": "clamp with a 25 mm fan", "gapMm": 8, "shellFromCanMm": 24, "grilleOpenPercent": 70, "finsCm2": 60, "clampCoversPercent": 40,
              "fans": [ { "sizeMm": 25, "freeFlowCfm": 2.5, "stallMmH2O": 3, "ratedV": 5, "suppliedV": 6 } ] },
            { "name": "nose-scoop duct", "gapMm": 20, "duct": { "mouthCm2": 6, "outletCm2": 3, "lengthMm": 150, "bends": 1 } } ] }
        """;

    [Fact]
    public void A_sheet_is_read_into_metres_and_seconds()
    {
        MountSheet sheet = MountSheetReader.Read(Good).Asked!;
        Assert.Equal(28, sheet.AirC, 9);
        Assert.Equal(6, sheet.CarSpeedMS, 9);
        Assert.Equal(0.036, sheet.Can.DiameterM, 9);
        Mount clamp = sheet.Mounts[1];
        // 1 cubic foot = 0.3048³ m³, 1 mm of water = 9.80665 Pa (definitions).
        Assert.Equal(2.5 * 0.3048 * 0.3048 * 0.3048 / 60, clamp.Fans[0].FreeM3S, 12);
        Assert.Equal(29.41995, clamp.Fans[0].StallPa!.Value, 9);
        Assert.Equal(1.2, clamp.Fans[0].SpeedRatio, 12);
        Assert.Equal(0.006, clamp.ShellGapM!.Value, 9);
        Assert.Equal(6e-4, sheet.Mounts[2].Duct!.MouthM2, 12);
    }

    [Theory]
    [InlineData("\"freeFlowCfm\": 2.5, ", "", "mounts[1].fans[0].freeFlowM3H: found nothing; expected the free flow")]
    [InlineData("\"diameterMm\": 36, ", "", "can.diameterMm: found nothing; expected a number from 15 to 80 mm")]
    [InlineData("\"can\": { \"diameterMm\": 36, \"lengthMm\": 52 },", "", "can: found nothing")]
    [InlineData("\"shellFromCanMm\": 24", "\"shellFromCanMm\": 16", "mounts[1].shellFromCanMm: found 16; expected more than 18 mm")]
    [InlineData("\"gapMm\": 8", "\"gapMm\": -8", "mounts[1].gapMm: found -8; expected a number from 0.3 to 200 mm")]
    [InlineData("\"sizeMm\": 25", "\"sizeMm\": \"25\"", "mounts[1].fans[0].sizeMm: found \"25\"; expected a number from 10 to 92 mm, without quotes")]
    [InlineData("\"freeFlowCfm\": 2.5", "\"freeFlowM3H\": 90", "mounts[1].fans[0].freeFlowM3H: found 90; expected a flow that leaves blades of this size at less than 40 m/s")]
    [InlineData("\"ratedV\": 5, ", "", "mounts[1].fans[0].ratedV: found nothing")]
    [InlineData("\"suppliedV\": 6", "\"suppliedV\": 12", "expected at most twice the rated 5 V")]
    [InlineData("\"gapMm\": 20", "\"gapMM\": 20", "mounts[2].gapMM: found a field of that name; expected one of ")]
    [InlineData("\"carSpeedKmh\": 21.6", "\"carSpeedKmh\": 0", "mounts[0].fans: found nothing that moves air")]
    [InlineData("\"carSpeedKmh\": 21.6", "\"carSpeedKmh\": 0", "mounts[2].duct: found a duct without flow")]
    [InlineData("\"bare can\"", "\"Nose-scoop duct\"", "mounts[2].name: found \"nose-scoop duct\" again")]
    [InlineData("\"version\": 1", "\"version\": 2", "version: found 2; expected a number from 1 to 1")]
    [InlineData("\"airF\": 82.4", "\"airF\": 82.4, \"airC\": 28", "airF: found 82.4; expected only one of airC and airF")]
    [InlineData("\"airF\": 82.4", "\"airC\": 28, \"airC\": 29", "airC: found the field twice")]
    [InlineData("\"name\": \"bare can\"", "\"name\": \"bare can\", \"shellHoleCm2\": 3", "mounts[0].shellFromCanMm: found nothing; expected the distance from can to shell")]
    [InlineData("\"bends\": 1 }", "\"bends\": 1", "line 6: found text that is no JSON")]
    [InlineData("\"sizeMm\": 25", "\"sizeMm\": 1e999", "mounts[1].fans[0].sizeMm")]
    public void What_can_not_be_right_is_named_with_field_what_was_found_and_what_would_be_right(string written, string instead, string said)
    {
        Assert.Contains(written, Good);
        AskedRead<MountSheet> read = MountSheetReader.Read(Good.Replace(written, instead));
        Assert.Null(read.Asked);
        Assert.Contains(read.Problems, p => p.ToString().Contains(said));
    }

    [Fact]
    public void All_problems_are_listed_at_once()
    {
        AskedRead<MountSheet> read = MountSheetReader.Read(Good.Replace("\"gapMm\": 8", "\"gapMm\": -8").Replace("36", "-36").Replace("\"bends\": 1", "\"bends\": \"one\""));
        Assert.Equal(["can.diameterMm", "mounts[1].gapMm", "mounts[2].duct.bends"], read.Problems.Select(p => p.Field).Order());
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("{}")]
    [InlineData("null")]
    [InlineData("{\"version\":1,\"can\":3,\"mounts\":[3]}")]
    [InlineData("{\"version\":1,\"can\":{},\"mounts\":[]}")]
    public void What_is_no_sheet_is_refused_with_a_reason(string text)
    {
        AskedRead<MountSheet> read = MountSheetReader.Read(text);
        Assert.Null(read.Asked);
        Assert.NotEmpty(read.Problems);
    }

    [Fact]
    public void A_sheet_with_a_piece_cut_out_or_doubled_never_crashes()
    {
        Random chance = new(7);
        for (int i = 0; i < 5000; i++)
        {
            int from = chance.Next(Good.Length), length = chance.Next(1, 30);
            string text = i % 2 == 0 ? Good.Remove(from, Math.Min(length, Good.Length - from)) : Good.Insert(from, Good.Substring(from, Math.Min(length, Good.Length - from)));
            AskedRead<MountSheet> read = MountSheetReader.Read(text);
            Assert.True(read.Asked is null != (read.Problems.Count == 0));
        }
    }
}
