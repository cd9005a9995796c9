using System.Diagnostics;
using Coolproof.Evidence;

namespace Coolproof.Screen;

/// <summary>One moving line on standard error, shown only when the work takes longer than half a second.</summary>
internal sealed class ProgressLine(TextWriter error, bool shown) : IProgress<JudgeProgress>, IDisposable
{
    static readonly TimeSpan Patience = TimeSpan.FromSeconds(0.5);
    static readonly TimeSpan Between = TimeSpan.FromSeconds(0.1);

    readonly Lock gate = new();
    readonly long start = Stopwatch.GetTimestamp();
    TimeSpan next = Patience;
    int width;

    /// <inheritdoc/>
    public void Report(JudgeProgress value)
    {
        if (!shown) return;
        var now = Stopwatch.GetElapsedTime(start);
        lock (gate)
        {
            if (now < next) return;
            next = now + Between;
            var line = Cells.Fit($"{value.Doing} … {Math.Clamp(value.Fraction, 0, 1) * 100:0} %", 78);
            error.Write('\r' + Cells.Left(line, width));
            error.Flush();
            width = Cells.Width(line);
        }
    }

    /// <summary>The line for one kind of work, told by the part that is done.</summary>
    /// <param name="doing">What is being done.</param>
    public IProgress<double> For(string doing) => new Part(this, doing);

    /// <summary>Wipes the line.</summary>
    public void Dispose()
    {
        lock (gate)
        {
            if (width > 0) error.Write('\r' + new string(' ', width) + '\r');
            width = 0;
            next = TimeSpan.MaxValue;
        }
    }

    sealed class Part(ProgressLine line, string doing) : IProgress<double>
    {
        public void Report(double value) => line.Report(new(doing, value));
    }
}
