namespace Coldpath.Sheets.Drawings.Power;

/// <summary>Which row each block stands in: below everything that feeds it.</summary>
internal static class Rows
{
    /// <summary>Row of each block from 0, by block index; wiring that leads back up is left out of account.</summary>
    public static int[] Of(IReadOnlyList<Block> blocks, IReadOnlyList<IReadOnlyList<Port>> joints)
    {
        var below = new SortedSet<int>[blocks.Count];
        for (var i = 0; i < blocks.Count; i++)
            below[i] = [];
        foreach (var joint in joints)
        foreach (var from in joint.Where(p => !p.Above))
        foreach (var to in joint.Where(p => p.Above && p.Block != from.Block))
            below[from.Block].Add(to.Block);
        var rows = new int[blocks.Count];
        foreach (var block in FromTheTop(below))
        foreach (var next in below[block])
            rows[next] = Math.Max(rows[next], rows[block] + 1);
        return rows;
    }

    /// <summary>Blocks in an order in which each comes after what feeds it; back edges are taken out on the way.</summary>
    private static IEnumerable<int> FromTheTop(SortedSet<int>[] below)
    {
        var finished = new List<int>();
        var state = new byte[below.Length];
        for (var start = 0; start < below.Length; start++)
            if (state[start] == 0)
                Visit(start, below, state, finished);
        finished.Reverse();
        return finished;
    }

    private static void Visit(int start, SortedSet<int>[] below, byte[] state, List<int> finished)
    {
        const byte Open = 1;
        const byte Done = 2;
        var stack = new Stack<(int Block, Queue<int> Left)>();
        Enter(start);
        while (stack.TryPeek(out var top))
        {
            if (!top.Left.TryDequeue(out var next))
            {
                state[top.Block] = Done;
                finished.Add(top.Block);
                stack.Pop();
            }
            else if (state[next] == Open)
                below[top.Block].Remove(next);
            else if (state[next] == 0)
                Enter(next);
        }

        void Enter(int block)
        {
            state[block] = Open;
            stack.Push((block, new Queue<int>(below[block])));
        }
    }
}
