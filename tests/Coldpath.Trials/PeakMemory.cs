namespace Coldpath.Trials;

/// <summary>Watches the managed heap while something runs: the most that was committed to it, in bytes.</summary>
internal sealed class PeakMemory : IDisposable
{
    private readonly long before;
    private readonly Timer timer;
    private long peak;

    public PeakMemory()
    {
        GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
        before = GC.GetTotalMemory(forceFullCollection: true);
        timer = new Timer(_ => Look(), null, 0, 5);
    }

    public long Stop()
    {
        Look();
        return peak;
    }

    public void Dispose() => timer.Dispose();

    private void Look() => peak = Math.Max(peak, GC.GetTotalMemory(forceFullCollection: false) - before);
}
