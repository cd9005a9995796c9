using Coolproof.Evidence;
using Coolproof.Notebook;

namespace Coolproof.Advice.Spending;

/// <summary>How what a choice does is known.</summary>
public enum SpendBasis
{
    /// <summary>Driven as an option: taken as measured.</summary>
    Driven,
    /// <summary>Of parts that were driven, but never together: their watts per degree added up, with a wider doubt.</summary>
    AddedUp,
    /// <summary>A predicted mount is in it.</summary>
    Predicted,
    /// <summary>A guess of the person's is in it.</summary>
    Guessed,
}

/// <summary>A choice of parts with what it costs and does.</summary>
/// <param name="Parts">Names of its parts, in the order of the file; none: nothing is bought.</param>
/// <param name="Money">What it costs.</param>
/// <param name="MassG">Its mass, g.</param>
/// <param name="CountedG">Grams above the class's minimum weight.</param>
/// <param name="CanCoolerK">How much cooler the can than with the base, K.</param>
/// <param name="WindingCoolerK">How much cooler the winding, K.</param>
/// <param name="Basis">How that is known.</param>
/// <param name="FitMin">Work, min.</param>
/// <param name="Soldering">Whether something must be soldered.</param>
/// <param name="Cutting">Whether something must be cut.</param>
/// <param name="LapS">What it does to a lap, s, by mass and by its parts; null where nothing was said of laps.</param>
public sealed record SpendChoice(
    IReadOnlyList<string> Parts, decimal Money, double MassG, double CountedG, Summary CanCoolerK, Summary WindingCoolerK, SpendBasis Basis, double FitMin, bool Soldering, bool Cutting, double? LapS);

/// <summary>A step up: a choice, and what it brings over the one before.</summary>
/// <param name="Choice">The choice.</param>
/// <param name="MoreMoney">Money over the choice before; 0 for the first.</param>
/// <param name="MoreK">How much cooler the can than with the choice before, K; null for the first.</param>
public sealed record SpendStep(SpendChoice Choice, decimal MoreMoney, Summary? MoreK);

/// <summary>A point of the front, in brief.</summary>
/// <param name="Parts">Names of its parts.</param>
/// <param name="Money">Money.</param>
/// <param name="CountedG">Grams above the minimum weight.</param>
/// <param name="CanCoolerK">How much cooler the can is, middle, K.</param>
public sealed record SpendPoint(IReadOnlyList<string> Parts, decimal Money, double CountedG, double CanCoolerK);

/// <summary>The best use of money and grams.</summary>
/// <param name="Sheet">What was asked.</param>
/// <param name="Fair">Conditions of the comparison.</param>
/// <param name="Steps">For each sum of money the best choice within the grams, cheapest first; the last is the best within the budget, the first buys nothing.</param>
/// <param name="Front">All choices within the limits that no other beats in money, counted grams and coolness at once.</param>
/// <param name="BeyondMoney">The cheapest choice past the money that is cooler than the best; null: none.</param>
/// <param name="BeyondGrams">The lightest choice past the grams that is cooler than the best within the money; null: none.</param>
/// <param name="NotAllowed">Parts that the class doesn't allow.</param>
/// <param name="Unknown">Parts of which nothing is known, neither driven nor guessed, and that no other needs: never bought.</param>
public sealed record SpendAnswer(
    SpendSheet Sheet, FairConditions Fair, IReadOnlyList<SpendStep> Steps, IReadOnlyList<SpendPoint> Front, SpendStep? BeyondMoney, SpendStep? BeyondGrams, IReadOnlyList<string> NotAllowed,
    IReadOnlyList<string> Unknown)
{
    /// <summary>The best choice within the budget.</summary>
    public SpendChoice Best => Steps[^1].Choice;
}
