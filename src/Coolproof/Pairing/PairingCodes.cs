using System.Net;
using System.Security.Cryptography;
using System.Text;

namespace Coolproof.Pairing;

/// <summary>A code that lets one device in.</summary>
/// <param name="Digits">To be typed: six digits.</param>
/// <param name="Long">To be scanned: in the address of a QR code.</param>
/// <param name="Until">When it ends.</param>
internal sealed record PairingCode(string Digits, string Long, DateTimeOffset Until);

/// <summary>What came of entering a code.</summary>
internal enum CodeAnswer
{
    /// <summary>It was right, and is used up.</summary>
    Right,
    /// <summary>It is none, was used, or has ended.</summary>
    Wrong,
    /// <summary>Too many wrong ones came: nothing is looked at for a while.</summary>
    TooMany
}

/// <summary>
/// Codes of a server: single use, for a few minutes. Six digits stand against guessing since wrong ones are counted: five in a minute from one address, and twenty
/// from anywhere end every code that is out.
/// </summary>
internal sealed class PairingCodes(TimeProvider clock)
{
    /// <summary>How long a code holds.</summary>
    public static readonly TimeSpan Holds = TimeSpan.FromMinutes(5);

    /// <summary>How long an address has to wait after too many wrong ones.</summary>
    public static readonly TimeSpan Wait = TimeSpan.FromMinutes(1);

    const int WrongFromOne = 5;
    const int WrongFromAll = 20;
    const int MostOut = 8;
    const int MostAddresses = 1000;

    readonly Lock turn = new();
    readonly List<PairingCode> outstanding = [];
    readonly Dictionary<IPAddress, Queue<DateTimeOffset>> wrong = [];
    int wrongFromAll;

    /// <summary>A new code.</summary>
    public PairingCode Make(TimeSpan? holds = null)
    {
        lock (turn)
        {
            Forget();
            if (outstanding.Count >= MostOut) outstanding.RemoveAt(0);
            var code = new PairingCode(
                RandomNumberGenerator.GetInt32(1_000_000).ToString("D6", System.Globalization.CultureInfo.InvariantCulture),
                Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16)), clock.GetUtcNow() + (holds ?? Holds));
            outstanding.Add(code);
            wrongFromAll = 0;
            return code;
        }
    }

    /// <summary>The newest code that holds still; null when none does.</summary>
    public PairingCode? Latest
    {
        get
        {
            lock (turn)
            {
                Forget();
                return outstanding.LastOrDefault();
            }
        }
    }

    /// <summary>Enters a code.</summary>
    /// <param name="entered">As typed (blanks and hyphens don't matter), or the long one.</param>
    /// <param name="from">Whence.</param>
    public CodeAnswer Enter(string entered, IPAddress from)
    {
        var clean = new string([.. entered.Where(char.IsAsciiLetterOrDigit)]).ToLowerInvariant();
        lock (turn)
        {
            Forget();
            var now = clock.GetUtcNow();
            if (wrong.TryGetValue(from, out var times) && times.Count >= WrongFromOne) return CodeAnswer.TooMany;
            if (outstanding.Find(code => Same(code.Digits, clean) || Same(code.Long, clean)) is { } right)
            {
                outstanding.Remove(right);
                return CodeAnswer.Right;
            }
            if (times is null && wrong.Count < MostAddresses) wrong[from] = times = new();
            times?.Enqueue(now);
            if (++wrongFromAll < WrongFromAll) return CodeAnswer.Wrong;
            outstanding.Clear();
            wrongFromAll = 0;
            return CodeAnswer.TooMany;
        }
    }

    void Forget()
    {
        var now = clock.GetUtcNow();
        outstanding.RemoveAll(code => code.Until <= now);
        foreach (var (address, times) in wrong.ToArray())
        {
            while (times.TryPeek(out var first) && first + Wait <= now) times.Dequeue();
            if (times.Count == 0) wrong.Remove(address);
        }
    }

    static bool Same(string a, string b) => CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(a), Encoding.UTF8.GetBytes(b));
}
