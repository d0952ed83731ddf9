using System.Collections.Concurrent;
using System.Diagnostics.CodeAnalysis;

namespace PatternShop.Store;

/// <summary>Which queue a passphrase waits in until it is hashed.</summary>
public enum HashingLane
{
    /// <summary>For everybody who is not known yet.</summary>
    Strangers,

    /// <summary>For the maker, in a browser where they have signed in before. Strangers cannot fill this queue.</summary>
    KnownBrowsers,
}

/// <summary>
/// The only way to hash a passphrase: each lane has one thread and a short queue, so that no more than two are hashed at a
/// time and requests never wait for a thread that is hashing.
/// </summary>
internal sealed class HashingThreads(PassphraseHashing hashing) : IDisposable
{
    /// <summary>How many may wait in a lane.</summary>
    public const int MostWaiting = 8;

    private readonly HashingThread _strangers = new(nameof(HashingLane.Strangers));
    private readonly HashingThread _knownBrowsers = new(nameof(HashingLane.KnownBrowsers));

    /// <summary>Whether a passphrase that comes now would be turned away.</summary>
    public bool IsFull(HashingLane lane) => Thread(lane).IsFull;

    /// <summary>Queues work with passphrases. False when the queue is full; nothing is queued then.</summary>
    /// <param name="lane">The queue.</param>
    /// <param name="work">What is done on the lane's thread.</param>
    /// <param name="cancellationToken">Work that is cancelled before its turn comes is skipped.</param>
    /// <param name="result">What comes of it.</param>
    public bool TryRun<T>(HashingLane lane, Func<PassphraseHashing, T> work, CancellationToken cancellationToken, [NotNullWhen(true)] out Task<T>? result)
    {
        var completion = new TaskCompletionSource<T>(TaskCreationOptions.RunContinuationsAsynchronously);
        result = Thread(lane).TryAdd(Run) ? completion.Task : null;
        return result is not null;

        void Run()
        {
            try
            {
                cancellationToken.ThrowIfCancellationRequested();
                completion.SetResult(work(hashing));
            }
            catch (OperationCanceledException cancelled)
            {
                completion.SetCanceled(cancelled.CancellationToken);
            }
            catch (Exception failure)
            {
                completion.SetException(failure);
            }
        }
    }

    public void Dispose()
    {
        _strangers.Dispose();
        _knownBrowsers.Dispose();
    }

    private HashingThread Thread(HashingLane lane) => lane is HashingLane.KnownBrowsers ? _knownBrowsers : _strangers;
}

/// <summary>One thread that does what waits in a short queue, one after another. It begins with the first work.</summary>
internal sealed class HashingThread : IDisposable
{
    private readonly BlockingCollection<Action> _queue = new(HashingThreads.MostWaiting);
    private readonly Lazy<Thread> _thread;

    public HashingThread(string name)
    {
        _thread = new(() =>
        {
            var thread = new Thread(Run) { IsBackground = true, Name = "passphrases: " + name };
            thread.Start();
            return thread;
        });
    }

    public bool IsFull => _queue.Count >= _queue.BoundedCapacity;

    public bool TryAdd(Action work)
    {
        _ = _thread.Value;
        return _queue.TryAdd(work);
    }

    public void Dispose() => _queue.CompleteAdding();

    private void Run()
    {
        using (_queue)
        {
            foreach (var work in _queue.GetConsumingEnumerable())
            {
                work();
            }
        }
    }
}
