using System.Globalization;
using Coolproof.Live;
using Coolproof.Live.Shown;
using Coolproof.Pages.Shown;
using Coolproof.Words;

namespace Coolproof.Sensors;

/// <summary>Values of live sensors as they are said, in the device's degrees.</summary>
internal static class SensorWords
{
    const string Celsius = "°C";
    const string Ago = " ago";

    /// <summary>A value with as many decimals as it is worth: one for temperatures, else about four digits.</summary>
    public static string Number(double value, string unit, DegreeWords degrees) => unit == Celsius
        ? DegreeWords.Number(degrees.Temperature(value), 1)
        : DegreeWords.Number(value, Math.Abs(value) switch { >= 1000 => 0, >= 100 => 1, >= 1 => 2, _ => 3 });

    /// <summary>The unit shown.</summary>
    public static string Unit(string unit, DegreeWords degrees) => unit == Celsius ? degrees.Unit : unit;

    /// <summary>How old a value is, like "12 s ago".</summary>
    public static string Age(double seconds) => seconds switch
    {
        < 1.5 => "now",
        < 120 => string.Create(CultureInfo.InvariantCulture, $"{seconds:0} s ago"),
        < 5400 => string.Create(CultureInfo.InvariantCulture, $"{seconds / 60:0} min ago"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{seconds / 3600:0} h ago"),
    };

    /// <summary>What is the matter with a channel; empty where nothing is.</summary>
    public static string Matter(ShownChannel one) => one.State switch
    {
        ChannelState.Silent => "Silent: look at its plug and its power.",
        ChannelState.Nonsense => $"Nonsense: {one.Doubt}.",
        _ => "",
    };

    /// <summary>The span of the picture, like "58.1 to 64.3 °C"; empty where it holds nothing.</summary>
    public static string Span(ShownChannel one, DegreeWords degrees) => double.IsNaN(one.Picture.Low) ? ""
        : $"{Number(one.Picture.Low, one.Channel.Unit, degrees)} to {Number(one.Picture.High, one.Channel.Unit, degrees)} {Unit(one.Channel.Unit, degrees)}".TrimEnd();

    /// <summary>The gaps of the picture in words; empty where there are none.</summary>
    public static string Gaps(ShownChannel one) => one.Picture.GapCount == 0 ? "" : TimeWords.Count(one.Picture.GapCount, "gap");

    /// <summary>How a source does, in a sentence.</summary>
    public static string Says(SourceState source, DateTimeOffset now) => source.Alive
        ? TimeWords.Ago(NodaTime.Duration.FromTimeSpan(now - source.Since)) is var age && age.EndsWith(Ago, StringComparison.Ordinal) ? $"Connected for {age[..^Ago.Length]}." : "Connected just now."
        : source.Trouble ?? "Not connected.";

    /// <summary>The lead of the page of sensors.</summary>
    public static string Lead(SensorView view)
    {
        if (view.Channels.Count == 0) return view.Sources.Count == 0 ? "No sensor is connected" : "No value has come yet";
        var silent = view.Channels.Count(one => one.State == ChannelState.Silent);
        var live = view.Channels.Count - silent;
        return silent == 0 ? $"{TimeWords.Capital(TimeWords.Count(live, "sensor"))} {(live == 1 ? "is" : "are")} heard"
            : $"{(live == 0 ? "No sensor is heard" : $"{TimeWords.Capital(TimeWords.Count(live, "sensor"))} {(live == 1 ? "is" : "are")} heard")}, {silent} {(silent == 1 ? "is" : "are")} silent";
    }
}
