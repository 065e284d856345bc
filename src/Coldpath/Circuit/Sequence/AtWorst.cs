using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// A netlist whose free variables stand at their worst as far as that can be told without looking at the whole network: a
/// variable is given a value with which as much is live as with any other, and is gone from the netlist. What can be
/// live at all stays the same, and is a far smaller question: a mesh of three-pole switches with a possible weld in each
/// pole comes down to one condition for each switch.
/// </summary>
internal sealed class AtWorst
{
    private readonly Dictionary<string, string> values;

    /// <param name="netlist">Its variables are free but for these:</param>
    /// <param name="kept">Variables that stay.</param>
    /// <param name="given">Variables that have a value.</param>
    public AtWorst(Netlist netlist, IReadOnlySet<string> kept, IReadOnlyDictionary<string, string> given)
    {
        values = new(given);
        var fixedThen = Left(netlist.At(given));
        Find(fixedThen, kept);
        Netlist = Left(fixedThen.At(values));
    }

    /// <summary>With the variables that are left.</summary>
    public Netlist Netlist { get; }

    /// <summary>The values of the others.</summary>
    public IReadOnlyDictionary<string, string> Values => values;

    private void Find(Netlist netlist, IReadOnlySet<string> kept)
    {
        var influences = new Influences(netlist);
        var free = netlist.Variables.Index().Where(v => !kept.Contains(v.Item.Name)).ToList();
        bool found;
        do
        {
            var open = free.Select(v => v.Index).ToHashSet();
            found = free.RemoveAll(Decided) > 0;

            bool Decided((int Index, Variable Item) variable)
            {
                if (Worst(influences, variable.Item, variable.Index, open) is not { } value)
                    return false;
                influences.Give(variable.Index, value);
                values.Add(variable.Item.Name, variable.Item.Values[value]);
                open.Remove(variable.Index);
                return true;
            }
        } while (found);
    }

    private static int? Worst(Influences influences, Variable variable, int index, HashSet<int> open)
    {
        for (var value = 0; value < variable.Values.Count; value++)
            if (influences.IsWorst(index, value) || influences.IsSpare(index, value, open))
                return value;
        return null;
    }

    private Netlist Left(Netlist netlist) =>
        netlist with
        {
            Variables = [.. netlist.Variables.Where(v => !values.ContainsKey(v.Name))],
        };
}
