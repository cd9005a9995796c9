using System.Collections.Frozen;

namespace Coolproof.Notebook.Journal.Rules;

/// <summary>All kinds of entries: the one list that reading, the schema and the page docs/formats/entries.md follow.</summary>
internal static class KindRules
{
    /// <summary>All kinds in the order of the page.</summary>
    public static readonly IReadOnlyList<KindRule> All = [.. ThingKinds.All, .. RunKinds.All, .. CorrectionKinds.All];

    private static readonly FrozenDictionary<string, KindRule> ByKind = All.ToFrozenDictionary(rule => rule.Kind);

    /// <summary>The kind's rule; null for an unknown kind.</summary>
    public static KindRule? Of(string kind) => ByKind.GetValueOrDefault(kind);

    /// <summary>Whether a setting may have this name: a letter, then letters and digits, 40 at most.</summary>
    public static bool IsSettingName(string name) =>
        name.Length is > 0 and <= 40 && char.IsAsciiLetterLower(name[0]) && name.All(char.IsAsciiLetterOrDigit);
}
