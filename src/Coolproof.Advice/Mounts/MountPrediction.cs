using Coolproof.Evidence;
using Coolproof.Notebook;

namespace Coolproof.Advice.Mounts;

/// <summary>What something in the air's way costs.</summary>
/// <param name="Loss">What stands in the way.</param>
/// <param name="WPerK">Watts per kelvin more without it.</param>
/// <param name="CanK">How much cooler the can would be without it, K, at the middle of what is believed.</param>
public sealed record MountCost(MountLoss Loss, double WPerK, double CanK);

/// <summary>A mount that was driven too: what was predicted before any reading, and what the readings say.</summary>
/// <param name="Predicted">Predicted from the ruler alone, W/K.</param>
/// <param name="Found">Found, W/K; the scale is that of the motor's mass.</param>
/// <param name="Together">What the readings say together with the ruler's word on how the mounts that were driven differ, W/K: this is reckoned with. Null where fewer than two were driven, where they contradict each other, or where too few draws go with both: there the readings alone count.</param>
/// <param name="Contradicts">Whether ruler and readings contradict each other on how the mounts differ.</param>
/// <param name="Odds">Chance, by the prediction, of a value as low as the middle of what was found: near 0 or 1 it was far off.</param>
public sealed record MountFound(Summary Predicted, Summary Found, Summary? Together, bool Contradicts, double Odds);

/// <summary>What a mount would do.</summary>
/// <param name="Mount">The mount.</param>
/// <param name="Middle">Flow and heat at the middle of what is believed.</param>
/// <param name="WattsPerKelvin">Watts shed per degree, W/K, put right by what was found of others where a table was given.</param>
/// <param name="CanC">Can at fair conditions, °C.</param>
/// <param name="WindingC">Winding at fair conditions, °C.</param>
/// <param name="OddsCoolest">Chance that its can is the coolest of all, predicted and driven.</param>
/// <param name="Costs">What stands in the air's way, dearest first.</param>
/// <param name="Found">Beside what was found; null where it was not driven.</param>
/// <param name="Against">Its can less that of <see cref="MountAnswer.Reference"/>, K; null for that one itself.</param>
public sealed record MountPrediction(
    Mount Mount, MountHeat Middle, Summary WattsPerKelvin, Summary CanC, Summary WindingC, double OddsCoolest, IReadOnlyList<MountCost> Costs, MountFound? Found, Summary? Against);

/// <summary>An option that was driven, at the same conditions.</summary>
/// <param name="Name">Its name.</param>
/// <param name="WattsPerKelvin">Watts shed per degree, W/K.</param>
/// <param name="CanC">Can at fair conditions, °C.</param>
/// <param name="WindingC">Winding at fair conditions, °C.</param>
/// <param name="OddsCoolest">Chance that its can is the coolest of all, predicted and driven.</param>
public sealed record DrivenOption(string Name, Summary WattsPerKelvin, Summary CanC, Summary WindingC, double OddsCoolest);

/// <summary>The mounts of a sheet beside what was driven.</summary>
/// <param name="Sheet">What was asked.</param>
/// <param name="Fair">Conditions of the comparison.</param>
/// <param name="Mounts">Each mount, in the order of the sheet.</param>
/// <param name="Driven">The options of the table that are no mount of the sheet; none without a table.</param>
/// <param name="Reference">What the others are set against by name: the coolest that was driven, else the first of the sheet.</param>
public sealed record MountAnswer(MountSheet Sheet, FairConditions Fair, IReadOnlyList<MountPrediction> Mounts, IReadOnlyList<DrivenOption> Driven, string Reference)
{
    /// <summary>Whether readings stand behind it.</summary>
    public bool WithReadings => Driven.Count > 0 || Mounts.Any(m => m.Found is not null);
}
