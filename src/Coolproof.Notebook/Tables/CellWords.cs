using System.Globalization;
using NodaTime.Text;

namespace Coolproof.Notebook.Tables;

/// <summary>Says what a cell means, for messages.</summary>
internal static class CellWords
{
    public static string Of(TableCell cell, ColumnRule rule) => rule.Quantity switch
    {
        Quantity.Text => cell.Thing as string ?? "",
        Quantity.DateTime => cell.Thing is StartTime start ? LocalDateTimePattern.ExtendedIso.Format(start.Local) + (start.Offset is { } offset ? OffsetPattern.GeneralInvariantWithZ.Format(offset) : "") : "",
        Quantity.Temperature => Number(cell.Number) + " °C",
        Quantity.Duration => Number(cell.Number) + " s",
        Quantity.Choice => rule.Allowed[(int)cell.Number],
        Quantity.YesNo => cell.Number > 0 ? "yes" : "no",
        _ => Number(cell.Number),
    };

    public static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
