using System.Text;

namespace Coolproof.Notebook.Tests;

/// <summary>Reads tables that stand in tests as text or bytes.</summary>
internal static class TableText
{
    public static TableRead Read(string text, double? givenDriveS = null) => Read(Encoding.UTF8.GetBytes(text), givenDriveS);

    public static TableRead Read(byte[] bytes, double? givenDriveS = null) => ReadingsTableReader.Read(new MemoryStream(bytes), givenDriveS);

    public static ReadingsTable Understood(string text, double? givenDriveS = null) => Understood(Read(text, givenDriveS));

    public static ReadingsTable Understood(TableRead read)
    {
        Assert.True(read.Understood, string.Join("\n", read.Problems));
        Assert.Empty(read.Problems);
        return read.Table!;
    }

    /// <summary>The only problem of a table that has one.</summary>
    public static TableProblem OnlyProblem(string text, double? givenDriveS = null) => OnlyProblem(Read(text, givenDriveS));

    public static TableProblem OnlyProblem(TableRead read)
    {
        Assert.False(read.Understood);
        return Assert.Single(read.Problems);
    }

    public static string Written(ReadingsTable table, TemperatureUnitChoice unit = TemperatureUnitChoice.Celsius)
    {
        StringWriter writer = new();
        ReadingsTableWriter.Write(table, writer, unit);
        return writer.ToString();
    }
}
