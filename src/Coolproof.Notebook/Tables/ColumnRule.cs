namespace Coolproof.Notebook.Tables;

/// <summary>One known column: its names, how its cells are read, and what they may say.</summary>
/// <param name="Field">What it says.</param>
/// <param name="Stem">Its name without the unit; the whole name where the unit is fixed.</param>
/// <param name="Quantity">How its cells are read.</param>
/// <param name="BelongsTo">Run or reading.</param>
internal sealed record ColumnRule(Field Field, string Stem, Quantity Quantity, BelongsTo BelongsTo)
{
    /// <summary>Smallest value, in °C, s, or the unit of the name.</summary>
    public double Min { get; init; } = double.NegativeInfinity;

    /// <summary>Largest value, in °C, s, or the unit of the name.</summary>
    public double Max { get; init; } = double.PositiveInfinity;

    /// <summary>The range and its reason, in plain words.</summary>
    public string Rule { get; init; } = "";

    /// <summary>Allowed words, in the order of the enumeration's values.</summary>
    public string[] Allowed { get; init; } = [];

    /// <summary>Further spellings, each with the allowed word it stands for.</summary>
    public (string Spelling, string Word)[] Spellings { get; init; } = [];

    /// <summary>Other names of the column.</summary>
    public string[] Synonyms { get; init; } = [];

    /// <summary>Units that a cell may carry where the unit is fixed by the column's name.</summary>
    public string[] CellUnits { get; init; } = [];

    /// <summary>Names as they are written, the first one by default.</summary>
    public string[] Names => Quantity switch
    {
        Quantity.Temperature => [Stem + "_c", Stem + "_f"],
        Quantity.Duration => [Stem + "_s", Stem + "_min"],
        _ => [Stem],
    };
}
