using Coolproof.Evidence.Model;
using Coolproof.Notebook;

namespace Coolproof.Evidence;

/// <summary>What is left to believe after the readings: draws of everything unknown, and the options at fair conditions in each.</summary>
/// <param name="Table">The table.</param>
/// <param name="Fit">The model, its coordinates and its curvature.</param>
/// <param name="Draws">Draws, each a full parameter vector of <see cref="DayFit.Model"/>; chain after chain.</param>
/// <param name="Fair">Conditions of the comparison.</param>
/// <param name="Options">Options that are judged: places in <see cref="DayModel.Options"/>.</param>
/// <param name="CanC">Fair can peaks: option × draw, °C.</param>
/// <param name="WindingC">Fair winding peaks: option × draw, °C.</param>
/// <param name="Conductance">Conductance over core capacity, 1/s: option × draw.</param>
internal sealed record Posterior(
    ReadingsTable Table, DayFit Fit, IReadOnlyList<double[]> Draws, FairConditions Fair, IReadOnlyList<int> Options, double[][] CanC, double[][] WindingC,
    double[][] Conductance);
