namespace Coolproof.Screen;

/// <summary>Where the program reads and writes, and what it knows of the other side.</summary>
/// <param name="In">Opens standard input as bytes.</param>
/// <param name="Out">Answers.</param>
/// <param name="Error">What is being done, and what went wrong.</param>
/// <param name="Ink">Whether answers carry weight and colour.</param>
/// <param name="Width">Columns for people.</param>
/// <param name="ShowsProgress">Whether standard error is a terminal that a moving line can be drawn on.</param>
internal sealed record Terminal(Func<Stream> In, TextWriter Out, TextWriter Error, Ink Ink, int Width, bool ShowsProgress)
{
    /// <summary>Columns where nothing else is known, and the most that lines are made for.</summary>
    public const int FullWidth = 100;

    const int LeastWidth = 60;

    /// <summary>The terminal of this process.</summary>
    public static Terminal OfProcess()
    {
        var terminal = !Console.IsOutputRedirected;
        var plain = Environment.GetEnvironmentVariable("NO_COLOR") is { Length: > 0 } || Environment.GetEnvironmentVariable("TERM") is null or "dumb";
        return new Terminal(
            Console.OpenStandardInput, Console.Out, Console.Error, new Ink(terminal && !plain), terminal ? Columns() : FullWidth,
            !Console.IsErrorRedirected && Environment.GetEnvironmentVariable("TERM") is not (null or "dumb"));
    }

    static int Columns()
    {
        try
        {
            return Console.WindowWidth is > 0 and var columns ? Math.Clamp(columns, LeastWidth, FullWidth) : FullWidth;
        }
        catch (IOException)
        {
            return FullWidth;
        }
    }
}
