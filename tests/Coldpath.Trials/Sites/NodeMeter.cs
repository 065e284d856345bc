using System.Diagnostics.Metrics;

namespace Coldpath.Trials.Sites;

/// <summary>Counts the nodes that diagram tables make while it lives.</summary>
internal sealed class NodeMeter : IDisposable
{
    private readonly MeterListener listener = new();
    private long made;

    public NodeMeter()
    {
        listener.InstrumentPublished = (instrument, listening) =>
        {
            if (instrument.Name == "diagram.nodes")
                listening.EnableMeasurementEvents(instrument);
        };
        listener.SetMeasurementEventCallback<long>((_, nodes, _, _) => Interlocked.Add(ref made, nodes));
        listener.Start();
    }

    public long Made => Interlocked.Read(ref made);

    public void Dispose() => listener.Dispose();
}
