namespace Coolproof.Notebook;

/// <summary>What a gun was checked against.</summary>
public enum CheckedAgainst
{
    /// <summary>Stirred ice and water.</summary>
    Ice,
    /// <summary>Boiling water at the day's pressure.</summary>
    Boiling,
    /// <summary>A probe in stirred warm water.</summary>
    ProbeInWater,
    /// <summary>A probe beside the tape on the warm can.</summary>
    BesideTape,
}

/// <summary>A check of a gun against something of known temperature.</summary>
/// <param name="Gun">Name of the gun, as in the readings table.</param>
/// <param name="Against">Against what.</param>
/// <param name="ReadC">What the gun showed, °C.</param>
/// <param name="TrueC">What was true, °C.</param>
/// <param name="EmissivitySet">Its emissivity setting then; null when not noted.</param>
public sealed record GunCheck(string Gun, CheckedAgainst Against, double ReadC, double TrueC, double? EmissivitySet = null)
{
    /// <summary>Checks of several tables in one list: a gun's are those of the first table that has any of it.</summary>
    public static IReadOnlyList<GunCheck> Of(IEnumerable<ReadingsTable> tables)
    {
        List<GunCheck> all = [];
        foreach (ReadingsTable table in tables)
        {
            HashSet<string> there = [.. all.Select(c => c.Gun.ToUpperInvariant())];
            all.AddRange(table.GunChecks.Where(c => !there.Contains(c.Gun.ToUpperInvariant())));
        }
        return all;
    }

    static readonly (string Word, CheckedAgainst Against)[] words =
        [("ice", CheckedAgainst.Ice), ("boiling", CheckedAgainst.Boiling), ("probe-in-water", CheckedAgainst.ProbeInWater), ("beside-tape", CheckedAgainst.BesideTape)];

    /// <summary>Words for what a gun may be checked against, as files and entries write them.</summary>
    public static IReadOnlyList<string> Ways { get; } = [.. words.Select(w => w.Word)];

    /// <summary>What a word means; null for another word.</summary>
    public static CheckedAgainst? AgainstOf(string? word) => words.Where(w => w.Word == word).Select(w => (CheckedAgainst?)w.Against).FirstOrDefault();

    /// <summary>The word for <see cref="Against"/>.</summary>
    public string Way => words.First(w => w.Against == Against).Word;
}
