using System.Globalization;

namespace PatternShop.EndToEnd;

/// <summary>What the processors of the machine did since a moment, where the machine tells it (Linux); elsewhere they count as idle.</summary>
internal sealed class Processors
{
    private const string Counters = "/proc/stat";
    private const int Idle = 3;
    private const int WaitingForDisk = 4;
    private const int Guest = 8;
    private readonly (double Busy, double All) _start = Read();

    /// <summary>The part of all processor time, from 0 to 1, that programs other than one have taken since.</summary>
    /// <param name="wait">How long ago that was.</param>
    /// <param name="own">The processor time that the one has taken since.</param>
    public double TakenByOthers(TimeSpan wait, TimeSpan own)
    {
        var (busy, all) = Read();
        return all <= _start.All ? 0 : Math.Clamp(((busy - _start.Busy) / (all - _start.All)) - (own / wait / Environment.ProcessorCount), 0, 1);
    }

    // "cpu" and the time for user, nice, system, idle, waiting, interrupts (two kinds), stolen; guests are in user already
    private static (double Busy, double All) Read()
    {
        if (!File.Exists(Counters))
        {
            return (0, 0);
        }

        var times = File.ReadLines(Counters).First().Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Skip(1).Take(Guest).Select(time => double.Parse(time, CultureInfo.InvariantCulture)).ToList();
        return (times.Sum() - times[Idle] - times[WaitingForDisk], times.Sum());
    }
}
