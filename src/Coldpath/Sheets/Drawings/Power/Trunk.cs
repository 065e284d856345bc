namespace Coldpath.Sheets.Drawings.Power;

/// <summary>A level piece of wire in a channel, with the risers that it joins.</summary>
internal sealed class Trunk(int joint, int channel, IReadOnlyList<Riser> risers)
{
    public int Joint { get; } = joint;
    public int Channel { get; } = channel;
    public IReadOnlyList<Riser> Risers { get; } = risers;
}

/// <summary>Two trunks of one joint, upper first, joined by an upright piece between lanes.</summary>
internal sealed record Link(Trunk Upper, Trunk Lower);
