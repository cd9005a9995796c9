using DuckDB.NET.Data;

namespace Coolproof.Bench.Traces;

/// <summary>The same file by DuckDB in the same process: columns told to be doubles, or found out by it; all columns added up while it reads, or read into a table and added up.</summary>
internal static class PeerWay
{
    const string Columns = "columns = {'t': 'DOUBLE', 'can': 'DOUBLE', 'current': 'DOUBLE', 'turning': 'DOUBLE'}";

    public static ColumnSums Sums(string path) => With(path, $"SELECT count(*), sum(t), sum(can), sum(current), sum(turning) FROM read_csv({Quoted(path)}, header = true, {Columns})");

    public static ColumnSums Table(string path) => With(path, "SELECT count(*), sum(t), sum(can), sum(current), sum(turning) FROM log", $"CREATE TABLE log AS SELECT * FROM read_csv({Quoted(path)}, header = true, {Columns})");

    static ColumnSums With(string path, string ask, string? first = null)
    {
        // A table in memory is held whole; on disk it is compressed and written, which is more like keeping.
        string place = first is null ? ":memory:" : path + ".duck";
        try
        {
            using DuckDBConnection connection = new($"DataSource={place}");
            connection.Open();
            using DuckDBCommand command = connection.CreateCommand();
            if (first is not null)
            {
                command.CommandText = first;
                command.ExecuteNonQuery();
            }
            command.CommandText = ask;
            using var row = command.ExecuteReader();
            row.Read();
            return new ColumnSums(row.GetInt64(0), row.GetDouble(1), row.GetDouble(2), row.GetDouble(3), row.GetDouble(4));
        }
        finally
        {
            File.Delete(place);
        }
    }

    static string Quoted(string path) => $"'{path.Replace("'", "''")}'";
}
