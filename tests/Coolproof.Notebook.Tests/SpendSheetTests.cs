namespace Coolproof.Notebook.Tests;

public class SpendSheetTests
{
    const string Good = """
        { "version": 1, "currency": "€", "money": 60, "ounces": 1, "class": { "minimumMassG": 1588, "carMassG": 1560, "fansMax": 1, "openingsAllowed": false }, "base": "bare can",
          "parts": [
            { "name": "clamp", "price": 18.5, "massG": 22, "places": ["can"], "fitMin": 10 },
            { "name": "fan", "price": 14, "massOz": 0.3, "needs": ["Clamp"], "fans": 1, "soldering": true },
            { "name": "window", "owned": true, "massG": 0, "excludes": ["fan"], "opensShell": true, "coolsK": 2, "coolsLowK": 0.5 } ],
          "driven": [ { "option": "clamp with fan", "parts": ["clamp", "fan"] } ], "predicted": [ { "mount": "hole", "parts": ["window"] } ] }
        """;

    [Fact]
    public void A_sheet_is_read()
    {
        SpendSheet sheet = SpendSheetReader.Read(Good).Asked!;
        Assert.Equal(60m, sheet.Money);
        Assert.Equal(28.349523125, sheet.Grams!.Value, 9); // international avoirdupois ounce
        Assert.Equal(28, sheet.Rules.FreeG);
        Assert.Equal(18.5m, sheet.Parts[0].Price);
        Assert.Equal(0m, sheet.Parts[2].Price);
        Assert.Equal(new Guess(2, 0.5, 3), sheet.Parts[2].CoolsK);
        Assert.Equal(["clamp", "fan"], sheet.Driven[0].Parts);
    }

    [Theory]
    [InlineData("\"price\": 14, ", "", "parts[1].price: found nothing")]
    [InlineData("\"price\": 14", "\"price\": -14", "parts[1].price: found -14; expected a number from 0 to 1000000 in your currency")]
    [InlineData("\"price\": 14", "\"price\": 14.005", "parts[1].price: found 14.005; expected at most two digits")]
    [InlineData("\"massOz\": 0.3, ", "", "parts[1].massG: found nothing")]
    [InlineData("\"needs\": [\"Clamp\"]", "\"needs\": [\"clmap\"]", "parts[1].needs: found \"clmap\"; expected names of parts in this file")]
    [InlineData("\"needs\": [\"Clamp\"]", "\"needs\": [\"fan\"]", "parts[1].needs: found the part itself")]
    [InlineData("\"needs\": [\"Clamp\"]", "\"needs\": [\"clamp\"], \"excludes\": [\"clamp\"]", "parts[1].excludes: found \"clamp\", which it needs")]
    [InlineData("\"name\": \"window\"", "\"name\": \"Fan\"", "parts[2].name: found \"Fan\" again")]
    [InlineData("\"carMassG\": 1560, ", "", "class.carMassG: found nothing")]
    [InlineData("\"coolsLowK\": 0.5", "\"coolsLowK\": 5", "parts[2].coolsLowK: found 5; expected at most coolsK, 2")]
    [InlineData("\"coolsK\": 2, ", "", "parts[2].coolsK: found nothing; expected the middle")]
    [InlineData("\"parts\": [\"clamp\", \"fan\"]", "\"parts\": []", "driven[0].parts: found a list; expected the names of its parts")]
    [InlineData("\"parts\": [\"clamp\", \"fan\"]", "\"parts\": [\"fan\", \"fan\"]", "driven[0].parts: found a part twice")]
    [InlineData("[\"window\"]", "[\"fan\", \"clamp\"]", "predicted[0].parts: found the same parts again")]
    [InlineData("\"ounces\": 1", "\"ounces\": 1, \"grams\": 3", "ounces: found 1; expected only one of grams and ounces")]
    public void What_can_not_be_right_is_named_with_field_what_was_found_and_what_would_be_right(string written, string instead, string said)
    {
        Assert.Contains(written, Good);
        AskedRead<SpendSheet> read = SpendSheetReader.Read(Good.Replace(written, instead));
        Assert.Null(read.Asked);
        Assert.Contains(read.Problems, p => p.ToString().Contains(said));
    }

    [Fact]
    public void A_sheet_with_a_piece_cut_out_or_doubled_never_crashes()
    {
        Random chance = new(8);
        for (int i = 0; i < 5000; i++)
        {
            int from = chance.Next(Good.Length), length = chance.Next(1, 30);
            string text = i % 2 == 0 ? Good.Remove(from, Math.Min(length, Good.Length - from)) : Good.Insert(from, Good.Substring(from, Math.Min(length, Good.Length - from)));
            AskedRead<SpendSheet> read = SpendSheetReader.Read(text);
            Assert.True(read.Asked is null != (read.Problems.Count == 0));
        }
    }
}
