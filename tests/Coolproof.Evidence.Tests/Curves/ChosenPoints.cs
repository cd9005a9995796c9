using Coolproof.Evidence.Model;
using Coolproof.Notebook;

namespace Coolproof.Evidence.Tests.Curves;

/// <summary>Posteriors that are points of the plain model chosen by hand, for what can be worked out without sampling.</summary>
internal static class ChosenPoints
{
    /// <summary>Each point sets some parameters by name; the rest are at their prior's middle.</summary>
    public static Posterior Of(ReadingsTable table, params Dictionary<string, double>[] draws)
    {
        DayModel model = DayModelBuilder.Build(table);
        double[][] points = [.. draws.Select(set => model.Parameters.Select(p => set.TryGetValue(p.Name, out double u) ? u : Middle(p)).ToArray())];
        return new(table, new(model, [], null!, 0), points, new(30, 360), [.. Enumerable.Range(0, table.Options.Count)], [], [], []);
    }

    private static double Middle(Parameter p) => p.Prior == PriorKind.LogGamma ? Math.Log(p.B) : p.Prior == PriorKind.Known ? p.A : 0;
}
