namespace PatternShop.Store;

/// <summary>The faults that the store has come upon and that stand.</summary>
public sealed class StoreHealth
{
    private const int MostDamage = 100;
    private readonly Lock _gate = new();
    private readonly HashSet<string> _damage = new(StringComparer.Ordinal);
    private StoreFault _writing;
    private Action<StoreFault, string>? _found;

    internal StoreHealth()
    {
    }

    /// <summary>Calls somebody with each fault that is found from now on and what it means, once as long as it stands.</summary>
    public void OnFound(Action<StoreFault, string> call)
    {
        lock (_gate)
        {
            _found += call;
        }
    }

    /// <summary>
    /// The fault that stands; <see cref="StoreFault.Passing"/> when all is well. Damage stands until the program ends, every
    /// other fault until something is written.
    /// </summary>
    public StoreFault Fault
    {
        get
        {
            lock (_gate)
            {
                return _damage.Count > 0 ? StoreFault.Damaged : _writing;
            }
        }
    }

    /// <summary>Whether the last write failed for a reason that concerns others as well.</summary>
    internal bool CannotWrite
    {
        get
        {
            lock (_gate)
            {
                return _writing != StoreFault.Passing;
            }
        }
    }

    internal void Note(StoreException failure)
    {
        if (IsNew(failure.Fault, failure.Message))
        {
            _found?.Invoke(failure.Fault, failure.Message);
        }
    }

    internal void Wrote()
    {
        lock (_gate)
        {
            _writing = StoreFault.Passing;
        }
    }

    private bool IsNew(StoreFault fault, string words)
    {
        lock (_gate)
        {
            switch (fault)
            {
                case StoreFault.Passing:
                    return false;
                case StoreFault.Damaged:
                    return _damage.Count < MostDamage && _damage.Add(words);
                default:
                    (var before, _writing) = (_writing, fault);
                    return before != fault;
            }
        }
    }
}
