namespace Coolproof.Notebook;

/// <summary>How an instrument measures.</summary>
public enum InstrumentKind
{
    /// <summary>An infrared gun, pointed.</summary>
    Gun,
    /// <summary>A contact probe, held or glued on.</summary>
    Probe,
    /// <summary>A four-wire ohmmeter on the winding.</summary>
    Ohmmeter
}

/// <summary>An instrument that readings name.</summary>
public sealed record Instrument
{
    /// <summary>An instrument by its name.</summary>
    /// <param name="name">Its name, as in the readings table.</param>
    /// <param name="kind">How it measures.</param>
    /// <exception cref="ArgumentException">A blank name.</exception>
    public Instrument(string name, InstrumentKind kind = InstrumentKind.Gun)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        Name = name;
        Kind = kind;
    }

    /// <summary>Its name, as in the readings table.</summary>
    public string Name { get; }

    /// <summary>How it measures.</summary>
    public InstrumentKind Kind { get; }
}
