namespace Coolproof.Evidence.Model;

/// <summary>How a run begins.</summary>
internal enum StartMode
{
    /// <summary>From the run before it by clock time.</summary>
    Chained,

    /// <summary>First run of a day with clock times.</summary>
    FirstOfDay,

    /// <summary>No clock times.</summary>
    Unclocked,
}

/// <summary>A run as the model sees it. Indices point into the parameter vector; −1 means none.</summary>
internal sealed class ModelRun
{
    public required int TableRun { get; init; }
    public required int Day { get; init; }
    public required int Option { get; init; }
    public required StartMode Start { get; init; }
    public required double DriveS { get; init; }

    /// <summary>Log of the share of the drive that was driven, not stood.</summary>
    public required double LogDriven { get; init; }

    public required double AirC { get; init; }
    public required double AirSd { get; init; }

    /// <summary>Can before the run as noted, °C; NaN when not.</summary>
    public required double StartC { get; init; }

    /// <summary>Seconds from the halt before to go, for a chained run.</summary>
    public double RestS { get; set; }

    /// <summary>Roll-in as noted, s; NaN when not.</summary>
    public required double RollInS { get; init; }

    /// <summary>Seconds from halt to power off where that stops the fan; NaN when not.</summary>
    public required double FanStopsS { get; init; }

    /// <summary>Sd of a fixed log-heat deviation; 0 where the run is a member of the run-heat group.</summary>
    public required double OwnHeatSd { get; init; }

    /// <summary>Factor on a grouped heat deviation (3 for a race).</summary>
    public required double HeatFactor { get; init; }

    /// <summary>Place in the day, −0.5 first to 0.5 last.</summary>
    public double DayPlace { get; set; }

    /// <summary>log(charge/drive) minus the table's mean; NaN when not noted.</summary>
    public double ChargeRate { get; set; } = double.NaN;

    public int Pack { get; set; } = -1;
    public int RatioEntry { get; set; } = -1;
    public int FanOffEntry { get; set; } = -1;

    /// <summary>Parameters with a factor that add to log heat: levels, slopes.</summary>
    public HeatTerm[] HeatTerms { get; set; } = [];

    public int Mounting { get; set; } = -1;
    public int Heat { get; set; } = -1;
    public int Air { get; set; } = -1;
    public int Rest { get; set; } = -1;
    public int StartCan { get; set; } = -1;
    public int StartCore { get; set; } = -1;
    public int RollIn { get; set; } = -1;

    public int RestStep { get; set; } = -1;
    public int DriveStep { get; set; }
    public int RollStep { get; set; }
    public int FanStopStep { get; set; } = -1;

    /// <summary>First of its readings and one past the last.</summary>
    public int FirstReading { get; set; }
    public int EndReading { get; set; }
}

/// <summary>What a reading sees.</summary>
internal enum ReadingOn { Can, Endbell, WindingByResistance, WindingByGun }

/// <summary>A reading as the model sees it.</summary>
internal sealed class ModelReading
{
    public required int TableRun { get; init; }
    public required int TableReading { get; init; }
    public required int Run { get; init; }
    public required ReadingOn On { get; init; }
    public required double ValueC { get; init; }

    /// <summary>Seconds from halt; NaN when not noted.</summary>
    public required double DelayS { get; init; }

    /// <summary>Log of the gap since the reading before (or of the delay), or its logit below <see cref="Before"/>; −1 when noted.</summary>
    public int Gap { get; set; } = -1;

    /// <summary>Reading whose delay the gap adds to; −1: the halt.</summary>
    public int After { get; set; } = -1;

    /// <summary>A later reading's noted delay, s, that this one can't pass; NaN when none.</summary>
    public double Before { get; set; } = double.NaN;

    public required int Instrument { get; init; }
    public required int Gain { get; init; }
    public required double MaxFactor { get; init; }
    public int EndbellEntry { get; set; } = -1;
    public int Step { get; set; }

    /// <summary>Whether it is seen from the state when the fan stopped rather than from the halt.</summary>
    public bool FromFanStop { get; set; }
}
