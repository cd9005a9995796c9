using System.Text.Json;

namespace Coolproof.Sampling.Tests.Posteriors;

/// <summary>One data set of the Data/posteriordb folder.</summary>
sealed class DataFile(string name)
{
    readonly JsonElement root = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Data", "posteriordb", name + ".json"))).RootElement;

    public double Number(string field) => root.GetProperty(field).GetDouble();

    public double[] Column(string field) => [.. root.GetProperty(field).EnumerateArray().Select(x => x.GetDouble())];

    public double[][] Rows(string field) => [.. root.GetProperty(field).EnumerateArray().Select(row => row.EnumerateArray().Select(x => x.GetDouble()).ToArray())];
}
