namespace Coolproof.Notebook;

/// <summary>Gun checks read from a file.</summary>
/// <param name="Checks">Those with both temperatures, in the file's order.</param>
public sealed record GunChecks(IReadOnlyList<GunCheck> Checks);

/// <summary>Reads gun checks from JSON, version 1 (docs/formats/gun-checks.schema.json); "about.json" beside a report's data may be given as it is.</summary>
public static class GunChecksReader
{
    private const int Most = 1000;

    // What else stands in "about.json" (docs/formats/report-about.schema.json).
    private static readonly string[] about = ["coolproof", "made", "madeUp", "question", "sentence", "compare", "seed", "reference", "sameWithinK", "days", "lastDay", "options", "earlier"];

    /// <summary>Reads a file.</summary>
    /// <param name="text">The file's text.</param>
    public static AskedRead<GunChecks> Read(string text) => AskedFields.Read(text, f =>
    {
        f.Needed("version", 1, 1, "", "Write \"version\": 1.");
        if (f.Has("coolproof"))
            foreach (string other in about) f.Has(other);
        if (!f.Has("gunChecks")) f.Wrong("gunChecks", "a list of checks in brackets", "coolproof gun check --keep FILE.json writes one.", "nothing");
        return new GunChecks([.. f.Items("gunChecks", Most, c => new Noted(Check(c))).Select(n => n.Check).OfType<GunCheck>()]);
    });

    private static GunCheck? Check(AskedFields c)
    {
        string gun = c.Name("gun", "The name of the gun as in the readings table.");
        string way = c.Word("way", "probe-in-water", "ice", "boiling", "beside-tape");
        double? read = c.Number("readC", -40, 350, "°C"), known = c.Number("trueC", -40, 350, "°C"), set = c.Number("emissivitySet", 0.05, 1, "");
        return read is { } shown && known is { } right && gun.Length > 0 ? new(gun, GunCheck.AgainstOf(way) ?? CheckedAgainst.ProbeInWater, shown, right, set) : null;
    }

    private sealed record Noted(GunCheck? Check);
}
