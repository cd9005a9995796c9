namespace Coolproof.Notebook.Tables;

/// <summary>The values of an enumeration, in the order of the allowed words of its column.</summary>
internal static class Choices<T> where T : struct, Enum
{
    public static readonly T[] All = Enum.GetValues<T>();
}
