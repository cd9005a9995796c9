namespace Coolproof.Store;

/// <summary>What hinders a store.</summary>
public enum StoreFault
{
    /// <summary>The address of the store is not understood.</summary>
    BadPlace,
    /// <summary>The file or server can't be reached, or not with these rights.</summary>
    NoAccess,
    /// <summary>The disk is full.</summary>
    DiskFull,
    /// <summary>The file is damaged.</summary>
    Damaged,
    /// <summary>The file or database is something else than a notebook.</summary>
    NotANotebook,
    /// <summary>A newer version of the program wrote it.</summary>
    NewerVersion,
    /// <summary>Another program holds it.</summary>
    Locked,
    /// <summary>There is a notebook already where a fresh place was asked for.</summary>
    AlreadyThere,
    /// <summary>A photo of that UUID with other bytes is there already.</summary>
    OtherPhoto,
    /// <summary>Anything else.</summary>
    Failed
}

/// <summary>A store can't do what it was asked for. Nothing was half done: what was there before is there still.</summary>
public sealed class StoreException : Exception
{
    /// <summary>A failure.</summary>
    /// <param name="fault">What hinders.</param>
    /// <param name="reason">What happened, in plain words.</param>
    /// <param name="remedy">What to do about it.</param>
    /// <param name="inner">What the database said.</param>
    public StoreException(StoreFault fault, string reason, string remedy, Exception? inner = null) : base($"{reason} {remedy}", inner)
    {
        Fault = fault;
        Reason = reason;
        Remedy = remedy;
    }

    /// <summary>What hinders.</summary>
    public StoreFault Fault { get; }

    /// <summary>What happened, in plain words.</summary>
    public string Reason { get; }

    /// <summary>What to do about it.</summary>
    public string Remedy { get; }
}
