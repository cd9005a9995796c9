using Coolproof.Advice.Laps;
using Coolproof.Thermal;
using Coolproof.Traces.Import;

namespace Coolproof.Commands;

/// <summary>Speed out of a logger's file: its channel of speed, or where there is none the motor's turning.</summary>
/// <param name="Channel">Name of the channel.</param>
/// <param name="Turning">Whether it is the motor's turning, 1/min; else speed, m/s.</param>
/// <param name="Samples">Time from the first row, s, and value; thinned to 25 a second by means.</param>
internal sealed record LoggedSpeed(string Channel, bool Turning, IReadOnlyList<(double AtS, double Value)> Samples)
{
    const double BinS = 0.04;

    /// <summary>Reads it.</summary>
    /// <param name="stream">The file.</param>
    /// <exception cref="TraceRefusedException">It can't be read, or no channel tells the speed; the problem says where, and what would be right.</exception>
    public static LoggedSpeed Of(Stream stream)
    {
        var file = LogFile.Open(stream);
        var layout = LayoutGuess.Of(file.Head);
        var channel = layout.Channels.FirstOrDefault(one => one.Unit.Measures == Measured.Speed) ?? layout.Channels.FirstOrDefault(one => one.Unit.Measures == Measured.Turning)
            ?? throw new TraceRefusedException(new TraceProblem(
                layout.HeaderLine, "", $"no speed with a unit among {string.Join(", ", layout.Channels.Select(one => $"{one.Name} {one.Unit.Name}".Trim()).Take(12))}",
                "time, and a column such as speed_kmh, speed (m/s), speed mph, or rpm of the motor"));
        Bins bins = new(channel.Unit);
        var read = file.Read(layout with { Channels = [channel] }, bins.Take, 1);
        return read.Problems.Count > read.Rows
            ? throw new TraceRefusedException(read.Problems.First[0])
            : new(channel.Name, channel.Unit.Measures == Measured.Turning, bins.Done());
    }

    /// <summary>Speed over time.</summary>
    /// <param name="rolloutM">Way of the car for one turn of the motor, m.</param>
    /// <exception cref="LapException">It is no driving; the message says where, and what would be right.</exception>
    public SpeedTrace Trace(double rolloutM) => SpeedTrace.Of(Turning ? [.. Samples.Select(one => (one.AtS, one.Value / 60 * rolloutM))] : Samples);

    /// <summary>Means over equal times: a mean of times and one of values, so that nothing is shifted.</summary>
    sealed class Bins(ChannelUnit unit)
    {
        readonly List<(double AtS, double Value)> _means = [];
        long _first = -1, _bin = -1, _count;
        double _atSum, _valueSum;

        public void Take(TraceRows rows)
        {
            var times = rows.AtUs;
            var values = rows.Values(0);
            if (_first < 0) _first = times[0];
            for (var i = 0; i < times.Length; i++)
            {
                if (double.IsNaN(values[i])) continue;
                var at = (times[i] - _first) / 1e6;
                var bin = (long)(at / BinS);
                if (bin != _bin) Close();
                _bin = bin;
                _count++;
                _atSum += at;
                _valueSum += unit.Own(values[i]);
            }
        }

        public IReadOnlyList<(double AtS, double Value)> Done()
        {
            Close();
            return _means;
        }

        void Close()
        {
            if (_count > 0) _means.Add((_atSum / _count, _valueSum / _count));
            (_count, _atSum, _valueSum) = (0, 0, 0);
        }
    }
}
