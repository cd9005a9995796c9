namespace Coolproof.Commands;

/// <summary>Quick shots as they are typed: "62.1C,61.9C" or, with what was true, "62.1C,61.9C@60.0C".</summary>
/// <param name="ShotsC">Shots, °C.</param>
/// <param name="TrueC">What was true, °C; null: not typed.</param>
internal sealed record TypedShots(IReadOnlyList<double> ShotsC, double? TrueC)
{
    const int MostShots = 20;

    /// <summary>Null, or what is wrong with a text.</summary>
    public static string? Wrong(string text, bool needsTrue) => Read(text, needsTrue, out _);

    /// <summary>Reads a text that is right.</summary>
    public static TypedShots Of(string text) => Read(text, text.Contains('@', StringComparison.Ordinal), out var shots) is { } wrong ? throw new ArgumentException(wrong, nameof(text)) : shots!;

    static string? Read(string text, bool needsTrue, out TypedShots? shots)
    {
        shots = null;
        var sides = text.Split('@');
        if (needsTrue && sides.Length != 2) return "expected shots, @ and what the probe shows, like 62.1C,61.9C@60.0C";
        if (!needsTrue && sides.Length != 1) return "expected shots only, like 0.9C,0.7C: what is true there is known";
        List<double> read = [];
        foreach (var shot in sides[0].Split(','))
        {
            if (Typed.Body(shot, out var celsius) is { } wrong) return wrong;
            read.Add(celsius);
        }
        if (read.Count > MostShots) return $"expected at most {MostShots} shots";
        double known = 0;
        if (needsTrue && Typed.Body(sides[1], out known) is { } fault) return fault;
        shots = new(read, needsTrue ? known : null);
        return null;
    }
}
