namespace Coolproof.Notebook;

/// <summary>A part that is bought or printed for a cooling option.</summary>
public sealed record CoolingPart
{
    /// <summary>A part by its name, price and mass.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="price">Its price in the person's own currency; 0 for what costs nothing.</param>
    /// <param name="massG">Its mass, g; 0 or more.</param>
    /// <exception cref="ArgumentException">A blank name.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A negative price or mass.</exception>
    public CoolingPart(string name, decimal price, double massG)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        ArgumentOutOfRangeException.ThrowIfNegative(price);
        if (massG is not (>= 0 and <= 10_000)) throw new ArgumentOutOfRangeException(nameof(massG), massG, "A part has between 0 g and 10 kg.");
        Name = name;
        Price = price;
        MassG = massG;
    }

    /// <summary>Its name.</summary>
    public string Name { get; }

    /// <summary>Its price in the person's own currency.</summary>
    public decimal Price { get; }

    /// <summary>Its mass, g.</summary>
    public double MassG { get; }
}
