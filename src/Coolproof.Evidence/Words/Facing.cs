namespace Coolproof.Evidence.Words;

/// <summary>A pair seen from one of its options.</summary>
internal static class Facing
{
    /// <summary>The pair of two options on can or winding with the first named as A; null when there is none.</summary>
    public static PairVerdict? Of(IEnumerable<PairVerdict> pairs, string first, string second, ComparedOn on) =>
        pairs.FirstOrDefault(p => p.On == on && ((p.A == first && p.B == second) || (p.A == second && p.B == first))) is { } pair ? From(pair, first) : null;

    /// <summary>The same pair with an option as A.</summary>
    public static PairVerdict From(PairVerdict pair, string first) => pair.A == first ? pair : pair.Turned();
}
