namespace Coolproof.Notebook.Journal.Rules;

/// <summary>What a field of a body holds.</summary>
internal enum FieldType { Text, Number, Whole, YesNo, Id, Ids, Word, LocalDate, LocalDateTime }

/// <summary>One field of a body.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Type">What it holds.</param>
/// <param name="Means">What it means, with its unit.</param>
internal sealed record FieldRule(string Name, FieldType Type, string Means)
{
    /// <summary>Longest text of any field: what a cell of a readings table may hold.</summary>
    public const int LongestText = 10_000;

    /// <summary>Longest list.</summary>
    public const int LongestList = 500;

    /// <summary>Smallest number.</summary>
    public double Min { get; init; } = double.NegativeInfinity;

    /// <summary>Largest number.</summary>
    public double Max { get; init; } = double.PositiveInfinity;

    /// <summary>Allowed words.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>Whether the body must have it.</summary>
    public bool Required { get; init; }

    /// <summary>Whether it may be null: in a `*.set`, null clears the field.</summary>
    public bool Clears { get; init; }
}

/// <summary>One kind of entry.</summary>
/// <param name="Kind">Its name.</param>
/// <param name="About">What its `about` is the UUID of.</param>
/// <param name="Says">What it says.</param>
/// <param name="Fields">Fields of its body.</param>
internal sealed record KindRule(string Kind, string About, string Says, IReadOnlyList<FieldRule> Fields)
{
    /// <summary>Whether fields of any name may stand in the body (settings).</summary>
    public bool Open { get; init; }

    /// <summary>Whether it sets fields one by one.</summary>
    public bool IsSet => Kind.EndsWith(".set", StringComparison.Ordinal);

    /// <summary>The field; null when the kind has none of that name.</summary>
    public FieldRule? Field(string name) => Fields.FirstOrDefault(field => field.Name == name);
}
