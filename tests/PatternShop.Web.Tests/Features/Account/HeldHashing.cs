using PatternShop.Store;

namespace PatternShop.Web.Tests;

/// <summary>Hashing that counts how many passphrases are hashed at a time, and can be held up at wrong ones.</summary>
internal sealed class HeldHashing : IDisposable
{
    /// <summary>The passphrase that is held up.</summary>
    public const string Wrong = "wrong";

    private const int FewRounds = 10;
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);
    private readonly ManualResetEventSlim _go = new(true);
    private readonly Lock _gate = new();
    private TaskCompletionSource _held = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private int _now;

    public HeldHashing() => Hashing = new PassphraseHashing(FewRounds, Derive);

    public PassphraseHashing Hashing { get; }

    /// <summary>The most that were hashed at a time.</summary>
    public int Most { get; private set; }

    /// <summary>Done when the first passphrase since <see cref="Hold"/> is held up: it waits in no queue any more.</summary>
    public Task Held => _held.Task;

    public void Hold()
    {
        _held = new(TaskCreationOptions.RunContinuationsAsynchronously);
        _go.Reset();
    }

    public void Go() => _go.Set();

    public void Dispose()
    {
        _go.Set();
        _go.Dispose();
    }

    private byte[] Derive(string passphrase, byte[] salt, int rounds)
    {
        Count(1);
        try
        {
            if (passphrase == Wrong)
            {
                _held.TrySetResult();
                _go.Wait(Patience);
            }

            return PassphraseHashing.Pbkdf2(passphrase, salt, rounds);
        }
        finally
        {
            Count(-1);
        }
    }

    private void Count(int more)
    {
        lock (_gate)
        {
            _now += more;
            Most = Math.Max(Most, _now);
        }
    }
}
