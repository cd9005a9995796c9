using Coolproof.Pictures.Drawing;

namespace Coolproof.Pictures.Tests;

public sealed class MountPictureTests
{
    private static Picture Drawn(int width = PictureStyle.PageWidthPx) => MountPicture.Of(MountSheets.Sheet(MountSheets.All().Mounts[1]), null, new(width));

    // The mount: can 36 by 52 mm, fan of 25 by 10 mm 8 mm over it, shell 24 mm over it.
    [Theory]
    [InlineData(PictureStyle.PageWidthPx)]
    [InlineData(PictureStyle.PhoneWidthPx)]
    public void All_that_is_measured_is_drawn_to_one_scale(int width)
    {
        Area[] boxes = [.. Drawn(width).Shapes.OfType<Area>().Where(a => a.Corners.Count == 4 && a.OutlineWidth > 0)];
        Area can = boxes.Single(b => Math.Abs(Wide(b) / Tall(b) - 52.0 / 36) < 1e-6);
        double px = Wide(can) / 52;
        Area[] fans = [.. boxes.Where(b => Math.Abs(Wide(b) / px - 25) < 1e-6 && Math.Abs(Tall(b) / px - 10) < 1e-6)];
        Assert.Equal(2, fans.Length);
        Assert.Contains(fans, fan => Math.Abs((can.Corners.Min(c => c.Y) - fan.Corners.Max(c => c.Y)) / px - 8) < 1e-6);
        Assert.Contains(Drawn(width).Shapes.OfType<Stroke>(), s => s.Spots.Count == 2 && s.Spots[0].Y == s.Spots[1].Y && Math.Abs((can.Corners.Min(c => c.Y) - s.Spots[0].Y) / px - 24) < 1e-6);
        Area round = Drawn(width).Shapes.OfType<Area>().Single(a => a.Corners.Count == 64);
        Assert.Equal(36, Wide(round) / px, 6);
    }

    [Fact]
    public void Every_measure_stands_in_words_too()
    {
        string[] said = [.. Drawn().Words.Select(w => w.Text.Replace('\u00a0', ' '))];
        foreach (string measure in new[] { "shell, 24 mm from the can, rim 70 % open", "inlet gap 6 mm", "fan 25 mm, 10 mm thick, 4.5 m³/h free", "gap 8 mm", "can 36 mm across, 52 mm long", "clamp over 35 % of the can, fins 60 cm²" })
        {
            Assert.Contains(measure, said);
            Assert.Contains(measure, Drawn().Description);
        }
    }

    private static double Wide(Area area) => area.Corners.Max(c => c.X) - area.Corners.Min(c => c.X);

    private static double Tall(Area area) => area.Corners.Max(c => c.Y) - area.Corners.Min(c => c.Y);
}
