using System.CommandLine;

namespace Coolproof.Commands;

/// <summary>An option that holds one figure, or a range of two like "18..30"; a wrong one says what would be right.</summary>
internal sealed class RangeOption
{
    readonly Func<string, (string? Wrong, (double Least, double Most) Range)> read;

    /// <summary>An option by its name, with an example of its value and what is allowed in it.</summary>
    public RangeOption(string name, string example, string unit, double least, double most, string description)
    {
        read = text => (Typed.Range(text, unit, least, most, out var range), range);
        Option = new Option<string?>(name) { HelpName = example, Description = description };
        Option.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string?>() is { } text && read(text).Wrong is { } wrong) result.AddError($"{name} {text}: {wrong}");
        });
    }

    /// <summary>The option as the command line knows it.</summary>
    public Option<string?> Option { get; }

    /// <summary>What was asked, both ends in it; null where it was not.</summary>
    public (double Least, double Most)? In(ParseResult parsed) => parsed.GetValue(Option) is { } text && read(text) is (null, var range) ? range : null;
}
