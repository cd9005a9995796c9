using Coolproof.Thermal.FullModel;

namespace Coolproof.Rehearsal;

/// <summary>A cooling option as it truly is.</summary>
/// <param name="Name">Its name.</param>
/// <param name="WattsPerKelvin">Watts shed per degree from can to free air while driving, can 40 K above air of 25 °C, W/K.</param>
/// <param name="HasFan">Whether it has a fan of its own.</param>
/// <param name="SameAs">The option that it is in truth, where it is entered under a second name.</param>
/// <param name="Cooling">The full model's description.</param>
public sealed record TrueOption(string Name, double WattsPerKelvin, bool HasFan, string? SameAs, CoolingOption Cooling)
{
    /// <summary>Draws the options of a rehearsal: log conductances so that fair can peaks spread with the sd stated, shares one by one.</summary>
    internal static (IReadOnlyList<TrueOption> Options, double LogSd) Drawn(World world, RehearsalSettings settings)
    {
        const double Step = 0.05;
        double kPerLog = (world.NominalCanC(world.BaseWPerK * Math.Exp(-Step)) - world.NominalCanC(world.BaseWPerK * Math.Exp(Step))) / (2 * Step);
        double logSd = TruthRanges.OptionSdK / kPerLog;
        List<TrueOption> options = [];
        for (int k = 0; k < settings.Options.Count; k++)
        {
            RehearsalOption asked = settings.Options[k];
            if (asked.SameAs is not null)
            {
                TrueOption first = options.Find(o => o.Name == asked.SameAs)
                    ?? throw new ArgumentException($"Option \"{asked.Name}\" is said to be \"{asked.SameAs}\", which does not stand before it.", nameof(settings));
                options.Add(first with { Name = asked.Name, SameAs = first.Name });
                continue;
            }
            RandomStream chance = new(settings.Seed, "option", k);
            double drawn = world.BaseWPerK * Math.Exp(chance.Normal(logSd));
            double wPerK = asked.WattsPerKelvin ?? world.MassScale * TruthRanges.OptionWPerK.Clamp(drawn / world.MassScale);
            options.Add(new(asked.Name, wPerK, asked.HasFan, null, OptionShapes.Drawn(world, wPerK, asked.HasFan, chance)));
        }
        return (options, logSd);
    }
}
