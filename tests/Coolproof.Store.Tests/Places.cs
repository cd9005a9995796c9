namespace Coolproof.Store.Tests;

/// <summary>A fresh place for a notebook on either engine, and a folder that goes when the test is over.</summary>
internal sealed class Places(PostgresServer server) : IDisposable
{
    public const string Sqlite = "SQLite";
    public const string Postgres = "PostgreSQL";

    /// <summary>A temporary folder.</summary>
    public string Folder { get; } = Directory.CreateTempSubdirectory("coolproof-store-").FullName;

    /// <summary>A fresh place.</summary>
    public async Task<string> FreshAsync(string engine) =>
        engine == Sqlite ? Path.Combine(Folder, Guid.NewGuid().ToString("N") + ".coolproof") : await server.FreshAsync();

    /// <summary>A file in the folder.</summary>
    public string FileOf(string name) => Path.Combine(Folder, name);

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
