namespace Coolproof.Evidence.Model;

/// <summary>Constants of the motor at one point, heat flows over core capacity.</summary>
internal struct Constants
{
    /// <summary>Core over can capacity, and its logarithm.</summary>
    public double Rho, LogRho;

    /// <summary>Core to can, 1/s.</summary>
    public double Kappa;

    /// <summary>Winding share of the core's capacity.</summary>
    public double Share;

    /// <summary>Slot resistance times core capacity, s: winding excess is this times copper heat.</summary>
    public double Slot;

    /// <summary>One over <see cref="Slot"/>, and over core capacity's ratio <see cref="Rho"/>.</summary>
    public double PerSlot, PerRho;

    /// <summary>1/τ_w, 1/s.</summary>
    public double Nu;

    /// <summary>Copper share of the heat.</summary>
    public double Copper;

    /// <summary>log of mean heat, K/s.</summary>
    public double LogHeat;

    /// <summary>log of the mean heat of the days driven, K/s; of adjoints only.</summary>
    public double DrivenHeat;

    /// <summary>log of the options' mean conductance, 1/s.</summary>
    public double LogConductance;

    // Keeps the logarithm of what is left finite in the adjoint; hours after the stop it doesn't matter.
    private const double LeastLeft = 1e-200;

    /// <summary>Share of the drive's excess that is left in a winding over a core that takes its heat up. Alone the winding would cool by τ_w; with the core warming it goes faster, by the rest of the core's capacity.</summary>
    /// <param name="left">Share by τ_w alone, above 0.</param>
    public readonly double ExcessLeft(double left) => Math.Pow(left, 1 / (1 - Share));

    /// <summary>Winding after the stop, K over the air: what is left of the drive's excess, and the settled lag behind a core that cools into the can, as far as that excess has gone (docs/decisions/a-winding-lags.md).</summary>
    /// <param name="core">Core, K over the air.</param>
    /// <param name="can">Can, K over the air.</param>
    /// <param name="excess">Excess by τ_w alone, K.</param>
    /// <param name="atEnd">Excess at the end of hard driving, K, above 0.</param>
    public readonly double Winding(double core, double can, double excess, double atEnd)
    {
        double excessLeft = ExcessLeft(LeftAlone(excess, atEnd));
        return core + excessLeft * atEnd + (1 - excessLeft) * Kappa / Nu * (core - can);
    }

    /// <summary>Share of the excess that τ_w alone leaves.</summary>
    public static double LeftAlone(double excess, double atEnd) => Math.Max(excess / atEnd, LeastLeft);

    /// <summary>Copper heat at 25 °C core, K/s, of a heat with the winding at 25 °C: the winding's own excess adds to its resistance.</summary>
    public readonly double CopperHeat(double p)
    {
        double plain = Copper * p, x = Priors.Alpha25 * plain * Slot;
        return plain * (1 + x + x * x);
    }
}

/// <summary>One run at one point. Temperatures are K over the run's own air, 1 core, 2 can.</summary>
internal struct RunState
{
    /// <summary>Air, °C.</summary>
    public double Air;

    /// <summary>log of conductance while driving, 1/s over core capacity.</summary>
    public double LogG;

    /// <summary>Mean log heat: without the run's deviation; the heat; and the copper heat that goes with it at 25 °C core, K/s, with its slope by log slot resistance.</summary>
    public double MeanLogP, MeanP, MeanCopper, CopperByLogSlot;

    /// <summary>Heat over mean heat that the readings alone ask for; the can at the mean reading without heat, and for one K/s of heat.</summary>
    public double Ratio, Rest, PerHeat;

    /// <summary>For one K/s of heat: copper heat at mean heat, core at go, core and can at the end and at halt. And core and can without heat at both.</summary>
    public double UnitCopper, UnitGo1, UnitEnd1, UnitEnd2, UnitHalt1, UnitHalt2, RestEnd1, RestEnd2, RestHalt1, RestHalt2;

    /// <summary>Heat deviation of the run, the sd of its standard normal, and its expected value given the rest.</summary>
    public double Deviation, DeviationSd, Expected;

    /// <summary>Precision of the deviation by its spread, its readings and its charge.</summary>
    public double PriorPrecision, LevelPrecision, ChargePrecision;

    /// <summary>Deviation that the readings alone ask for, and the charge alone.</summary>
    public double ByLevel, ByCharge;

    /// <summary>What the charge relation misses in log heat.</summary>
    public double ChargeMiss;

    /// <summary>Heat while driving at 25 °C winding, K/s.</summary>
    public double P;

    /// <summary>Copper heat at 25 °C core, K/s, and its derivative by the log of slot resistance.</summary>
    public double Copper, OwnByLogSlot;

    /// <summary>1 + α(air − 25).</summary>
    public double Warm;

    /// <summary>Heat into the core with the core at air, K/s.</summary>
    public double Drive;

    /// <summary>At go.</summary>
    public double Start1, Start2;

    /// <summary>Derivative of core over can at go by its parameter, K, for a run without clock.</summary>
    public double CoreSlope;

    /// <summary>Core at go less the warmth that the winding takes up first.</summary>
    public double Go1;

    /// <summary>At the end of hard driving; winding over core.</summary>
    public double End1, End2, EndExcess;

    /// <summary>At halt.</summary>
    public double Halt1, Halt2, HaltExcess;

    /// <summary>When the fan stopped.</summary>
    public double Still1, Still2, StillExcess;

    /// <summary>Chained state entering the rest, in this run's air.</summary>
    public double Before1, Before2;
}

/// <summary>Adjoints of a run's state.</summary>
internal struct RunAdjoint
{
    public double Air, MeanLogP, MeanCopper, Copper, Warm, Drive, Start1, Start2, Go1, End1, End2, EndExcess, Halt1, Halt2, HaltExcess, Still1, Still2, StillExcess;
}

/// <summary>What a reading sees at one point.</summary>
internal struct ReadingState
{
    /// <summary>Seconds from halt.</summary>
    public double Delay;

    /// <summary>Core, can and winding, K over the air.</summary>
    public double Core, Can, Winding;

    /// <summary>Expected reading without aim loss, °C.</summary>
    public double Mean;

    /// <summary>Mean aim loss, K.</summary>
    public double Loss;

    /// <summary>Share of the room below a cut-off delay, and the gap, s.</summary>
    public double Logistic, Gap;

    /// <summary>Adjoint of the delay.</summary>
    public double DelayBar;
}
