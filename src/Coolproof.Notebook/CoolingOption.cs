namespace Coolproof.Notebook;

/// <summary>A way of cooling the motor: a name and the parts that it takes; none for the bare can.</summary>
public sealed record CoolingOption
{
    /// <summary>An option by its name and parts.</summary>
    /// <param name="name">Its name, as in the readings table.</param>
    /// <param name="parts">What it takes.</param>
    /// <exception cref="ArgumentException">A blank name.</exception>
    public CoolingOption(string name, params IReadOnlyList<CoolingPart> parts)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        ArgumentNullException.ThrowIfNull(parts);
        Name = name;
        Parts = [.. parts];
    }

    /// <summary>Its name, as in the readings table; compared without regard to case.</summary>
    public string Name { get; }

    /// <summary>What it takes.</summary>
    public IReadOnlyList<CoolingPart> Parts { get; }

    /// <summary>Price of all parts, in the person's own currency.</summary>
    public decimal Price => Parts.Sum(part => part.Price);

    /// <summary>Mass of all parts, g.</summary>
    public double MassG => Parts.Sum(part => part.MassG);
}
