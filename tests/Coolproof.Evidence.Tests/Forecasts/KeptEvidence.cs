using System.Security.Cryptography;
using System.Text.Json;
using Coolproof.Evidence.Forecasts;
using Coolproof.Notebook;

namespace Coolproof.Evidence.Tests.Forecasts;

/// <summary>
/// What judged notebooks say of races, kept in the folder named by COOLPROOF_FORECAST_KEPT: a change of the forecast alone is then measured in seconds. Name another folder once the model has changed; a notebook that has changed is judged anew.
/// </summary>
internal static class KeptEvidence
{
    public static RaceEvidence? Of(string name, ReadingsTable table, Func<RaceEvidence?> judged)
    {
        if (Environment.GetEnvironmentVariable("COOLPROOF_FORECAST_KEPT") is not { Length: > 0 } folder)
            return judged();
        string noted = Convert.ToHexStringLower(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes(table.Runs)))[..8], path = Path.Combine(folder, $"{name}-{noted}.json");
        if (File.Exists(path))
            return JsonSerializer.Deserialize<RaceEvidence?>(File.ReadAllText(path));
        RaceEvidence? evidence = judged();
        Directory.CreateDirectory(folder);
        // Whole or not there at all: a run of the tests may be stopped at any time.
        File.WriteAllText(path + ".part", JsonSerializer.Serialize(evidence));
        File.Move(path + ".part", path, overwrite: true);
        return evidence;
    }
}
