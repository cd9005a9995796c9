namespace Coolproof.Notebook;

/// <summary>A motor. All heat capacities, conductances and losses scale with its mass.</summary>
public sealed record Motor
{
    /// <summary>A motor by its name and mass.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="massG">Its mass with leads, g; 20 to 2000. A 1:10 motor has 100 to 250 g, 165 g where it is not known (common practice, no source).</param>
    /// <exception cref="ArgumentException">A blank name.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A mass out of its range.</exception>
    public Motor(string name, double massG = 165)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        if (massG is not (>= 20 and <= 2000)) throw new ArgumentOutOfRangeException(nameof(massG), massG, "A motor has between 20 g and 2000 g.");
        Name = name;
        MassG = massG;
    }

    /// <summary>Its name.</summary>
    public string Name { get; }

    /// <summary>Its mass with leads, g.</summary>
    public double MassG { get; }
}
