namespace Coolproof.Thermal.Tests;

public class SurfaceEmissivityTests
{
    // Source: emissivity.csv, the rows of each kind; a range must span them, and reach no further unless the docstring says why.
    [Theory]
    [InlineData("paint", true, "paint, flat|lacquer:black|paint, oil")]
    [InlineData("lacquer", true, "lacquer:3 colours|lacquer:white")]
    [InlineData("anodised-matt", true, "aluminium:anodised black, dull:70:8-14|aluminium:anodised light grey")]
    [InlineData("anodised", true, "aluminium:anodised sheet|aluminium:anodised light grey")]
    [InlineData("tape", false, "electrical tape")]
    [InlineData("water", false, "water")]
    [InlineData("steel-oxidised", true, "iron:oxidised|iron:rusted|steel / iron:oxidised|steel / iron:rusted red")]
    [InlineData("aluminium-cast", false, "aluminium:cast")]
    [InlineData("aluminium-oxidised", true, "aluminium:oxidised|aluminium:strongly|aluminium alloy 3003")]
    [InlineData("aluminium-rough", true, "aluminium:rough surface|aluminium:roughened")]
    [InlineData("steel-polished", true, "steel / iron:polished|iron:unoxidised|steel / iron:cold rolled")]
    [InlineData("aluminium-polished", true, "aluminium:polished|aluminium:unoxidised|aluminium:foil|aluminium:as received|aluminium:sheet")]
    [InlineData("copper-oxidised", true, "copper:oxidised|copper:heavily")]
    [InlineData("copper-polished", true, "copper:polished|copper:roughened|brass:polished")]
    public void A_range_spans_the_rows_of_its_kind(string key, bool exactly, string kinds)
    {
        List<string[]> all = Table.Rows("emissivity.csv");
        string[][] rows = [.. kinds.Split('|').SelectMany(kind =>
        {
            string[] parts = kind.Split(':');
            string[][] found = [.. all.Where(r => (parts.Length > 1 ? r[0] == parts[0] : r[0].StartsWith(parts[0], StringComparison.Ordinal))
                && (parts.Length < 2 || r[1].StartsWith(parts[1], StringComparison.Ordinal)) && (parts.Length < 4 || r[3].StartsWith(parts[3], StringComparison.Ordinal)))];
            Assert.NotEmpty(found);
            return found;
        })];
        (double low, double high) = (rows.Min(r => Table.Number(r[4])), rows.Max(r => Table.Number(r[5])));
        SurfaceEmissivity surface = SurfaceEmissivity.Find(key)!;
        if (exactly) Assert.Equal((low, high), (surface.Low, surface.High));
        else Assert.True(surface.Low <= low && surface.High >= high && surface.High - surface.Low <= 0.21, $"{key}: {low} to {high}");
    }

    [Fact]
    public void Bare_metal_is_for_tape_and_what_is_matt_is_for_the_gun()
    {
        Assert.Equal(14, SurfaceEmissivity.All.Select(s => s.Key).Distinct().Count());
        Assert.All(["tape", "paint", "lacquer", "anodised-matt", "water"], key => Assert.Equal(GunTrust.Shoot, SurfaceEmissivity.Find(key)!.Trust));
        Assert.All(["steel-polished", "aluminium-polished", "copper-polished", "aluminium-rough", "aluminium-oxidised"], key => Assert.Equal(GunTrust.Tape, SurfaceEmissivity.Find(key)!.Trust));
        Assert.Null(SurfaceEmissivity.Find("velvet"));
        // JCGM 100, 4.3.7: a rectangular distribution of half-width a has the standard uncertainty a/√3.
        Assert.Equal(0.015 / Math.Sqrt(3), SurfaceEmissivity.Find("tape")!.StandardUncertainty, 12);
    }

    // The issue's own words: a gun on shiny metal can be 40 K wrong.
    [Fact]
    public void A_polished_can_at_eighty_degrees_reads_forty_kelvin_too_little() =>
        Assert.InRange(80 - Gun.Usual.ReadingC(80, 0.95, SurfaceEmissivity.Find("aluminium-polished")!.Middle, 25), 40, 55);
}
