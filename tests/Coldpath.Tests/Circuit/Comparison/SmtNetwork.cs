using System.Text;
using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit.Comparison;

/// <summary>
/// What is live in a network of supplies and plain elements (no converters, couplings, diodes), as text for an SMT
/// solver: a third reading of the definitions, by reach in layers. h(k+1) holds of a net where h(k) does, or where a
/// closed element leads to a net where it does.
/// </summary>
internal sealed class SmtNetwork
{
    private readonly Netlist netlist;
    private readonly StringBuilder text = new();
    private int names;

    /// <param name="netlist">Two-valued variables only: "yes" is true.</param>
    /// <param name="removable">Elements that the solver may be told to take out, by their device's name.</param>
    public SmtNetwork(Netlist netlist, IEnumerable<string> removable)
    {
        this.netlist = netlist;
        foreach (var variable in netlist.Variables)
            Line($"(declare-const {Name(variable.Name)} Bool)");
        foreach (var device in removable)
            Line($"(declare-const {TakenOut(device)} Bool)");
        var gone = removable.ToHashSet();
        foreach (var element in netlist.Elements)
        {
            var inPlace = gone.Contains(element.Device) ? $"(not {TakenOut(element.Device)})" : "true";
            Let(Closed(element), $"(and {inPlace} {Guard(element.Closed)})");
            var leaks =
                element.Type == ElementType.Semiconductor ? $"(not {Guard(element.Closed)})" : "false";
            Let(Leaks(element), $"(and {inPlace} {leaks})");
        }
        DefineLive();
    }

    public string Text => text.ToString();

    public static string Name(string variable) => $"|{variable}|";

    public static string TakenOut(string device) => $"|{device} taken out|";

    /// <summary>The name under which a net's being live is defined.</summary>
    public static string Live(string net) => $"|live {net}|";

    private static string Closed(Element element) => $"|closed {element.Id}|";

    private static string Leaks(Element element) => $"|leaks {element.Id}|";

    private void DefineLive()
    {
        var earth = netlist.Nets.ToDictionary(n => n, n => n == netlist.Earth ? "true" : "false");
        var tied = Reach("tied", earth, e => e.Type == ElementType.Conductor ? Closed(e) : null, _ => "true");
        var bonded = Reach("bonded", earth, e => Sound(e) ? Closed(e) : null, _ => "true");
        var unearthed = Unearthed(tied, bonded);
        var contested = Reach(
            "contested",
            unearthed,
            e => Sound(e) ? Closed(e) : null,
            n => $"(not {tied[n]})"
        );
        var earthTied = Define("earth-tied", n => $"(or {tied[n]} (and {bonded[n]} (not {contested[n]})))");
        var reached = Reach(
            "reached",
            unearthed,
            e => e.Type != ElementType.Load ? Closed(e) : null,
            _ => "true"
        );
        var loose = Reach(
            "loose",
            reached,
            e => $"(or {Closed(e)} {Leaks(e)})",
            n => $"(not {earthTied[n]})"
        );
        foreach (var net in netlist.Nets)
            Let(Live(net), $"(and (not {earthTied[net]}) (or {reached[net]} {loose[net]}))");
    }

    /// <summary>Solid, and no fault.</summary>
    private static bool Sound(Element element) =>
        element.Type
            is ElementType.Conductor
                or ElementType.Contact
                or ElementType.Semiconductor
                or ElementType.Thermal;

    /// <summary>Where unearthed conductors are connected.</summary>
    private Dictionary<string, string> Unearthed(
        Dictionary<string, string> tied,
        Dictionary<string, string> bonded
    )
    {
        var sources = netlist.Nets.ToDictionary(n => n, _ => new List<string>());
        foreach (var supply in netlist.Supplies)
        foreach (var conductor in supply.Conductors)
        {
            var others = supply.Conductors.Where(c =>
                (c.Volts, c.Degrees) != (conductor.Volts, conductor.Degrees)
            );
            var alone = $"(not (or false {string.Join(" ", others.Select(c => bonded[c.Net]))}))";
            var earthed = $"(and {bonded[conductor.Net]} (or {tied[conductor.Net]} {alone}))";
            sources[conductor.Net].Add($"(and {Guard(supply.Present)} (not {earthed}))");
        }
        return Define("unearthed", n => $"(or false {string.Join(" ", sources[n])})");
    }

    /// <summary>The nets that the start reaches over these links, all the way on nets where the way is open.</summary>
    private Dictionary<string, string> Reach(
        string what,
        Dictionary<string, string> start,
        Func<Element, string?> link,
        Func<string, string> open
    )
    {
        var links = netlist
            .Elements.Select(e => (e.A, e.B, Condition: link(e)!))
            .Where(l => l.Condition is not null)
            .SelectMany(l => new[] { (From: l.A, To: l.B, l.Condition), (From: l.B, To: l.A, l.Condition) })
            .ToLookup(l => l.To);
        var layer = Define(what, n => $"(and {start[n]} {open(n)})");
        for (var i = 1; i < netlist.Nets.Count; i++)
        {
            var last = layer;
            layer = Define(
                what,
                n =>
                    $"(or {last[n]} (and {open(n)} (or false {string.Join(" ", links[n].Select(l => $"(and {l.Condition} {last[l.From]})"))})))"
            );
        }
        return layer;
    }

    private Dictionary<string, string> Define(string what, Func<string, string> condition)
    {
        var layer = names++;
        var defined = new Dictionary<string, string>();
        foreach (var net in netlist.Nets)
        {
            defined[net] = $"|{what} {layer} {net}|";
            Let(defined[net], condition(net));
        }
        return defined;
    }

    private static string Guard(Expression guard) =>
        guard switch
        {
            Constant c => c.Value ? "true" : "false",
            VariableIs v => v.Value == "yes" ? Name(v.Variable) : $"(not {Name(v.Variable)})",
            Not n => $"(not {Guard(n.Term)})",
            All a => $"(and true {string.Join(" ", a.Terms.Select(Guard))})",
            Any a => $"(or false {string.Join(" ", a.Terms.Select(Guard))})",
            _ => throw new ArgumentException("no guard", nameof(guard)),
        };

    private void Let(string name, string condition)
    {
        Line($"(declare-const {name} Bool)");
        Line($"(assert (= {name} {condition}))");
    }

    private void Line(string line) => text.Append(line).Append('\n');
}
