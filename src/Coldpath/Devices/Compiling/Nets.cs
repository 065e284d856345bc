using Coldpath.Findings;
using Coldpath.Notation.Syntax;

namespace Coldpath.Devices.Compiling;

/// <summary>
/// The nets of a device: its terminals in the order they are met, nets inside it ("*star"), and the earth. A terminal
/// with several marks ("U1/T1") may be spoken of by any of them.
/// </summary>
internal sealed class Nets(KindFindings findings)
{
    public const string Earth = "PE";
    public const string Any = "*";
    private const string Line = "line";
    private const string Load = "load";

    private readonly List<string> inOrder = [];
    private readonly Dictionary<string, string> byMark = new(StringComparer.Ordinal);
    private readonly Dictionary<string, WordSyntax> inner = new(StringComparer.Ordinal);
    private readonly HashSet<string> passed = new(StringComparer.Ordinal);

    public IReadOnlyList<string> InOrder => inOrder;

    public static bool IsInner(string net) => net.StartsWith('*');

    public static bool IsTerminal(string net) => !IsInner(net) && net != Earth;

    /// <summary>The net that a name in brackets means. Asking for an inner net counts as meeting it.</summary>
    public string Of(WordSyntax word, Pole? pole)
    {
        if (word.Text is Line or Load)
            return OfPole(word, pole);
        if (!IsInner(word.Text))
            return Met(byMark.GetValueOrDefault(word.Text, word.Text));
        var net = pole is null || IsNamedBy(pole, word.Text) ? word.Text : $"{word.Text}{pole.Number}";
        if (!inner.TryAdd(net, word))
            passed.Add(net);
        return Met(net);
    }

    public IReadOnlyList<string> Of(ListSyntax list, Pole? pole) => [.. list.Names.Select(n => Of(n, pole))];

    public (string A, string B) Of(PairSyntax pair, Pole? pole) => (Of(pair.A, pole), Of(pair.B, pole));

    /// <summary>One terminal with one mark or more.</summary>
    public string Terminal(ListSyntax marks)
    {
        var terminal = string.Join('/', marks.Names);
        foreach (var mark in marks.Names)
            if (!byMark.TryAdd(mark.Text, terminal))
                findings.Twice(mark.Span, mark.Text);
        return Met(terminal);
    }

    /// <summary>Whether any terminal that is named is there, as on a terminal strip.</summary>
    public static bool IsAny(ListSyntax marks) => marks.Names is [{ Text: Any }];

    /// <summary>An inner net that is met only once leads nowhere: the kind's text cannot mean that.</summary>
    public void ReportDangling()
    {
        foreach (var (net, word) in inner)
            if (!passed.Contains(net))
                findings.Dangling(word.Span, net);
    }

    /// <summary>Pairs of a <c>for each pole</c> may name inner nets that are declared outside it.</summary>
    private static bool IsNamedBy(Pole pole, string net) =>
        pole.Ends.A.Text == net || pole.Ends.B.Text == net;

    private string OfPole(WordSyntax side, Pole? pole)
    {
        if (pole is not null)
            return Of(side.Text == Line ? pole.Ends.A : pole.Ends.B, null);
        findings.OnlyInPole(side.Span, $"'{side.Text}'");
        return Met(side.Text);
    }

    private string Met(string net)
    {
        if (!inOrder.Contains(net))
            inOrder.Add(net);
        return net;
    }
}
