namespace PatternShop.Weave;

/// <summary>
/// Counts the work of reading a file, in steps: a byte that is read, or a name that is compared with another, is one. The same file takes the
/// same number of steps on every machine.
/// </summary>
internal sealed class ReadingSteps
{
    public long Count { get; private set; }

    public void Add(long steps) => Count += steps;
}
