namespace Coldpath.Sheets.Drawings.Power;

/// <summary>The upright pieces that the places of the blocks give.</summary>
internal static class Risers
{
    /// <summary>Risers of every joint that has more than one port, by joint.</summary>
    public static IReadOnlyList<IReadOnlyList<Riser>> Of(
        IReadOnlyList<Block> blocks,
        IReadOnlyList<IReadOnlyList<Port>> joints,
        int[] rows,
        Lanes lanes
    )
    {
        var jointOf = new Dictionary<int, int>();
        for (var j = 0; j < joints.Count; j++)
            if (joints[j].Count > 1)
                foreach (var port in joints[j])
                    jointOf[port.Index] = j;
        var risers = joints.Select(_ => new List<Riser>()).ToList();
        var last = rows.Length == 0 ? 0 : rows.Max() + 1;
        for (var lane = 0; lane < lanes.Members.Count; lane++)
        {
            var members = lanes.Members[lane];
            for (var i = 0; i <= members.Count; i++)
            {
                var above = i > 0 ? blocks[members[i - 1]] : null;
                var below = i < members.Count ? blocks[members[i]] : null;
                var from = above is null ? 0 : rows[above.Index] + 1;
                var to = below is null ? last : rows[below.Index];
                foreach (var riser in Between(above, below, lane, from, to, jointOf))
                    risers[riser.Joint].Add(riser);
            }
        }
        return risers;
    }

    private static IEnumerable<Riser> Between(
        Block? above,
        Block? below,
        int lane,
        int from,
        int to,
        IReadOnlyDictionary<int, int> jointOf
    )
    {
        var leaving = Wired(above?.Ports.Where(p => !p.Above), jointOf);
        var arriving = Wired(below?.Ports.Where(p => p.Above), jointOf);
        foreach (var slot in leaving.Keys.Union(arriving.Keys).Order())
        {
            var (down, up) = (leaving.GetValueOrDefault(slot), arriving.GetValueOrDefault(slot));
            if (down is not null && up is not null && jointOf[down.Index] == jointOf[up.Index])
                yield return new(jointOf[down.Index], lane, slot, from, to, [down, up]);
            else
            {
                // Two wires in one line: the upper turns off in the first channel, the lower begins after it.
                if (down is not null)
                    yield return new(jointOf[down.Index], lane, slot, from, up is null ? to : from, [down]);
                if (up is not null)
                    yield return new(
                        jointOf[up.Index],
                        lane,
                        slot,
                        down is null ? from : Math.Min(from + 1, to),
                        to,
                        [up]
                    );
            }
        }
    }

    private static SortedDictionary<int, Port> Wired(
        IEnumerable<Port>? ports,
        IReadOnlyDictionary<int, int> jointOf
    )
    {
        var found = new SortedDictionary<int, Port>();
        foreach (var port in ports ?? [])
            if (jointOf.ContainsKey(port.Index))
                found.TryAdd(port.Slot, port);
        return found;
    }
}
