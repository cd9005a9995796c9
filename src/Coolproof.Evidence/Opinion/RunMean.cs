using Coolproof.Notebook;

namespace Coolproof.Evidence.Opinion;

/// <summary>A run's corrected readings averaged.</summary>
/// <param name="Option">Its option.</param>
/// <param name="Run">The run.</param>
/// <param name="Mounting">Which mounting it was driven on; −1 when not known.</param>
/// <param name="FairC">Mean of the corrected readings at fair air and start, °C.</param>
internal sealed record RunMean(string Option, Run Run, int Mounting, double FairC);
