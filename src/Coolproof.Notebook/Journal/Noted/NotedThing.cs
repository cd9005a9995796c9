using NodaTime;

namespace Coolproof.Notebook.Journal;

/// <summary>A thing of the notebook, as its entries add up.</summary>
/// <param name="Id">Its UUID.</param>
/// <param name="Fields">Its fields, each with its latest value; null values are cleared ones.</param>
/// <param name="Since">When its first entry was made, by the corrected clock.</param>
/// <param name="Removed">Whether it was taken out of lists.</param>
public abstract record NotedThing(Guid Id, EntryBody Fields, Instant Since, bool Removed)
{
    /// <summary>Its name; empty when it has none.</summary>
    public string Name => Fields.Text("name") ?? "";

    /// <summary>Free text; null when there is none.</summary>
    public string? Note => Fields.Text("note");

    /// <summary>Its place in lists, where one was given.</summary>
    public double? Order => Fields.Number("order");
}
