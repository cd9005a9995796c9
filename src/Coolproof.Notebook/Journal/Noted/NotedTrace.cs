using NodaTime;

namespace Coolproof.Notebook.Journal;

/// <summary>A logger's trace. Its rows lie in a file of their own, which is named for its SHA-256.</summary>
public sealed record NotedTrace(Guid Id, EntryBody Fields, Instant Since, bool Removed) : NotedThing(Id, Fields, Since, Removed)
{
    /// <summary>The day that it was logged on.</summary>
    public Guid? Day => Fields.Id("day");
    /// <summary>SHA-256 of its kept file.</summary>
    public string? Sha256 => Fields.Text("sha256");
    /// <summary>Hash of the header of its file.</summary>
    public string? Header => Fields.Text("header");
    /// <summary>What the person said of the layout of its file, as JSON.</summary>
    public string? Layout => Fields.Text("layout");
    /// <summary>Its clock minus the notebook's, ms; null while nobody said.</summary>
    public double? AheadMs => Fields.Number("aheadMs");
    /// <summary>The channel whose readings were taken into the runs.</summary>
    public string? Channel => Fields.Text("channel");
    /// <summary>Whether its readings were taken into the runs.</summary>
    public bool Taken => Fields.YesNo("taken") == true;
}
