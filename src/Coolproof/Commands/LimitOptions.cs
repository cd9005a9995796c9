using System.CommandLine;
using Coolproof.Evidence.Forecasts;
using Coolproof.Thermal;

namespace Coolproof.Commands;

/// <summary>What a race must stay under, as it is typed: limits of can, winding and magnet, and the odds of passing one that are accepted.</summary>
internal sealed class LimitOptions
{
    const double CanLimitC = 75;

    /// <summary>The can's limit.</summary>
    public QuantityOption Can { get; } = new("--can-limit", "75C|167F", "The can's limit: the maker's figure goes first; commonly 70 to 80 °C (common practice, no source). Otherwise 75C.", Typed.Body);

    /// <summary>The winding's thermal class.</summary>
    public Option<string?> Insulation { get; } = Lettered(
        "--insulation", "B|F|H", "Thermal class of the winding (IEC 60085). Otherwise unknown, and E (120 °C) is taken with caution.", letter => ThermalClass.Find(letter) is not null, ThermalClass.All.Select(c => c.Letter));

    /// <summary>The magnet's grade.</summary>
    public Option<string?> Magnet { get; } = Lettered(
        "--magnet", "M|H|SH|UH", "Grade of the magnet by its letters. Otherwise unknown, and M (100 °C) is taken with caution.", suffix => MagnetGrade.Find(suffix) is not null, MagnetGrade.All.Select(g => g.Suffix));

    /// <summary>Accepted odds.</summary>
    public QuantityOption Odds { get; } = QuantityOption.Whole("--odds", "Odds of passing a limit that are accepted, in percent. Otherwise 10.", 1, 90);

    /// <summary>What was asked.</summary>
    public RaceDemand In(ParseResult parsed) => RaceDemand.Of(Can.In(parsed) ?? CanLimitC, parsed.GetValue(Insulation), parsed.GetValue(Magnet), (Odds.In(parsed) ?? 10) / 100);

    static Option<string?> Lettered(string name, string example, string description, Func<string, bool> known, IEnumerable<string> letters)
    {
        var option = new Option<string?>(name) { HelpName = example, Description = description };
        option.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string?>() is { } typed && !known(typed)) result.AddError($"{name} {typed}: expected one of {string.Join(", ", letters.Where(letter => letter.Length > 0))}");
        });
        return option;
    }
}
