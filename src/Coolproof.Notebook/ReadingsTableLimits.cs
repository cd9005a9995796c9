namespace Coolproof.Notebook;

/// <summary>How large a readings table may be. A racer's lifetime is about 100,000 readings; what is larger is a logger trace or a mistake.</summary>
public static class ReadingsTableLimits
{
    /// <summary>Most bytes of a file: 64 MB (64 × 1,000,000).</summary>
    public const long Bytes = 64_000_000;

    /// <summary>Most rows under the header.</summary>
    public const int Rows = 100_000;

    /// <summary>Most characters of one cell; a longer one is nearly always a quote that was never closed.</summary>
    public const int CellCharacters = 10_000;

    /// <summary>Most characters that are kept as notes out of unknown columns, over the whole table.</summary>
    public const int NoteCharacters = 20_000_000;

    /// <summary>Most columns.</summary>
    public const int Columns = 500;

    /// <summary>Most problems, and most questions, that are listed one by one.</summary>
    public const int ListedProblems = 200;
}
