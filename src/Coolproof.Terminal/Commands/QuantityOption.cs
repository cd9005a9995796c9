using System.CommandLine;

namespace Coolproof.Commands;

/// <summary>An option that holds a quantity with its unit; a wrong one says what would be right.</summary>
/// <remarks>
/// It is a text option underneath: one of a value type would be compiled anew at each start (docs/decisions/starting-quickly.md).
/// </remarks>
internal sealed class QuantityOption
{
    readonly Reader read;

    /// <summary>An option by its name, with an example of its value.</summary>
    public QuantityOption(string name, string example, string description, Reader read)
    {
        this.read = read;
        Option = new Option<string?>(name) { HelpName = example, Description = description };
        Option.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string?>() is { } text && read(text, out _) is { } wrong) result.AddError($"{name} {text}: {wrong}");
        });
    }

    /// <summary>Reads a quantity; gives null and the quantity, or what would be right.</summary>
    public delegate string? Reader(string text, out double value);

    /// <summary>The option as the command line knows it.</summary>
    public Option<string?> Option { get; }

    /// <summary>What was asked; null where it was not.</summary>
    public double? In(ParseResult parsed) => parsed.GetValue(Option) is { } text && read(text, out var value) is null ? value : null;

    /// <summary>An option that holds a whole number.</summary>
    public static QuantityOption Whole(string name, string description, int least, int most) =>
        new(name, "N", description, (string text, out double value) => Typed.Whole(text, least, most, out value));
}
