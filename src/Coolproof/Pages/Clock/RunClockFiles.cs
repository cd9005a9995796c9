using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using Microsoft.Extensions.FileProviders;

namespace Coolproof.Pages.Clock;

/// <summary>
/// The run clock's modules and style, under a path that changes with their content. All of a page come from one version, whether from the server, from the browser's
/// store or from the service worker: half an old clock and half a new one never meet.
/// </summary>
internal sealed class RunClockFiles
{
    const string Folder = "run-clock";
    const string Worker = "worker.js";

    static readonly Dictionary<string, string> Types = new() { [".js"] = "text/javascript", [".css"] = "text/css" };

    readonly Dictionary<string, Held> files;

    /// <summary>Reads the files from the root of the web.</summary>
    public RunClockFiles(IWebHostEnvironment environment)
    {
        files = environment.WebRootFileProvider.GetDirectoryContents(Folder)
            .Where(file => !file.IsDirectory && Types.ContainsKey(Path.GetExtension(file.Name)))
            .OrderBy(file => file.Name, StringComparer.Ordinal).ToDictionary(file => file.Name, Read);
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var (name, held) in files)
        {
            hash.AppendData(Encoding.UTF8.GetBytes(name));
            hash.AppendData(held.Plain);
        }
        Version = Convert.ToHexStringLower(hash.GetHashAndReset())[..16];
    }

    /// <summary>Hash of all files.</summary>
    public string Version { get; }

    /// <summary>Modules that the page loads, in one go.</summary>
    public IReadOnlyList<string> Modules => [.. files.Keys.Where(name => name.EndsWith(".js", StringComparison.Ordinal) && name != Worker).Select(Address)];

    /// <summary>Where a file is.</summary>
    public string Address(string name) => $"/{Folder}/{Version}/{name}";

    /// <summary>A file of this version.</summary>
    public IResult Get(string version, string name, HttpContext context)
    {
        if (version != Version || name == Worker || !files.TryGetValue(name, out var held)) return Results.NotFound();
        context.Response.Headers.CacheControl = "public, max-age=31536000, immutable";
        context.Response.Headers.Vary = "Accept-Encoding";
        if (!context.Request.Headers.AcceptEncoding.ToString().Contains("gzip", StringComparison.Ordinal)) return Results.Bytes(held.Plain, held.Type);
        context.Response.Headers.ContentEncoding = "gzip";
        return Results.Bytes(held.Packed.Value, held.Type);
    }

    /// <summary>The service worker, told what to keep. Browsers look at it anew each time, and take it up when a byte has changed.</summary>
    public IResult GetWorker(HttpContext context)
    {
        var kept = Modules.Append(Address("run-clock.css")).Append("/icon.svg").Select(address => $"\"{address}\"");
        context.Response.Headers.CacheControl = "no-cache";
        return Results.Text($"const VERSION = \"{Version}\";\nconst FILES = [{string.Join(", ", kept)}];\n{Encoding.UTF8.GetString(files[Worker].Plain)}", Types[".js"], Encoding.UTF8);
    }

    static Held Read(IFileInfo file)
    {
        using var stream = file.CreateReadStream();
        using var plain = new MemoryStream();
        stream.CopyTo(plain);
        return new Held(plain.ToArray(), Types[Path.GetExtension(file.Name)]);
    }

    sealed record Held(byte[] Plain, string Type)
    {
        public Lazy<byte[]> Packed { get; } = new(() => Pack(Plain));
    }

    /// <summary>Bytes, packed.</summary>
    internal static byte[] Pack(ReadOnlySpan<byte> plain)
    {
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.Optimal)) gzip.Write(plain);
        return packed.ToArray();
    }
}
