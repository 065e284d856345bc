using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation.Syntax;
using Coldpath.Panels.Binding;
using Coldpath.Wiring;

namespace Coldpath.Tests.Panels;

/// <summary>A few devices made by hand, so that binding is tested apart from the standard kinds.</summary>
internal static class HandMade
{
    public static MadeDevice Make(DeclarationSyntax declaration, WordSyntax tag, PanelFacts facts)
    {
        var common = CommonRatings.Split(declaration.Atoms);
        var blueprint = Of(declaration, common.Rest);
        Finding[] findings = blueprint is not null
            ? []
            :
            [
                new()
                {
                    Code = "K000",
                    Name = "unknown-kind",
                    Severity = Severity.Defect,
                    Message = $"{declaration.KindName} is no kind",
                    Location = declaration.Span,
                },
            ];
        return new(blueprint, common, findings);
    }

    private static Blueprint? Of(DeclarationSyntax declaration, IReadOnlyList<AtomSyntax> ratings)
    {
        var words = ratings.OfType<WordAtom>().Select(w => w.Text).ToList();
        return declaration.KindName switch
        {
            "supply" => Supply(),
            "disconnect" => Poles("disconnect", 3) with { OwnVariable = "position" },
            "four" => Poles("four", 4) with { OwnVariable = "position" },
            "fuse" => Fuse(words.Contains("three-pole") ? 3 : 1),
            "block" => Bars("block", "L1", "L2", "L3", "N"),
            "strip" => Bars("strip", "*"),
            "contactor" => Contactor(),
            "relay" => Relay(),
            "selector" => Selector(words),
            "push button" => Button("*3", "*4"),
            "stop button" => Button("*1", "*2"),
            "overload" => Overload(),
            "motor" => Motor("U", "V", "W"),
            "transformer" => Transformer(),
            "lamp" => Lamp(),
            "linkage" => Linkage(words),
            _ => null,
        };
    }

    private static Kind KindOf(string name)
    {
        var source = new SourceText("kinds", name);
        return new Kind(name, null, null, null, new Span(source, 0, name.Length));
    }

    private static Netlist Network(params string[] nets) =>
        new()
        {
            Panel = "",
            Earth = "PE",
            Nets = nets,
        };

    private static Blueprint Plain(string kind, Netlist network, string[] line, string[] load) =>
        new()
        {
            Kind = KindOf(kind),
            Ratings = [],
            Network = network,
            LineSide = line,
            LoadSide = load,
            Parts = [],
            Families = [],
            States = [],
        };

    private static Element Element(
        string a,
        string b,
        ElementType type,
        Expression closed,
        bool power = false
    ) =>
        new()
        {
            Id = $"{a}-{b}",
            Device = "",
            Power = power,
            A = a,
            B = b,
            Type = type,
            Closed = closed,
        };

    private static Variable Variable(string name, VariableKind kind, params string[] values) =>
        new()
        {
            Name = name,
            Device = "",
            Kind = kind,
            Values = values,
            Rest = values[0],
            Moves = [new Move(values[0], values[1], Mover.Operator, Expression.True, Expression.False)],
        };

    private static Blueprint Supply()
    {
        string[] nets = ["L1", "L2", "L3", "N"];
        var conductors = nets.Select(n => new SupplyConductor(
            n,
            n,
            230,
            0,
            Polarity.Alternating,
            Expression.True
        ));
        var network = Network([.. nets, "PE"]) with
        {
            Supplies =
            [
                new Supply
                {
                    Name = "line",
                    Group = "line",
                    Conductors = [.. conductors],
                    Present = new VariableIs("presence", "present"),
                },
            ],
            Variables = [Variable("presence", VariableKind.Process, "present", "absent")],
            Elements = [Element("N", "PE", ElementType.Conductor, Expression.True)],
        };
        return Plain("supply", network, [], nets) with { OwnVariable = "presence" };
    }

    private static (string Left, string Right)[] PoleNames(int count) =>
        [.. new[] { ("1/L1", "2/T1"), ("3/L2", "4/T2"), ("5/L3", "6/T3"), ("7/N", "8/N") }.Take(count)];

    private static Blueprint Poles(string kind, int count)
    {
        var poles = PoleNames(count);
        var left = poles.Select(p => p.Left).ToArray();
        var right = poles.Select(p => p.Right).ToArray();
        var closed = new VariableIs("position", "closed");
        var network = Network([.. poles.SelectMany(p => new[] { p.Left, p.Right })]) with
        {
            Variables = [Variable("position", VariableKind.Position, "open", "closed")],
            Powered = [new Operation("position", "closed")],
            Elements =
            [
                .. poles.Select(p => Element(p.Left, p.Right, ElementType.Contact, closed, power: true)),
            ],
        };
        return Plain(kind, network, left, right) with
        {
            Parts = [new Part("", left, right, true)],
            States = [new("closed", closed), new("open", Expression.Negate(closed))],
        };
    }

    private static Blueprint Fuse(int poles)
    {
        var numbers = Enumerable.Range(0, poles).Select(i => ($"{2 * i + 1}", $"{2 * i + 2}")).ToList();
        var (left, right) = (numbers.Select(n => n.Item1).ToArray(), numbers.Select(n => n.Item2).ToArray());
        var network = Network([.. numbers.SelectMany(n => new[] { n.Item1, n.Item2 })]) with
        {
            Elements =
            [
                .. numbers.Select(n => Element(n.Item1, n.Item2, ElementType.Thermal, Expression.True, true)),
            ],
        };
        return Plain("fuse", network, left, right) with { Parts = [new Part("", left, right, true)] };
    }

    private static Blueprint Bars(string kind, params string[] terminals) =>
        Plain(kind, Network(terminals), terminals, terminals);

    private static Blueprint WithCoil(Blueprint blueprint) =>
        blueprint with
        {
            OwnVariable = "armature",
            Network = blueprint.Network with
            {
                Nets = ["A1", "A2", .. blueprint.Network.Nets],
                Variables =
                [
                    Variable("armature", VariableKind.Armature, "out", "in") with
                    {
                        Coil = ["A1", "A2"],
                    },
                ],
                Powered = [],
                Elements =
                [
                    Element("A1", "A2", ElementType.Load, Expression.True),
                    .. blueprint.Network.Elements,
                ],
            },
            Parts = [new Part("coil", ["A1"], ["A2"], false), .. blueprint.Parts],
            Families =
            [
                new ContactFamily(
                    "NO",
                    "*3",
                    "*4",
                    false,
                    new VariableIs("armature", "in"),
                    null,
                    Welds: true
                ),
                new ContactFamily(
                    "NC",
                    "*1",
                    "*2",
                    false,
                    new VariableIs("armature", "out"),
                    null,
                    Welds: true
                ),
                new ContactFamily("changeover", "*1", "*4", false, new VariableIs("armature", "in"), null),
            ],
        };

    private static Blueprint Contactor()
    {
        var poles = WithCoil(Poles("contactor", 3));
        var closed = new VariableIs("armature", "in");
        return poles with
        {
            Network = poles.Network with
            {
                Elements = [.. poles.Network.Elements.Select(e => e.Power ? e with { Closed = closed } : e)],
            },
            States =
            [
                new("in", closed),
                new(
                    "closed",
                    Expression.AnyOf(poles.Network.Elements.Where(e => e.Power).Select(e => new Closed(e.Id)))
                ),
            ],
        };
    }

    private static Blueprint Relay() => WithCoil(Plain("relay", Network(), [], []));

    private static Blueprint Selector(List<string> positions) =>
        Plain(
            "selector",
            Network() with
            {
                Variables = [Variable("switch", VariableKind.Position, [.. positions])],
            },
            [],
            []
        ) with
        {
            OwnVariable = "switch",
            Families = [new ContactFamily("at", "*3", "*4", false, Expression.True, "switch")],
            Use = ControlUse.Mode,
        };

    private static Blueprint Button(string left, string right) =>
        Plain(
            "button",
            Network() with
            {
                Variables =
                [
                    Variable("button", VariableKind.Position, "released", "pressed") with
                    {
                        Momentary = true,
                    },
                ],
            },
            [],
            []
        ) with
        {
            OwnVariable = "button",
            Families =
            [
                new ContactFamily("NO", left, right, true, new VariableIs("button", "pressed"), null),
            ],
            States = [new("pressed", new VariableIs("button", "pressed"))],
            Use = left == "*1" ? ControlUse.Stop : ControlUse.Start,
        };

    private static Blueprint Overload()
    {
        var poles = Poles("overload", 3);
        return poles with
        {
            OwnVariable = "trip",
            Network = poles.Network with
            {
                Nets = [.. poles.Network.Nets, "95", "96", "97", "98"],
                Variables = [Variable("trip", VariableKind.Trip, "reset", "tripped")],
                Powered = [],
                Elements =
                [
                    .. poles.Network.Elements.Select(e =>
                        e with
                        {
                            Type = ElementType.Thermal,
                            Closed = Expression.True,
                        }
                    ),
                    Element("95", "96", ElementType.Contact, new VariableIs("trip", "reset")),
                    Element("97", "98", ElementType.Contact, new VariableIs("trip", "tripped")),
                ],
            },
            Parts =
            [
                .. poles.Parts,
                new Part("NC", ["95"], ["96"], false),
                new Part("NO", ["97"], ["98"], false),
            ],
            States = [new("tripped", new VariableIs("trip", "tripped"))],
        };
    }

    private static Blueprint Motor(params string[] leads)
    {
        var network = Network([.. leads, "*star"]) with
        {
            Elements = [.. leads.Select(l => Element(l, "*star", ElementType.Load, Expression.True, true))],
            Loads =
            [
                new Load
                {
                    Name = "motor",
                    Elements = [.. leads.Select(l => $"{l}-*star")],
                    Terminals = leads,
                    Modes = [new LoadMode("running", null, leads, [], [], Turning.Forward)],
                },
            ],
        };
        return Plain("motor", network, leads, leads);
    }

    private static Blueprint Transformer()
    {
        var network = Network("H1", "H4", "X1", "X2") with
        {
            Elements = [Element("H1", "H4", ElementType.Load, Expression.True)],
            Converters =
            [
                new Converter
                {
                    Name = "secondary",
                    Inputs = ["H1", "H4"],
                    When = new Energised("H1", "H4", Grade.Solid, 1, null),
                    Output = new Supply
                    {
                        Name = "secondary",
                        Group = "secondary",
                        Conductors =
                        [
                            new("X1", "X1", 120, 0, Polarity.Alternating, Expression.True),
                            new("X2", "X2", 0, 0, Polarity.Alternating, Expression.True),
                        ],
                    },
                },
            ],
        };
        return Plain("transformer", network, ["H1", "H4"], ["X1", "X2"]);
    }

    private static Blueprint Lamp()
    {
        var network = Network("X1", "X2") with
        {
            Elements = [Element("X1", "X2", ElementType.Load, Expression.True)],
        };
        return Plain("lamp", network, ["X1"], ["X2"]) with { Parts = [new Part("", ["X1"], ["X2"], true)] };
    }

    private static Blueprint Linkage(List<string> tags) =>
        Plain("linkage", Network(), [], []) with
        {
            Links = [new LinkRule("mechanical", tags, "closed")],
        };
}
