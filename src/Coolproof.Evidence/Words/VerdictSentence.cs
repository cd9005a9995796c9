using Coolproof.Notebook;

namespace Coolproof.Evidence.Words;

/// <summary>The verdict in one plain sentence, can first, then winding. It claims a difference only where the pair's call does.</summary>
/// <param name="unit">Unit of its temperatures.</param>
internal sealed class VerdictSentence(TemperatureUnitChoice unit)
{
    private const int MostNamed = 3;
    private const double LikelyAt = 0.75;

    /// <summary>The sentence, in °C and K or in °F.</summary>
    /// <param name="options">Options judged; at least one.</param>
    /// <param name="pairs">Every pair on can and winding.</param>
    /// <param name="main">The most probable coolest and its closest rival on the can; null with a single option.</param>
    /// <param name="fair">Conditions of the comparison.</param>
    /// <param name="sameWithinK">Half-width of the "same" band, K.</param>
    /// <param name="unit">Unit of its temperatures.</param>
    /// <exception cref="ArgumentException">No options.</exception>
    public static string Of(IReadOnlyList<OptionVerdict> options, IReadOnlyList<PairVerdict> pairs, PairVerdict? main, FairConditions fair, double sameWithinK,
        TemperatureUnitChoice unit = TemperatureUnitChoice.Celsius) => new VerdictSentence(unit).Whole(options, pairs, main, fair, sameWithinK);

    private string Whole(IReadOnlyList<OptionVerdict> options, IReadOnlyList<PairVerdict> pairs, PairVerdict? main, FairConditions fair, double sameWithinK)
    {
        if (options.Count == 0)
            throw new ArgumentException("There is no option to speak of.", nameof(options));
        if (main is null)
            return Alone(options[0], fair);
        string best = options.Where(o => o.Name == main.A || o.Name == main.B).MaxBy(o => o.ProbabilityCoolest)!.Name;
        PairVerdict pair = Facing.From(main, best);
        PairVerdict[] others = [.. options.Where(o => o.Name != best && o.Name != pair.B).Select(o => Facing.Of(pairs, best, o.Name, ComparedOn.Can)).OfType<PairVerdict>()];
        PairVerdict? winding = Facing.Of(pairs, best, pair.B, ComparedOn.Winding);
        string can = pair.Call switch
        {
            PairCall.ACooler or PairCall.BCooler => Firm(pair.Call == PairCall.ACooler ? pair : Facing.From(pair, pair.B), options.Count),
            PairCall.Same => $"No difference that matters: the cans under {Say.Option(pair.A)} and {Say.Option(pair.B)} are the same within {Band(sameWithinK)}",
            _ => Open(pair),
        };
        return can + Others(others, pair) + Winding(pair, winding, sameWithinK) + Elsewhere(pair, options, pairs) + ".";
    }

    private string Alone(OptionVerdict option, FairConditions fair) =>
        $"{Say.Capital(Say.Option(option.Name))} takes the can to {Say.Temperature(option.PeakCanC, unit)} and the winding to {Say.Temperature(option.PeakWindingC, unit)} " +
        $"after {Say.Number(fair.DriveS)} s of driving in {Say.Number(Units.FromCelsius(fair.AmbientC, unit))} {Units.Symbol(unit)} air; there is nothing to compare it with yet.";

    private string Firm(PairVerdict pair, int options) =>
        $"Fit {Say.Option(pair.A)}: its can runs {Say.Cooler(pair.DifferenceK, unit)} than with {(options > 2 ? "the next best, " : "")}{Say.Option(pair.B)} " +
        $"({Say.Range(pair.DifferenceK, unit)}), {Odds.Say(pair.ProbabilityACooler)} sure";

    private string Open(PairVerdict pair) =>
        $"Can't be told yet: {Say.Option(pair.A)} and {Say.Option(pair.B)} are within what the readings can tell " +
        $"(the can {Say.Cooler(pair.DifferenceK, unit)} with {Say.Option(pair.A)}, {Say.Range(pair.DifferenceK, unit)})";

    // What is told of the other options beside the best one.
    private static string Others(PairVerdict[] others, PairVerdict main)
    {
        string said = "";
        string[] hotter = Names(others, PairCall.ACooler), open = Names(others, PairCall.Open), same = Names(others, PairCall.Same);
        if (main.Call is PairCall.Open or PairCall.Same && hotter.Length > 0)
            said += $"; {Named(hotter)} {(hotter.Length == 1 ? "runs" : "run")} hotter than {Say.Option(main.A)}";
        if (same.Length > 0)
            said += $"; {Named(same)} {(same.Length == 1 ? "is" : "are")} as good as {Say.Option(main.A)}";
        if (open.Length > 0)
            said += main.Call == PairCall.Open ? $"; {Named(open)} {(open.Length == 1 ? "is" : "are")} within reach too" : $"; beside {Named(open)} it can't be told yet";
        return said;
    }

    private static string[] Names(PairVerdict[] pairs, PairCall call) => [.. pairs.Where(p => p.Call == call).Select(p => Say.Option(p.B))];

    private static string Named(string[] names) => names.Length <= MostNamed ? Say.List(names) : $"{Say.Count(names.Length, "other option")}";

    private string Band(double sameWithinK)
    {
        double band = Units.FromKelvins(sameWithinK, unit);
        return $"{Say.Number(band, band == Math.Round(band) ? 0 : 1)} {Say.Degree(unit)}";
    }

    // Whether the winding says the same, nothing, or something else.
    private string Winding(PairVerdict can, PairVerdict? winding, double sameWithinK)
    {
        if (winding is null)
            return "";
        bool firmCan = can.Call is PairCall.ACooler or PairCall.BCooler, firmWinding = winding.Call is PairCall.ACooler or PairCall.BCooler;
        PairVerdict cooler = winding.Call == PairCall.BCooler ? Facing.From(winding, winding.B) : winding;
        string told = $"{Say.Cooler(cooler.DifferenceK, unit)} with {Say.Option(cooler.A)} ({Say.Range(cooler.DifferenceK, unit)})";
        return (firmCan, firmWinding) switch
        {
            (true, true) when can.Call == winding.Call => $"; the winding agrees, {Say.Cooler(cooler.DifferenceK, unit)} ({Say.Range(cooler.DifferenceK, unit)})",
            (true, true) => $"; the winding says the opposite: it runs {told}",
            (true, false) when winding.Call == PairCall.Same => $"; but the winding is the same within {Band(sameWithinK)}",
            (true, false) => $"; but for the winding it can't be told yet ({Say.Cooler(winding.DifferenceK, unit)}, {Say.Range(winding.DifferenceK, unit)})",
            (false, true) => $"; but the winding does tell: it runs {told}, {Odds.Say(cooler.ProbabilityACooler)} sure",
            _ when can.Call == winding.Call => winding.Call == PairCall.Same ? ", and so are the windings" : "; the winding doesn't tell either",
            _ when winding.Call == PairCall.Same => $"; but the winding is the same within {Band(sameWithinK)}",
            _ => $"; but for the winding it can't be told yet ({Say.Cooler(winding.DifferenceK, unit)}, {Say.Range(winding.DifferenceK, unit)})",
        };
    }

    // A third option whose winding is likely cooler than that of the option with the coolest can.
    private static string Elsewhere(PairVerdict can, IReadOnlyList<OptionVerdict> options, IReadOnlyList<PairVerdict> pairs)
    {
        string coolest = options.MinBy(o => o.PeakWindingC.Mean)!.Name;
        return coolest != can.A && coolest != can.B && Facing.Of(pairs, coolest, can.A, ComparedOn.Winding) is { ProbabilityACooler: >= LikelyAt } pair
            ? $"; the coolest winding is with {Say.Option(coolest)}, {Odds.Say(pair.ProbabilityACooler)} sure"
            : "";
    }
}
