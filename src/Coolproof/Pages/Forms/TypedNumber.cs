using System.Globalization;

namespace Coolproof.Pages.Forms;

/// <summary>Numbers as people type them into a form: with a decimal point or comma, and with either minus sign.</summary>
internal static class TypedNumber
{
    /// <summary>Reads one.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="number">The number.</param>
    /// <returns>Whether it is one.</returns>
    public static bool TryRead(string text, out double number) =>
        double.TryParse(text.Trim().Replace(',', '.').Replace('−', '-'), NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out number);
}
