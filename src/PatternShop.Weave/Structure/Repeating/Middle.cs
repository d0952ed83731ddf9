namespace PatternShop.Weave;

/// <summary>A place on a thread or between two neighbouring threads of a motif that repeats without end.</summary>
/// <param name="Halves">
/// Half threads from the middle of the first thread, from 0 below twice the number of threads: 2 k is on thread k (from 0), 2 k + 1
/// between thread k and the next; after the last thread comes the first.
/// </param>
public readonly record struct Middle(int Halves)
{
    /// <summary>Whether it is on a thread.</summary>
    public bool IsOnThread => Halves % 2 == 0;

    /// <summary>The thread it is on, or the one before it; from 0.</summary>
    public int Thread => Halves / 2;
}
