using Coolproof.Evidence;
using Coolproof.Notebook;
using Coolproof.Notebook.Journal;
using Coolproof.Pictures;
using Coolproof.Words;

namespace Coolproof.Reports;

/// <summary>What a report is of, before it is judged.</summary>
/// <param name="Csv">The readings table as it is handed on: what is judged is what a reader can judge again.</param>
/// <param name="Table">The same, understood.</param>
/// <param name="Settings">How it is judged.</param>
public sealed record ReportSubject(byte[] Csv, ReadingsTable Table, JudgeSettings Settings)
{
    /// <summary>Earlier days that are judged together with it, as handed on and understood, in the order of time; none: it is judged by itself.</summary>
    public IReadOnlyList<(byte[] Csv, ReadingsTable Table)> Earlier { get; init; } = [];

    /// <summary>Whether the answer together with the earlier days is the report's; else the day's own is, and the other stands beside it.</summary>
    public bool EarlierFirst { get; init; }

    /// <summary>Degrees for people.</summary>
    public TemperatureUnitChoice Units { get; init; }

    /// <summary>The question in words; empty: which option is the coolest.</summary>
    public string Asked { get; init; } = "";

    /// <summary>The noted question, which says how it is answered; null for a table of its own.</summary>
    public NotedQuestion? Question { get; init; }

    /// <summary>What is noted of the options; empty for a table of its own.</summary>
    public IReadOnlyList<NotedOption> Options { get; init; } = [];

    /// <summary>Money and mass in words.</summary>
    internal CostWords Costs { get; init; } = new("", MassUnitChoice.Gram);

    /// <summary>Colours and marks by name; null: by place in the table.</summary>
    public IReadOnlyDictionary<string, OptionLook>? Looks { get; init; }

    /// <summary>Photos by the name of their option, each as a JPEG.</summary>
    public IReadOnlyDictionary<string, byte[]> Photos { get; init; } = new Dictionary<string, byte[]>();

    /// <summary>Checks of the guns of its table and of the earlier ones.</summary>
    public IReadOnlyList<GunCheck> GunChecks => GunCheck.Of([Table, .. Earlier.Select(one => one.Table)]);

    /// <summary>What of the notebook is not in the table, and why: said on the page, since the table can't.</summary>
    public IReadOnlyList<string> LeftOut { get; init; } = [];

    /// <summary>Whether the readings are made up: then the report says so wherever it speaks of them.</summary>
    public bool MadeUp { get; init; }

    /// <summary>What is noted of an option; null where nothing is.</summary>
    public NotedOption? Noted(string name) => Options.FirstOrDefault(option => string.Equals(option.Name, name, StringComparison.OrdinalIgnoreCase));

    /// <summary>The words after `coolproof` that judge the handed-on table as the report does.</summary>
    /// <param name="file">The table.</param>
    /// <param name="earlier">Tables of earlier days.</param>
    public IReadOnlyList<string> CompareWords(string file, params IEnumerable<string> earlier)
    {
        List<string> words = ["compare", file, "--json", "--random-seed", $"{Settings.Seed}", "--same-within", $"{Exact(Settings.SameWithinK)}K"];
        if (Settings.AmbientC is { } air) words.AddRange(["--at-ambient", $"{Exact(air)}C"]);
        if (Settings.DriveS is { } drive) words.AddRange(["--drive", $"{Exact(drive)}s"]);
        if (GunChecks.Count > 0) words.AddRange(["--gun-checks", ReportData.About]);
        return [.. words, .. earlier.SelectMany(one => new[] { "--earlier", one })];
    }

    static string Exact(double value) => value.ToString("0.#################", System.Globalization.CultureInfo.InvariantCulture);
}
