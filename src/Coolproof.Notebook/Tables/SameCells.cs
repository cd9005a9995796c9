namespace Coolproof.Notebook.Tables;

/// <summary>Whether two cells say the same.</summary>
internal static class SameCells
{
    /// <summary>Tolerance where a value was rounded in two units, °C and s: a display shows whole degrees, a watch whole seconds.</summary>
    public const double Rounded = 0.6;

    /// <summary>Tolerance where a value is repeated as it stands, °C and s.</summary>
    public const double Repeated = 0.06;

    public static bool Same(TableCell a, TableCell b, ColumnRule rule, double tolerance) => rule.Quantity switch
    {
        Quantity.Text => string.Equals(a.Thing as string, b.Thing as string, StringComparison.OrdinalIgnoreCase),
        Quantity.DateTime => a.Thing is StartTime x && b.Thing is StartTime y && x.Local == y.Local && (x.Offset is null || y.Offset is null || x.Offset == y.Offset),
        Quantity.Temperature or Quantity.Duration => Math.Abs(a.Number - b.Number) <= tolerance,
        _ => a.Number == b.Number,
    };
}
