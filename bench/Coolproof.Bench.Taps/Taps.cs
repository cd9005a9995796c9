using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace Coolproof.Bench.Taps;

/// <summary>How long a tap waits for its acknowledgement.</summary>
internal static class Taps
{
    private const int Phones = 50;
    private const int WarmUp = 3;

    public static async Task<string> MeasureAsync(Served served, string title, TimeSpan pause, int taps)
    {
        long from = Stopwatch.GetTimestamp();
        double[][] each = await Task.WhenAll(Enumerable.Range(0, Phones).Select(phone => PhoneAsync(served, phone, pause, taps)));
        double seconds = Stopwatch.GetElapsedTime(from).TotalSeconds;
        double[] all = [.. each.SelectMany(times => times).Order()];
        return string.Create(CultureInfo.InvariantCulture, $"{title}: acknowledged after {At(all, 0.5):0.0} ms (half), {At(all, 0.95):0.0} ms (19 in 20), {At(all, 0.99):0.0} ms (99 in 100), {all[^1]:0.0} ms (worst of {all.Length}); {Phones * (taps + WarmUp) / seconds:0} taps/s");
    }

    private static async Task<double[]> PhoneAsync(Served served, int phone, TimeSpan pause, int taps)
    {
        using HttpClient client = served.Client();
        (Guid device, Guid run) = (Guid.CreateVersion7(), Guid.CreateVersion7());
        // Phones don't tap in step.
        await Task.Delay(pause * phone / Phones);
        double[] times = new double[taps];
        for (int tap = -WarmUp; tap < taps; tap++)
        {
            Guid id = Guid.CreateVersion7();
            string at = DateTime.UtcNow.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture);
            string batch = $$$"""{"device":"{{{device}}}","sentAt":"{{{at}}}","entries":[{"id":"{{{id}}}","kind":"run.lap","at":"{{{at}}}","about":"{{{run}}}","corrects":null,"body":{}}]}""";
            long from = Stopwatch.GetTimestamp();
            using HttpResponseMessage answer = await client.PostAsync("/api/entries", new StringContent(batch, Encoding.UTF8, "application/json"));
            string text = await answer.Content.ReadAsStringAsync();
            if (tap >= 0) times[tap] = Stopwatch.GetElapsedTime(from).TotalMilliseconds;
            if (!text.Contains(id.ToString(), StringComparison.Ordinal)) throw new InvalidOperationException($"not acknowledged: {text}");
            if (pause > TimeSpan.Zero) await Task.Delay(pause);
        }

        return times;
    }

    public static double At(double[] sorted, double part) => sorted[Math.Min(sorted.Length - 1, (int)Math.Ceiling(part * sorted.Length) - 1)];
}
