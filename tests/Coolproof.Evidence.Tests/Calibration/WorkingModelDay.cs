using Coolproof.Evidence.Model;
using Coolproof.Notebook;
using Coolproof.Sampling;
using NodaTime;

namespace Coolproof.Evidence.Tests.Calibration;

/// <summary>A small day of two options twice each, made by the working model itself: what is noted varies from day to day.</summary>
/// <param name="Table">The table, with readings and noted starts as the model made them.</param>
/// <param name="Model">The model that made it.</param>
/// <param name="Truth">Its parameters.</param>
internal sealed record WorkingModelDay(ReadingsTable Table, DayModel Model, double[] Truth)
{
    private const int Options = 2, Rounds = 2;

    /// <summary>Draws what is noted, then the parameters, then the readings.</summary>
    public static WorkingModelDay Drawn(RandomStream chance)
    {
        ReadingsTable blank = Blank(chance);
        DayModel model = DayModelBuilder.Build(blank);
        double[] truth = PriorDraw.Of(model, chance);
        DayDensity density = new(model);
        density.Visit(truth);
        int next = 0;
        List<Run> runs = [];
        for (int r = 0; r < blank.Runs.Count; r++)
        {
            Run run = blank.Runs[r];
            List<Reading> readings = [];
            foreach (Reading reading in run.Readings)
                readings.Add(reading with { ReadC = PriorDraw.Reading(density.Seen[next++], density.Guns[0].Scatter, chance) });
            // A start that was noted is data where the chain says where the can is; where nothing does it is what the start is drawn about.
            bool made = run.StartC is not null && model.Runs[r].Start == StartMode.Chained;
            RunState state = density.States[r];
            runs.Add(run with { Readings = readings, StartC = made ? state.Start2 + state.Air + Priors.StartNotedSd * chance.NextNormal() : run.StartC });
        }
        return new(blank with { Runs = runs }, model, truth);
    }

    private static ReadingsTable Blank(RandomStream chance)
    {
        bool clock = Toss(chance), fixedOrder = Toss(chance), starts = Toss(chance);
        FanAfterStop fan = (FanAfterStop)chance.NextIndex(3);
        int shots = 1 + chance.NextIndex(3);
        List<Run> runs = [];
        for (int i = 0; i < Options * Rounds; i++)
        {
            bool delays = Toss(chance), rollIn = Toss(chance);
            int option = fixedOrder || i < Options ? i % Options : Options - 1 - i % Options;
            double first = 6 + 20 * chance.NextUniform();
            runs.Add(new(
                "day", $"{i + 1}", $"option {(char)('A' + option)}", clock ? new LocalDateTime(2026, 6, 1, 15, 0).PlusMinutes(22 * i) : null, null, RunKind.Test,
                350 + chance.NextIndex(20), false, rollIn ? 3 + chance.NextIndex(8) : null, 0, CutShort.No, 24 + 4 * chance.NextUniform(), AirSource.Thermometer, starts && Toss(chance) ? 30 : null,
                null, FanInRun.Ok, fan, null, new(), new(),
                [.. Enumerable.Range(0, shots).Select(k => new Reading(0, 50, delays ? first + 7 * k : null, Surface: SpotSurface.Tape))]));
        }
        return new(runs, [], ["option A", "option B"]);
    }

    private static bool Toss(RandomStream chance) => chance.NextUniform() < 0.5;
}
