using Coolproof.Pictures.Drawing;

namespace Coolproof.Pictures.Tests;

/// <summary>The room that words take on the sheet, px.</summary>
internal sealed record Extent(string Text, double Left, double Top, double Right, double Bottom)
{
    public static Extent Of(Writing w)
    {
        double first = Typesetter.BuiltIn.Width(w.Text, w.Size, w.Bold);
        double width = first + (w.Then is { } then ? Typesetter.BuiltIn.Width(then.Text, w.Size, false) : 0);
        double left = w.At.X - (w.Hang == Hang.End ? first : w.Hang == Hang.Middle ? first / 2 : 0);
        return new(w.Text + w.Then?.Text, left, w.At.Y - 0.72 * w.Size, left + width, w.At.Y + 0.18 * w.Size);
    }

    public bool Meets(Extent other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;
}
