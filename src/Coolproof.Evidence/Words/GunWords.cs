using Coolproof.Evidence.Guns;
using Coolproof.Evidence.Model;
using Coolproof.Notebook;

namespace Coolproof.Evidence.Words;

/// <summary>Which guns were checked, and what their checks say.</summary>
internal static class GunWords
{
    // About where a motor's can is read, and nine tenths of a normal distribution.
    private const double AtC = 60, Sds90 = 1.645, LeastK = 0.5;

    /// <summary>What is to be known of the guns of a table; empty without any.</summary>
    /// <param name="table">The table, with the checks.</param>
    /// <param name="guns">Guns that have readings that count.</param>
    public static IEnumerable<string> Of(ReadingsTable table, IReadOnlyList<string> guns)
    {
        (string Name, GunBelief Belief)[] all = [.. guns.Select(g => (g, GunBelief.Of(g, table)))];
        if (all is [var (only, one)])
            yield return one.Contradiction ? $"The checks of {only} can't all be right, so none is used: temperatures may be off by {Unchecked()} together, differences hardly. Check it again."
                : one.Checks.Count > 0 ? $"All readings are by one gun that was checked: {Checked(one)}."
                : $"All readings are by one gun that was not checked: temperatures may be off by {Unchecked()} together, differences hardly.";
        else if (all.Length > 1 && all.All(g => g.Belief.Checks.Count == 0))
            yield return $"Readings are by {all.Length} instruments that were not checked against each other.";
        else if (all.Length > 1)
            yield return $"Readings are by {all.Length} instruments. {string.Join("; ", all.Select(g => $"{g.Name}: {(g.Belief.Contradiction ? "checks that can't all be right, none is used" : g.Belief.Checks.Count > 0 ? Checked(g.Belief) : $"not checked, may be off by {Unchecked()}")}"))}.";
    }

    private static string Unchecked() => $"{Say.Number(2 * Priors.OffsetSd)} K";

    private static string Checked(GunBelief belief)
    {
        (double k, double sd) = belief.TooMuchAt(AtC);
        string doubt = $"{Say.Number(Sds90 * sd, 1)} K";
        return Math.Abs(k) < LeastK
            ? $"right at {Say.Number(AtC)} °C, give or take {doubt}"
            : $"it shows {Say.Number(Math.Abs(k), 1)} K too {(k > 0 ? "much" : "little")} at {Say.Number(AtC)} °C, give or take {doubt}, which is allowed for";
    }
}
