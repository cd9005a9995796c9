using Coolproof.Notebook.Tables;

namespace Coolproof.Notebook.Journal;

/// <summary>The words of fields that the readings table has too, as its enumerations.</summary>
internal static class NotedWords
{
    public static SpotSurface? Surface(string? word) => Choice<SpotSurface>(Field.SurfaceOfSpot, word);

    public static TemperatureUnitChoice? Unit(string? word) => word switch { "c" => TemperatureUnitChoice.Celsius, "f" => TemperatureUnitChoice.Fahrenheit, _ => null };

    /// <summary>The value that a word stands for; null for no word.</summary>
    public static T? Choice<T>(Field column, string? word) where T : struct, Enum =>
        word is not null && Array.IndexOf(ColumnRules.Of(column).Allowed, word) is >= 0 and int index ? Choices<T>.All[index] : null;

    /// <summary>The word of a value.</summary>
    public static string Word<T>(Field column, T value) where T : struct, Enum => ColumnRules.Of(column).Allowed[Array.IndexOf(Choices<T>.All, value)];
}
