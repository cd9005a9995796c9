using Coolproof.Evidence;
using Coolproof.Evidence.Words;
using Coolproof.Notebook;
using Coolproof.Notebook.Journal;

namespace Coolproof.Words;

/// <summary>The question answered as it was asked: in degrees, money and grams. It claims no more than the verdict's calls do.</summary>
/// <param name="verdict">What the readings say.</param>
/// <param name="question">The question; null: which of them is the coolest.</param>
/// <param name="options">Options of the notebook.</param>
/// <param name="degrees">Unit of temperatures.</param>
/// <param name="costs">Units of money and mass.</param>
internal sealed class QuestionAnswer(Verdict verdict, NotedQuestion? question, IReadOnlyList<NotedOption> options, DegreeWords degrees, CostWords costs)
{
    /// <summary>The answer, one or a few sentences.</summary>
    public string Say() => question?.Sort switch
    {
        "pays" when Between() is { } pair => Pays(pair) + Budget(pair.A),
        "limit" when question.LimitC is { } limit && question.LimitOn is null or LimitOn.Can or LimitOn.Winding => Limit(limit, question.LimitOn ?? LimitOn.Can),
        "limit" when question.LimitOn is { } on => $"The readings tell of can and winding; the {(on == LimitOn.Magnet ? "magnets are" : "controller is")} not judged yet. {Which()}",
        "gear" => $"Gearing needs the lap times too, so pinion and timing can't be answered from these readings. Of the cooling: {Which()}",
        _ => Which(),
    };

    // The verdict's own sentence, and what its choice costs.
    string Which()
    {
        var said = verdict.SentenceIn(degrees.In);
        if (verdict.MainPair is not { } main) return said + Costs(verdict.Options.FirstOrDefault()?.Name);
        var best = verdict.Options.Where(option => option.Name == main.A || option.Name == main.B).MaxBy(option => option.ProbabilityCoolest)!.Name;
        var rival = main.A == best ? main.B : main.A;
        var over = costs.Over(Find(best), Find(rival));
        if (over.Length == 0) return said + Costs(best);
        return main.Call is PairCall.Open or PairCall.Same
            ? $"{said} Meanwhile {The(best)} costs {over} than {The(rival)}."
            : $"{said} It costs {costs.Of(Find(best))}, {over} than {The(rival)}.{Undone(best)}{Budget(best)}";
    }

    string Costs(string? option) => option is not null && costs.Of(Find(option)) is { Length: > 0 } cost ? $" {Capital(The(option))} costs {cost}.{Undone(option)}{Budget(option)}" : "";

    // The first option of the question is what is there now; the other, or the most likely coolest of the others, is what may pay.
    PairVerdict? Between()
    {
        string[] asked = [.. question!.Options.Select(id => options.FirstOrDefault(option => option.Id == id)?.Name).OfType<string>().Where(name => verdict.Options.Any(option => Same(option.Name, name)))];
        if (asked.Length < 2) return null;
        var candidate = verdict.Options.Where(option => asked.Skip(1).Any(name => Same(option.Name, name))).MaxBy(option => option.ProbabilityCoolest)!.Name;
        return verdict.Pairs.Where(pair => pair.On == ComparedOn.Can && ((Same(pair.A, candidate) && Same(pair.B, asked[0])) || (Same(pair.B, candidate) && Same(pair.A, asked[0]))))
            .Select(pair => Same(pair.A, candidate) ? pair : pair.Turned()).FirstOrDefault();
    }

    string Pays(PairVerdict pair)
    {
        var over = costs.Over(Find(pair.A), Find(pair.B));
        var cost = over.Length > 0 ? $"; it costs {over}" : "";
        var (a, b) = (The(pair.A), The(pair.B));
        var cooler = degrees.DifferenceAndRange(pair.DifferenceK.Turned());
        return pair.Call switch
        {
            PairCall.ACooler => $"Yes, as far as heat goes: {a} takes {cooler} off the can beside {b}, {Odds.Say(pair.ProbabilityACooler)} sure{cost}.{Undone(pair.A)}",
            PairCall.BCooler => $"No: with {a} the can runs {degrees.DifferenceAndRange(pair.DifferenceK)} hotter than with {b}, {Odds.Say(1 - pair.ProbabilityACooler)} sure{cost}.",
            PairCall.Same => $"No difference that matters: {a} and {b} are the same within {degrees.SayDifference(verdict.SameWithinK, 1)}{cost}.{Undone(pair.A)}",
            _ => $"Can't be told yet whether it pays: {a} takes {cooler} off the can beside {b}. {VerdictWords.Settles(VerdictWords.MoreRuns(pair, verdict))}{cost}.{Undone(pair.A)}",
        };
    }

    string Limit(double limitC, LimitOn on)
    {
        var asked = verdict.Options.Select(option => (option.Name, Stays: Passing.Below(on == LimitOn.Can ? option.PeakCanC : option.PeakWindingC, limitC))).OrderByDescending(option => option.Stays).ToList();
        string Named(IEnumerable<(string Name, double Stays)> some, bool stays) =>
            string.Join(", ", some.Select(option => $"{The(option.Name)} ({Odds.Say(stays ? option.Stays : 1 - option.Stays)})"));
        var where = $"{degrees.Say(limitC)} on the {(on == LimitOn.Can ? "can" : "winding")} in {degrees.Say(verdict.Fair.AmbientC, 1)} air after {DegreeWords.Number(verdict.Fair.DriveS / 60, 1)} minutes";
        List<string> said = [];
        if (asked.Where(option => option.Stays >= 0.95).ToList() is { Count: > 0 } under) said.Add($"Stays under {where}: {Named(under, true)}.");
        if (asked.Where(option => option.Stays <= 0.05).ToList() is { Count: > 0 } over) said.Add($"{(said.Count > 0 ? "Passes it" : $"Passes {where}")}: {Named(over, false)}.");
        if (asked.Where(option => option.Stays is > 0.05 and < 0.95).ToList() is { Count: > 0 } open) said.Add($"{(said.Count > 0 ? "Can't be told yet" : $"Can't be told yet for {where}")}, odds of staying under: {Named(open, true)}.");
        return string.Join(" ", said);
    }

    string Undone(string name) => Find(name)?.CantBeUndone == true ? " Fitting it can't be undone." : "";

    string Budget(string name)
    {
        List<string> over = [];
        if (question?.Budget is { } budget && Find(name)?.Price > budget) over.Add($"your {costs.Money(budget)}");
        if (question?.BudgetG is { } mass && Find(name)?.MassG > mass) over.Add($"your {costs.Grams(mass)}");
        return over.Count > 0 ? $" That is over {string.Join(" and ", over)}." : "";
    }

    NotedOption? Find(string name) => options.FirstOrDefault(option => Same(option.Name, name));

    static string The(string name) => OptionNames.WithArticle(name);

    static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
}
