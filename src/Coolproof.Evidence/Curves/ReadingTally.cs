using System.Runtime.CompilerServices;
using Coolproof.Evidence.Model;
using Coolproof.Notebook;

namespace Coolproof.Evidence.Curves;

/// <summary>Parts of one reading's correction, added up over draws.</summary>
/// <param name="model">The model.</param>
/// <param name="index">The reading: place in <see cref="DayModel.Readings"/>.</param>
internal sealed class ReadingTally(DayModel model, int index)
{
    private readonly ModelReading _reading = model.Readings[index];
    private double _delay, _aim, _gun, _wide, _off;

    /// <summary>Whether a reading is of a spot that is corrected to the can.</summary>
    public static bool Takes(ModelReading reading) => reading.On is ReadingOn.Can or ReadingOn.Endbell;

    /// <summary>Place of the reading in <see cref="DayModel.Readings"/>.</summary>
    public int Index => index;

    /// <summary>The reading.</summary>
    public ModelReading Reading => _reading;

    /// <summary>Adds the point that <paramref name="density"/> visited last.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Add(DayDensity density)
    {
        ref readonly ReadingState seen = ref density.Seen[index];
        ref readonly RunState run = ref density.States[_reading.Run];
        double shortK = seen.Mean - _reading.ValueC;
        AimLoss loss = AimLoss.Of(shortK, seen.Loss, density.Guns[_reading.Instrument].Scatter);
        _delay += run.End2 - seen.Can;
        _aim += loss.ExpectedK;
        // −offset − (gain − 1)(can − air), and on the endbell what it shows beside the can.
        _gun += run.Air + seen.Can - seen.Mean;
        _wide += loss.WideProbability;
        _off += loss.ExpectedK - shortK;
    }

    /// <summary>Probability that the reading's scatter was the wide one.</summary>
    public double WideProbability(int draws) => _wide / draws;

    /// <summary>How far the reading lies above what its run lets expect, K, its aim loss put back.</summary>
    public double AboveK(int draws) => _off / draws;

    /// <summary>The reading corrected. What undoes the gun's emissivity setting, and on an endbell its difference from the can, is in the gun's part.</summary>
    /// <param name="table">The table.</param>
    /// <param name="delayS">Its delay, s.</param>
    /// <param name="draws">Draws added.</param>
    /// <param name="ambientK">Fair air minus the run's, K.</param>
    /// <param name="warmthK">What the run brought along, negative when warm, K.</param>
    public CorrectedReading Corrected(ReadingsTable table, double delayS, int draws, double ambientK, double warmthK)
    {
        Reading noted = Noted(table);
        double readC = noted.ReadC!.Value, delayK = _delay / draws, aimK = _aim / draws, gunK = _reading.ValueC - readC + _gun / draws;
        double correctedC = readC + delayK + aimK + gunK;
        return new(noted.Line, delayS, _reading.Gap < 0, readC, correctedC, delayK, aimK, gunK, ambientK, warmthK, correctedC + ambientK + warmthK);
    }

    /// <summary>The row of the table.</summary>
    public Reading Noted(ReadingsTable table) => table.Runs[_reading.TableRun].Readings[_reading.TableReading];
}
