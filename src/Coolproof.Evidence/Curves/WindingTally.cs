using System.Runtime.CompilerServices;
using Coolproof.Evidence.Model;
using Coolproof.Notebook;

namespace Coolproof.Evidence.Curves;

/// <summary>What one reading of the winding is put up or down by, added up over draws.</summary>
/// <param name="model">The model.</param>
/// <param name="index">The reading: place in <see cref="DayModel.Readings"/>.</param>
internal sealed class WindingTally(DayModel model, int index)
{
    private readonly ModelReading _reading = model.Readings[index];
    private double _delay;

    /// <summary>Adds the point that <paramref name="density"/> visited last.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Add(DayDensity density)
    {
        ref readonly RunState run = ref density.States[_reading.Run];
        _delay += run.End1 + run.EndExcess - density.Seen[index].Winding;
    }

    /// <summary>The reading brought back.</summary>
    /// <param name="table">The table.</param>
    /// <param name="times">Delays as noted, else their medians.</param>
    /// <param name="draws">Draws added.</param>
    public WindingReading BroughtBack(ReadingsTable table, TypicalTimes times, int draws) => new(
        table.Runs[_reading.TableRun].Readings[_reading.TableReading].Line, _reading.On == ReadingOn.WindingByResistance, times.DelayS[index], _reading.Gap < 0,
        _reading.ValueC, _reading.ValueC + _delay / draws);
}
