using System.CommandLine;
using System.Globalization;
using Coolproof.Notebook;

namespace Coolproof.Commands;

/// <summary>Options that several commands share, made so that a wrong value says what would be right.</summary>
internal static class Options
{
    /// <summary>Reads a quantity; gives null and the quantity, or what would be right.</summary>
    public delegate string? Reader(string text, out double value);

    /// <summary>An option that holds a quantity with its unit.</summary>
    public static Option<double?> Quantity(string name, string example, string description, Reader read) => new(name)
    {
        HelpName = example,
        Description = description,
        CustomParser = result =>
        {
            var text = result.Tokens[0].Value;
            if (read(text, out var value) is not { } wrong) return value;
            result.AddError($"{name} {text}: {wrong}");
            return null;
        },
    };

    /// <summary>An option that holds a whole number.</summary>
    public static Option<long?> Whole(string name, string description, long least, long most) => new(name)
    {
        HelpName = "N",
        Description = description,
        CustomParser = result =>
        {
            var text = result.Tokens[0].Value;
            if (long.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value) && value >= least && value <= most)
                return value;
            result.AddError($"{name} {text}: expected a whole number from {least} to {most}");
            return null;
        },
    };

    /// <summary>An option that holds one of a few words; where it is not given, the first value of the type.</summary>
    public static Option<T> OneOf<T>(string name, string description, params (string Word, T Value)[] words) => new(name)
    {
        HelpName = string.Join('|', words.Select(w => w.Word)),
        Description = description,
        CustomParser = result =>
        {
            var text = result.Tokens[0].Value;
            foreach (var (word, value) in words) if (string.Equals(word, text, StringComparison.OrdinalIgnoreCase)) return value;
            result.AddError($"{name} {text}: expected {string.Join(" or ", words.Select(w => w.Word))}");
            return default!;
        },
    };

    /// <summary>°C or °F for people.</summary>
    public static Option<TemperatureUnitChoice> Units() => OneOf(
        "--units", "Degrees for people. Otherwise c.", ("c", TemperatureUnitChoice.Celsius), ("f", TemperatureUnitChoice.Fahrenheit));
}
