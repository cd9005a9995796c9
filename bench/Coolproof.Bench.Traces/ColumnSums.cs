using System.Globalization;

namespace Coolproof.Bench.Traces;

/// <summary>How many rows a file has and what each column adds up to.</summary>
internal sealed record ColumnSums(long Rows, double TimeS, double Can, double Current, double Turning)
{
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Rows}\t{TimeS:R}\t{Can:R}\t{Current:R}\t{Turning:R}");
}
