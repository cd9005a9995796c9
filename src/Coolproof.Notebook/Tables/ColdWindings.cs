namespace Coolproof.Notebook.Tables;

/// <summary>Cold resistances and their temperatures, noted once for a run or once for each pair of it.</summary>
internal sealed class ColdWindings
{
    // One place for each pair, the last for rows that name none.
    private readonly double?[] _milliohm = new double?[4];
    private readonly double?[] _celsius = new double?[4];
    private double? _anyCelsius;

    /// <summary>The first noted values of a run.</summary>
    public static ColdWindings Of(RunDraft draft)
    {
        ColdWindings cold = new();
        foreach (TableRow row in draft.Rows)
        {
            int place = (int)(row.Number(Field.WindingPair) ?? 3);
            cold._milliohm[place] ??= row.Number(Field.WindingCold);
            cold._celsius[place] ??= row.Number(Field.WindingColdTemperature);
            cold._anyCelsius ??= cold._celsius[place];
        }

        return cold;
    }

    /// <summary>Cold resistance of the pair, mΩ; null when not noted.</summary>
    public double? Milliohm(WindingPair? pair) => _milliohm[Place(pair)];

    /// <summary>Its temperature, °C; as the temperature is the whole motor's, any noted one of the run will do. Null when there is none.</summary>
    public double? Celsius(WindingPair? pair) => _celsius[Place(pair)] ?? _anyCelsius;

    private static int Place(WindingPair? pair) => pair is { } named ? (int)named : 3;
}
