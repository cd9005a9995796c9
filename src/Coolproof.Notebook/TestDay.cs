using NodaTime;

namespace Coolproof.Notebook;

/// <summary>A day of testing, to which runs of the readings table belong.</summary>
public sealed record TestDay
{
    /// <summary>A day by its name.</summary>
    /// <param name="name">Its name, as in the readings table.</param>
    /// <param name="date">Its date, where known.</param>
    /// <exception cref="ArgumentException">A blank name.</exception>
    public TestDay(string name, LocalDate? date = null)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        Name = name;
        Date = date;
    }

    /// <summary>Its name, as in the readings table.</summary>
    public string Name { get; }

    /// <summary>Its date, where known.</summary>
    public LocalDate? Date { get; }
}
