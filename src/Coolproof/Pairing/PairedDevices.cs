using System.Security.Cryptography;
using System.Text;
using System.Text.Json;

namespace Coolproof.Pairing;

/// <summary>
/// Who may see the notebook, kept in a small file of their own that only its owner may read: it holds hashes of keys, so that whoever reads it can't come in with them.
/// Several servers of one file see each other's changes.
/// </summary>
internal sealed class PairedDevices(string file, TimeProvider clock)
{
    /// <summary>Longest name, letters.</summary>
    public const int LongestName = 60;

    /// <summary>Most devices; the oldest goes when another one comes.</summary>
    public const int Most = 100;

    readonly Lock turn = new();
    List<PairedDevice> devices = [];
    (DateTime Written, long Length)? known;

    /// <summary>Raised after a device came or went.</summary>
    public event Action? Changed;

    /// <summary>All of them, in the order in which they came.</summary>
    public IReadOnlyList<PairedDevice> All
    {
        get
        {
            lock (turn) return [.. Fresh()];
        }
    }

    /// <summary>Lets a device in.</summary>
    /// <param name="name">What the person calls it.</param>
    /// <returns>Its key, which is nowhere else.</returns>
    public string Add(string name)
    {
        var key = Convert.ToBase64String(RandomNumberGenerator.GetBytes(32)).TrimEnd('=').Replace('+', '-').Replace('/', '_');
        lock (turn)
        {
            var all = Fresh();
            Write([.. all.TakeLast(Most - 1), new PairedDevice(Guid.CreateVersion7(clock.GetUtcNow()), HashOf(key), Clean(name), clock.GetUtcNow())]);
        }
        Changed?.Invoke();
        return key;
    }

    /// <summary>Shuts a device out, from this moment on.</summary>
    /// <returns>Whether it was in.</returns>
    public bool Remove(Guid id)
    {
        lock (turn)
        {
            var all = Fresh();
            if (!all.Exists(device => device.Id == id)) return false;
            Write([.. all.Where(device => device.Id != id)]);
        }
        Changed?.Invoke();
        return true;
    }

    /// <summary>The device with a key; null when there is none.</summary>
    public PairedDevice? With(string key)
    {
        var hash = Encoding.ASCII.GetBytes(HashOf(key));
        lock (turn) return Fresh().Find(device => CryptographicOperations.FixedTimeEquals(Encoding.ASCII.GetBytes(device.Hash), hash));
    }

    /// <summary>Whether a caller is still in.</summary>
    public bool Holds(Caller caller)
    {
        lock (turn) return Fresh().Exists(device => device.Id == caller.Device.Id);
    }

    static string HashOf(string key) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(key)));

    static string Clean(string name)
    {
        var clean = new string([.. name.Trim().Where(letter => !char.IsControl(letter)).Take(LongestName)]);
        return clean.Length > 0 ? clean : "a device without a name";
    }

    List<PairedDevice> Fresh()
    {
        var info = new FileInfo(file);
        if (!info.Exists) return devices = [];
        if (known == (info.LastWriteTimeUtc, info.Length)) return devices;
        devices = JsonSerializer.Deserialize(File.ReadAllBytes(file), PairedJson.Default.ListPairedDevice) ?? [];
        known = (info.LastWriteTimeUtc, info.Length);
        return devices;
    }

    // Whole or not at all: a new name first, synced, then its own.
    void Write(List<PairedDevice> now)
    {
        var beside = $"{file}.{Environment.ProcessId}.part";
        var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows()) options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        using (var stream = new FileStream(beside, options))
        {
            JsonSerializer.Serialize(stream, now, PairedJson.Default.ListPairedDevice);
            stream.Flush(flushToDisk: true);
        }
        File.Move(beside, file, overwrite: true);
        var info = new FileInfo(file);
        (devices, known) = (now, (info.LastWriteTimeUtc, info.Length));
    }
}
