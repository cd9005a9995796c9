using Coolproof.Traces.Live;

namespace Coolproof.Live;

/// <summary>How each source does. Its owner sees to it that one thread at a time uses it.</summary>
internal sealed class SourceList
{
    const int Most = 32;
    const int LongestShown = 80;
    static readonly TimeSpan PostedFor = TimeSpan.FromSeconds(10);

    readonly List<SourceState> all = [];

    /// <summary>All of them.</summary>
    public IReadOnlyList<SourceState> All => [.. all];

    /// <summary>Whether there is any.</summary>
    public bool Any => all.Count > 0;

    /// <summary>A source is connected, or is not.</summary>
    /// <returns>Whether that is new.</returns>
    public bool Tell(string name, SourceKind kind, string? trouble, DateTimeOffset now)
    {
        var place = all.FindIndex(one => one.Name == name);
        if (place < 0)
        {
            if (all.Count >= Most) all.RemoveAt(all.FindIndex(one => one.Kind == SourceKind.Http) is var old and >= 0 ? old : 0);
            all.Add(new SourceState(name, kind, trouble is null, now, trouble));
            return true;
        }
        var known = all[place];
        if (known.Alive == (trouble is null) && known.Trouble == trouble) return false;
        all[place] = known with
        {
            Alive = trouble is null,
            Trouble = trouble,
            Since = known.Alive == (trouble is null) ? known.Since : now,
            Losses = known.Losses + (known.Alive && trouble is not null ? 1 : 0),
        };
        return true;
    }

    /// <summary>A line came and was understood.</summary>
    public void Heard(string name, bool nonsense, DateTimeOffset now) =>
        Change(name, one => one with { Lines = one.Lines + 1, Nonsense = one.Nonsense + (nonsense ? 1 : 0), Heard = now });

    /// <summary>A line came and was not understood.</summary>
    /// <returns>Its beginning, as it is shown.</returns>
    public string Bad(string name, string line, LineProblem problem, DateTimeOffset now)
    {
        var shown = new string([.. line.Take(LongestShown).Select(letter => char.IsControl(letter) || char.IsSurrogate(letter) ? '·' : letter)]);
        Change(name, one => one with { Lines = one.Lines + 1, NotUnderstood = one.NotUnderstood + 1, LastBad = shown, LastProblem = problem, Heard = now });
        return shown;
    }

    /// <summary>One that posts, and has not for a while, is not there.</summary>
    /// <returns>Whether any changed.</returns>
    public bool Quiet(DateTimeOffset now)
    {
        var any = false;
        for (var i = 0; i < all.Count; i++)
        {
            if (all[i] is not { Kind: SourceKind.Http, Alive: true, Heard: var heard } || now - (heard ?? all[i].Since) <= PostedFor) continue;
            all[i] = all[i] with { Alive = false, Since = now, Trouble = "Nothing was posted for 10 s. Look whether it has its network, and the right address.", Losses = all[i].Losses + 1 };
            any = true;
        }
        return any;
    }

    void Change(string name, Func<SourceState, SourceState> how)
    {
        var place = all.FindIndex(one => one.Name == name);
        if (place >= 0) all[place] = how(all[place]);
    }
}
