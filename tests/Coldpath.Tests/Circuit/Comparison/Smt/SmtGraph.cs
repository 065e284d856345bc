using Coldpath.Wiring;
using static Coldpath.Tests.Circuit.Comparison.Smt.SmtText;

namespace Coldpath.Tests.Circuit.Comparison.Smt;

/// <summary>What is closed in a state, and what that joins; sources apart.</summary>
internal sealed class SmtGraph
{
    private readonly SmtText text;
    private readonly Dictionary<string, Dictionary<string, string>> joined = [];

    public SmtGraph(SmtText text, Netlist netlist, SmtVariables variables)
    {
        this.text = text;
        Netlist = netlist;
        Closed = netlist.Elements.ToDictionary(e => e.Id, e => variables.Guard(e.Closed));
        Leaks = netlist.Elements.ToDictionary(e => e.Id, e => variables.Guard(LeaksOf(e)));
        Hard = FromEarth(e => e.Type == ElementType.Conductor);
        Bonded = FromEarth(Bonds);
    }

    public Netlist Netlist { get; }
    public IReadOnlyDictionary<string, string> Closed { get; }
    public IReadOnlyDictionary<string, string> Leaks { get; }

    /// <summary>For each net whether it is joined to earth by conductors alone.</summary>
    public IReadOnlyDictionary<string, string> Hard { get; }

    /// <summary>For each net whether it is joined to earth by closed elements that are not a fault, load, series or diode.</summary>
    public IReadOnlyDictionary<string, string> Bonded { get; }

    /// <summary>The two nets lie in one solid component.</summary>
    public string Joined(string a, string b)
    {
        if (joined.TryGetValue(b, out var back))
            return back[a];
        if (!joined.TryGetValue(a, out var from))
            joined[a] = from = SmtReach.Of(text, At(a), Links(Solid, e => Closed[e.Id]));
        return from[b];
    }

    /// <summary>Links both ways over the elements of these kinds.</summary>
    public IEnumerable<SmtLink> Links(Func<Element, bool> among, Func<Element, string> open) =>
        Netlist
            .Elements.Where(among)
            .SelectMany(e => new SmtLink[] { new(e.A, e.B, open(e)), new(e.B, e.A, open(e)) });

    /// <summary>Of all nets this one.</summary>
    public Dictionary<string, string> At(string net) =>
        Netlist.Nets.ToDictionary(n => n, n => n == net ? "true" : "false");

    public static bool Bonds(Element element) =>
        element.Type
            is ElementType.Conductor
                or ElementType.Contact
                or ElementType.Semiconductor
                or ElementType.Thermal;

    public static bool Solid(Element element) => Bonds(element) || element.Type == ElementType.Fault;

    private Dictionary<string, string> FromEarth(Func<Element, bool> among) =>
        SmtReach.Of(text, At(Netlist.Earth), Links(among, e => Closed[e.Id]));

    private static Expression LeaksOf(Element element) =>
        element.Leaks
        ?? (element.Type == ElementType.Semiconductor ? Expression.Negate(element.Closed) : Expression.False);
}
