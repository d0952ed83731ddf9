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
}
