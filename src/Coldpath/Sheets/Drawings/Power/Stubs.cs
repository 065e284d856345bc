using Coldpath.Panels;

namespace Coldpath.Sheets.Drawings.Power;

/// <summary>Finds what is to be said at which port of a sheet.</summary>
internal static class Stubs
{
    /// <param name="elsewhere">
    /// Words for where a net's terminal that is not on this sheet is drawn, or, without one, where the ladder names the
    /// net: "rung 4", "sheet 2".
    /// </param>
    public static IReadOnlyList<Stub> Of(PowerCircuit circuit, Func<PanelNet, Terminal?, string> elsewhere)
    {
        var ports = circuit
            .Blocks.SelectMany(b => b.Ports)
            .SelectMany(p => p.Terminals.Select(t => (t, p)))
            .ToLookup(p => p.t, p => p.p);
        var jointSize = circuit.Joints.SelectMany(j => j.Select(p => (p.Index, j.Count))).ToDictionary();
        var bonds = circuit.Panel.Bonds.Select(b => b.Net).ToHashSet(StringComparer.Ordinal);
        var untraced = circuit.Panel.Untraced.ToLookup(u => u.Net, StringComparer.Ordinal);
        var stubs = new List<Stub>();
        foreach (var net in circuit.Panel.Nets)
        {
            var here = net.Terminals.SelectMany(t => ports[t]).Distinct().ToList();
            if (here.Count == 0)
                continue;
            var tied = here.Find(p => p.Terminals.Count(net.Terminals.Contains) > 1);
            var port =
                tied ?? here.MinBy(p => (jointSize[p.Index] > 1, p.Above, -circuit.Rows[p.Block], p.Index))!;
            var away = net
                .Terminals.Where(t => !ports.Contains(t))
                .Select(t => elsewhere(net, t))
                .Distinct()
                .OrderBy(w => w.Length)
                .ThenBy(w => w, StringComparer.Ordinal)
                .ToList();
            if (away.Count == 0 && circuit.InRungs.Contains(net))
                away.Add(elsewhere(net, null));
            var name = away.Count > 0 ? NameAt(port, net) : string.Join(", ", net.Names);
            if (untraced.Contains(net.Name))
                away.Add("not traced");
            var said = away.Count == 0 ? name : Leading(port, name, Gathered(away));
            var text = tied is null ? said : $"{said} joined".TrimStart();
            var earthed = bonds.Contains(net.Name);
            if (text.Length > 0 || earthed)
                stubs.Add(
                    new(
                        port,
                        net.Name,
                        text,
                        Title(net, away, earthed),
                        away.Count > 0,
                        earthed,
                        jointSize[port.Index] == 1,
                        tied is not null
                    )
                );
        }
        return [.. stubs.GroupBy(s => s.Port).Select(Together)];
    }

    /// <summary>
    /// What a net that goes on elsewhere is called at each of its ends, so that they can be told to be one: where it has
    /// no name of its own, its first terminal, or in one-line form the device of that.
    /// </summary>
    private static string NameAt(Port port, PanelNet net) =>
        net.Names.Count > 0 ? string.Join(", ", net.Names)
        : port.Terminals.Count > 1 ? net.Terminals[0].Device
        : net.Terminals[0].ToString();

    /// <summary>Read from below: the arrow points the way the wire leaves the symbol, up or down.</summary>
    private static string Leading(Port port, string name, string places) =>
        port.Above ? $"{name} \u2192 {places}".TrimStart() : $"{places} \u2190 {name}".TrimEnd();

    /// <summary>In one-line form several nets may speak at one port.</summary>
    private static Stub Together(IEnumerable<Stub> stubs)
    {
        var all = stubs.ToList();
        return all[0] with
        {
            Text = string.Join("; ", all.Select(s => s.Text).Where(t => t.Length > 0).Distinct()),
            Title = string.Join("; ", all.Select(s => s.Title).Distinct()),
            GoesOn = all.Any(s => s.GoesOn),
            Earthed = all.Any(s => s.Earthed),
            Tied = all.Any(s => s.Tied),
        };
    }

    private static string Title(PanelNet net, IReadOnlyList<string> away, bool earthed)
    {
        var name = net.Names.Count > 0 ? string.Join(", ", net.Names) : net.Name;
        var on = away.Count > 0 ? $" goes on: {string.Join(", ", away)}" : "";
        return $"{name}{on}{(earthed ? " is wired to earth" : "")}";
    }

    /// <summary>"rung 1, 4"; no numbers when there are many.</summary>
    private static string Gathered(IReadOnlyList<string> places) =>
        string.Join(
            ", ",
            places
                .Select(p => p.Split(' ', 2))
                .GroupBy(p => p[0])
                .Select(g =>
                    g.Count() > Named ? $"{g.Key}s"
                    : g.First().Length == 1 ? g.Key
                    : $"{g.Key} {string.Join(", ", g.Select(p => p[1]))}"
                )
        );

    private const int Named = 2;
}
