using Coolproof.Notebook;
using Coolproof.Notebook.Journal;

namespace Coolproof.Words;

/// <summary>Money and mass as a person reads them.</summary>
/// <param name="Currency">Sign of the currency; empty: figures alone.</param>
/// <param name="Mass">Grams or ounces.</param>
internal readonly record struct CostWords(string Currency, MassUnitChoice Mass)
{
    /// <summary>Like "34 €" or "34.50 €".</summary>
    public string Money(double price) => $"{DegreeWords.Number(price, Math.Abs(price - Math.Round(price)) < 0.005 ? 0 : 2)}{(Currency.Length > 0 ? " " + Currency : " in money")}";

    /// <summary>Like "52 g" or "1.83 oz".</summary>
    public string Grams(double grams) => Units.MassText(grams, Mass);

    /// <summary>Like "34 € and 52 g"; empty where neither is known.</summary>
    public string Of(NotedOption? option) => Joined(option?.Price, option?.MassG);

    /// <summary>What one option costs over another, like "12 € and 11 g more"; empty where it can't be told.</summary>
    public string Over(NotedOption? option, NotedOption? other)
    {
        double? price = option?.Price - other?.Price, mass = option?.MassG - other?.MassG;
        string[] parts = [.. new[] { Part(price, Money), Part(mass, Grams) }.OfType<string>()];
        return parts.Length switch { 0 => "", 1 => parts[0], _ when SameWay(parts) => $"{parts[0][..parts[0].LastIndexOf(' ')]} and {parts[1]}", _ => $"{parts[0]} and {parts[1]}" };
    }

    string Joined(double? price, double? mass) => string.Join(" and ", new[] { price is { } p ? Money(p) : null, mass is { } m ? Grams(m) : null }.OfType<string>());

    static string? Part(double? value, Func<double, string> say) => value is not { } known ? null : known == 0 ? null : $"{say(Math.Abs(known))} {(known > 0 ? "more" : "less")}";

    static bool SameWay(string[] parts) => parts[0][parts[0].LastIndexOf(' ')..] == parts[1][parts[1].LastIndexOf(' ')..];
}
