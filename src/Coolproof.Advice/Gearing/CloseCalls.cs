using Coolproof.Evidence.Forecasts;
using Coolproof.Thermal;

namespace Coolproof.Advice.Gearing;

/// <summary>
/// Choices whose odds come so near those accepted that what is read off parabolas and surfaces might decide: from the quickest on, each draw's lap and race day are driven for them until one is safe.
/// </summary>
internal sealed class CloseCalls(GearQuestion question, GearDraws draws, LapBelief belief, LapGrid grid)
{
    // Odds of a choice that are read off were a point off at most over a hundred notebooks (docs/gear.md): well beyond it.
    private const double Within = 0.03;
    private const double StepM = 1;

    private readonly Dictionary<GearChoice, LapFigures?[]> _laps = [];

    /// <summary>Temperatures and odds of one option, close ones driven.</summary>
    /// <param name="option">Place of the option.</param>
    /// <param name="gears">Laps of all choices.</param>
    /// <param name="read">What was read off.</param>
    /// <param name="heat">Temperatures and odds out of peaks: its one gearing.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public GearedHeat[] Settled(int option, IReadOnlyList<GearedLap> gears, GearedHeat[] read, Func<GearedPeaks, GearedHeat> heat, CancellationToken cancel)
    {
        double accepted = question.Demand.AcceptedOdds;
        GearedHeat[] settled = [.. read];
        foreach (int i in Enumerable.Range(0, gears.Count).Where(i => gears[i].PackLasts && read[i].OddsOfAny <= accepted + Within).OrderBy(i => gears[i].LapS.Q50))
        {
            if (read[i].OddsOfAny >= accepted - Within)
                settled[i] = heat(GearedRaces.OneByOne(draws.Evidence, question.Scenario, [Heats(i, cancel)], option, question.Seed, cancel));
            if (settled[i].OddsOfAny <= accepted)
                break;
        }
        return settled;
    }

    private RaceHeat[] Heats(int choice, CancellationToken cancel)
    {
        GearChoice asked = grid.Choices[choice];
        LapFigures?[] driven = Laps(question.Rig.Driven, cancel), turned = Laps(asked with { TimingDeg = question.Rig.Driven.TimingDeg }, cancel), laps = Laps(asked, cancel);
        return [.. draws.Z.Select((at, d) => driven[d] is { } a && turned[d] is { } b && laps[d] is { } c ? draws.Trust.Heat(d, a, b, c) : grid.Heat(choice, at, d, draws.Trust))];
    }

    // Null where a draw's lap can't be driven: there what is read off stays.
    private LapFigures?[] Laps(GearChoice choice, CancellationToken cancel)
    {
        if (_laps.TryGetValue(choice, out LapFigures?[]? held))
            return held;
        LapFigures?[] laps = new LapFigures?[draws.Z.Length];
        Parallel.For(0, draws.Z.Length, new ParallelOptions { CancellationToken = cancel }, d =>
        {
            try
            {
                laps[d] = LapFigures.Of(belief.At(draws.Z[d]).Lap(choice, belief.DrawnAh, StepM));
            }
            catch (LapException)
            {
            }
        });
        return _laps[choice] = laps;
    }
}
