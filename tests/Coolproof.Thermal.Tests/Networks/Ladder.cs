namespace Coolproof.Thermal.Tests;

/// <summary>The four-node ladder of rc-ladder-4.csv (Data/SOURCES.md).</summary>
static class Ladder
{
    public static readonly double[] Start = [25, 25, 25, 25];

    public static Network Network() => new(
        [8, 40, 60, 25], [new(0, 1, 1 / 0.8), new(1, 2, 1 / 1.2), new(2, 3, 1 / 0.5)], [0, 0, 1 / 6.0, 1 / 4.0]);

    public static HeatInterval[] Schedule(Network network) =>
    [
        new(300, network.Heat(25, 25, 0, 0, 0)), new(300, network.Heat(25, 0, 0, 0, 0)), new(300, network.Heat(25, 25, 0, 0, 0)),
    ];
}
