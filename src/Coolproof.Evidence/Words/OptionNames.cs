namespace Coolproof.Evidence.Words;

/// <summary>Names of options within sentences.</summary>
public static class OptionNames
{
    /// <summary>An option within a sentence: "the clamp", but "Clamp 3" and "option A" as they stand.</summary>
    public static string WithArticle(string name) => Say.Option(name);
}
