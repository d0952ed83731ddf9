namespace PatternShop.Store;

/// <summary>
/// The store could not do it: the database is locked, full, damaged or of a newer program. Nothing was confirmed; a step
/// may be sent again under the same client and sequence.
/// </summary>
public sealed class StoreException : Exception
{
    public StoreException()
    {
    }

    public StoreException(string message)
        : base(message)
    {
    }

    public StoreException(string message, Exception? innerException)
        : base(message, innerException)
    {
    }

    internal StoreException(StoreFault fault, string message, Exception? innerException = null)
        : base(message, innerException) => Fault = fault;

    /// <summary>What kind of fault is behind it.</summary>
    public StoreFault Fault { get; }
}

/// <summary>Kinds of faults that an operator has to do something about.</summary>
public enum StoreFault
{
    /// <summary>One that concerns this call alone.</summary>
    Passing,

    /// <summary>The disk, or the share of it that we may use, is full.</summary>
    DiskFull,

    /// <summary>The data folder cannot be opened, read or written.</summary>
    Unusable,

    /// <summary>Something that is stored is not what was stored.</summary>
    Damaged,
}
