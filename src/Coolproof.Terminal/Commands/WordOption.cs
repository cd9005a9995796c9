using System.CommandLine;
using Coolproof.Notebook;

namespace Coolproof.Commands;

/// <summary>An option that holds one of a few words; the first one where it is not given.</summary>
internal sealed class WordOption
{
    readonly string[] words;

    /// <summary>An option by its name and its words.</summary>
    public WordOption(string name, string description, params string[] words)
    {
        this.words = words;
        Option = new Option<string?>(name) { HelpName = string.Join('|', words), Description = $"{description} Otherwise {words[0]}." };
        Option.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string?>() is { } text && !words.Contains(text)) result.AddError($"{name} {text}: expected {string.Join(" or ", words)}");
        });
    }

    /// <summary>The option as the command line knows it.</summary>
    public Option<string?> Option { get; }

    /// <summary>The word that was asked.</summary>
    public string In(ParseResult parsed) => parsed.GetValue(Option) ?? words[0];

    /// <summary>°C or °F.</summary>
    public static WordOption Units(string description) => new("--units", description, "c", "f");

    /// <summary>The unit asked for by an option made by <see cref="Units"/>.</summary>
    public TemperatureUnitChoice UnitIn(ParseResult parsed) => In(parsed) == "f" ? TemperatureUnitChoice.Fahrenheit : TemperatureUnitChoice.Celsius;
}
