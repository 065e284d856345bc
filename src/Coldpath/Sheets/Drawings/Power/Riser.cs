namespace Coldpath.Sheets.Drawings.Power;

/// <summary>
/// An upright piece of wire in a lane: from a port to where it may turn, or straight from a port to the port below it.
/// Channel k lies above row k; the last lies below all rows.
/// </summary>
/// <param name="From">First channel in which it may be met.</param>
/// <param name="To">Last channel in which it may be met.</param>
internal sealed record Riser(int Joint, int Lane, int Slot, int From, int To, IReadOnlyList<Port> Ports)
{
    public bool IsStraight => Ports.Count == 2;

    /// <summary>Comes from above into its channels.</summary>
    public bool ComesDown => IsStraight || !Ports[0].Above;

    /// <summary>Goes on below its channels.</summary>
    public bool GoesDown => IsStraight || Ports[0].Above;
}
