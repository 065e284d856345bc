using Coldpath.Findings;
using Coldpath.Notation.Syntax;

namespace Coldpath.Panels.Binding;

/// <summary>A name in brackets that was taken as a pole's conductor, to be confirmed once all conductors are known.</summary>
/// <param name="Mark">As written, "L1".</param>
/// <param name="Chosen">The pin it was taken for.</param>
/// <param name="Others">The other poles' pins on that side.</param>
internal sealed record ConductorUse(string Mark, Pin Chosen, IReadOnlyList<Pin> Others, Span Span);

/// <summary>
/// Reads the names of a bracket or behind a colon: a terminal's own marking first, whole or the part before or after
/// the stroke; then the conductor that arrives there.
/// </summary>
internal sealed class Bracket(DeviceReading reading, TerminalBook book, ConductorNames conductors)
{
    /// <summary>So many terminals are looked through for the one that was meant.</summary>
    private const int MostCompared = 50;

    private readonly TerminalSet terminals = book.Of(reading.Tag);

    /// <summary>Poles as passed by a bare name; for a busbar or a device without poles, its terminals twice.</summary>
    private readonly IReadOnlyList<(string Left, string Right)> poles = PolesOrSides(reading);

    public List<ConductorUse> Uses { get; } = [];
    public List<Finding> Findings { get; } = [];

    /// <summary>Whether a name may become clear once more conductors are known.</summary>
    public bool Waits { get; private set; }

    /// <summary>The terminal that one name stands for wherever it is written; null when there is none.</summary>
    public string? Terminal(WordSyntax name) => terminals.Find(name.Text) ?? Unknown(name);

    /// <summary>The same as a pin; a device's own earth is the earth.</summary>
    public Pin? Pin(WordSyntax name)
    {
        var network = reading.Device.Blueprint!.Network;
        if (name.Text == network.Earth && network.Nets.Contains(network.Earth))
            return Binding.Pin.Earth;
        return Terminal(name) is { } terminal ? PinOf(terminal) : null;
    }

    /// <summary>The terminals that the names stand for on the side where a chain begins or ends.</summary>
    public IReadOnlyList<string>? Side(IReadOnlyList<WordSyntax> names, bool loadSide) =>
        Every(names, n => OnSide(n, loadSide));

    /// <summary>
    /// The terminals that a chain meets and leaves by when it passes the named poles. Named by their line side, or
    /// by conductor, the conductors enter in the order written and leave in the order of the poles; named by their
    /// load side the other way round. So a crossing is at the side that is named.
    /// </summary>
    public (IReadOnlyList<string> Left, IReadOnlyList<string> Right)? Passed(IReadOnlyList<WordSyntax> names)
    {
        var onLeft = names.Select(n => PoleAt(n.Text, p => p.Left)).ToList();
        var onRight = names.Select(n => PoleAt(n.Text, p => p.Right)).ToList();
        var byConductor = names.Select(PoleOfConductor).ToList();
        if (onLeft.TrueForAll(p => p is not null))
            return (Lefts(onLeft), Rights([.. onLeft.Order()]));
        if (onRight.TrueForAll(p => p is not null))
            return (Lefts([.. onRight.Order()]), Rights(onRight));
        if (byConductor.TrueForAll(p => p is not null))
            return (Lefts(byConductor), Rights([.. byConductor.Order()]));
        var touched = Every(names, n => terminals.Find(n.Text) ?? Unknown(n));
        if (touched is null || SidesMixed(names, touched))
            return null;
        return (touched, touched);
    }

    private bool SidesMixed(IReadOnlyList<WordSyntax> names, IReadOnlyList<string> touched)
    {
        if (!poles.Any(p => p.Left != p.Right && (touched.Contains(p.Left) || touched.Contains(p.Right))))
            return false;
        var message = $"the names in the bracket of {reading.Tag} are not on one side of its poles";
        var span = names[0].Span.Through(names[^1].Span);
        Findings.Add(Complaint.AmbiguousTerminal.At(span, message, reading.Tag));
        return true;
    }

    private IReadOnlyList<string> Lefts(IEnumerable<int?> at) => [.. at.Select(p => poles[p!.Value].Left)];

    private IReadOnlyList<string> Rights(IEnumerable<int?> at) => [.. at.Select(p => poles[p!.Value].Right)];

    private static IReadOnlyList<(string, string)> PolesOrSides(DeviceReading reading)
    {
        var blueprint = reading.Device.Blueprint!;
        var poles = Markings.PolesOf(blueprint);
        if (poles.Count > 0 || !Markings.IsBar(blueprint))
            return poles;
        return [.. blueprint.LineSide.Select(t => (t, t))];
    }

    private static IReadOnlyList<string>? Every(
        IReadOnlyList<WordSyntax> names,
        Func<WordSyntax, string?> meant
    )
    {
        var found = names.Select(meant).ToList();
        return found.Contains(null) ? null : [.. found.OfType<string>()];
    }

    private string? OnSide(WordSyntax name, bool loadSide)
    {
        var blueprint = reading.Device.Blueprint!;
        var side = loadSide ? blueprint.LoadSide : blueprint.LineSide;
        var own = terminals.Contains(name.Text) ? name.Text : Own(name.Text, side) ?? Anywhere(name.Text);
        return own ?? ByConductor(name, side, loadSide) ?? OtherSide(name, loadSide) ?? Unknown(name);
    }

    /// <summary>Says so when only the side away from the chain has the marking; it is not guessed which is meant.</summary>
    private string? OtherSide(WordSyntax name, bool loadSide)
    {
        if (MayYetCome() || Findings.Count > 0 || terminals.Find(name.Text) is not { } terminal)
            return null;
        var (near, far) = loadSide ? ("load", "line") : ("line", "load");
        var message = $"{name} of {reading.Tag} is not on its {near} side, which the chain meets here";
        var remedy = $"write {terminal} if the {far} side is meant";
        Findings.Add(Complaint.AmbiguousTerminal.At(name.Span, message, reading.Tag, remedy));
        return null;
    }

    /// <summary>A number, or a marking of a device without poles, can mean its own terminal only.</summary>
    private string? Anywhere(string mark) =>
        Markings.IsNumber(mark) || poles.All(p => p.Left == p.Right) ? terminals.Find(mark) : null;

    /// <summary>The pole's terminal on the chain's side, by the conductor there or the marking of its other side.</summary>
    private string? ByConductor(WordSyntax name, IReadOnlyList<string> side, bool loadSide)
    {
        var arriving = side.Where(t => conductors.At(PinOf(t)).Contains(name.Text)).ToList();
        var acrossPole = loadSide ? PoleAt(name.Text, p => p.Left) : null;
        var chosen =
            acrossPole is { } pole ? poles[pole].Right
            : arriving.Count == 1 ? arriving[0]
            : null;
        if (chosen is null && arriving.Count > 1)
            return Ambiguous(name, arriving);
        if (chosen is not null)
            Uses.Add(
                new(name.Text, PinOf(chosen), [.. side.Where(t => t != chosen).Select(PinOf)], name.Span)
            );
        return chosen;
    }

    private int? PoleAt(string mark, Func<(string Left, string Right), string> side)
    {
        var found = Own(mark, [.. poles.Select(side)]);
        return found is null ? null : poles.Select(side).ToList().IndexOf(found);
    }

    private int? PoleOfConductor(WordSyntax name)
    {
        var found = Enumerable.Range(0, poles.Count).Where(i => Arrives(name.Text, poles[i].Left)).ToList();
        return found.Count == 1 ? found[0] : null;
    }

    private bool Arrives(string conductor, string terminal) =>
        conductors.At(PinOf(terminal)).Contains(conductor);

    private Pin PinOf(string terminal) => new(reading.Tag, terminal);

    /// <summary>The terminal with this marking, or the only one with it as a part.</summary>
    private static string? Own(string mark, IReadOnlyList<string> among)
    {
        if (among.Contains(mark))
            return mark;
        var partly = among.Where(t => Markings.IsMarkOf(mark, t)).ToList();
        return partly.Count == 1 ? partly[0] : null;
    }

    /// <summary>What is not found may be a conductor's name that other chains will bring.</summary>
    private bool MayYetCome()
    {
        Waits |= !conductors.AreAll;
        return Waits;
    }

    private string? Ambiguous(WordSyntax name, IReadOnlyList<string> candidates)
    {
        var message =
            $"{name} arrives at more than one terminal of {reading.Tag}, {string.Join(" and ", candidates)}";
        Findings.Add(Complaint.AmbiguousTerminal.At(name.Span, message, reading.Tag, "name the terminal"));
        return null;
    }

    private string? Unknown(WordSyntax name)
    {
        if (MayYetCome() || Findings.Count > 0)
            return null;
        var known = terminals.InOrder.Count == 0 ? "it has none" : $"it has {Listed()}";
        var message = $"{reading.Tag} has no terminal {name}; {known}";
        var marks = terminals.InOrder.Take(MostCompared).SelectMany(t => t.Split('/').Append(t));
        var near = SpellChecker.Nearest(name.Text, marks);
        var remedy = near is null ? null : $"did you mean {near}?";
        Findings.Add(Complaint.UnknownTerminal.At(name.Span, message, reading.Tag, remedy));
        return null;
    }

    private string Listed()
    {
        const int Shown = 12;
        var shown = string.Join(", ", terminals.InOrder.Take(Shown));
        return terminals.InOrder.Count > Shown ? $"{shown}, …" : shown;
    }
}
