namespace Coldpath.Circuit.Conduction;

/// <summary>What matters between two levels of a sweep: nodes and links with one side behind and one ahead.</summary>
internal sealed class Front
{
    /// <param name="graph">What is swept.</param>
    /// <param name="number">So many levels are behind.</param>
    public Front(SweptGraph graph, int number)
    {
        Number = number;
        var ahead = graph.Links.Where(l => l.Last >= number).SelectMany(Ends).ToHashSet();
        var behind = graph.Links.Where(l => l.First < number).SelectMany(Ends);
        int[] between = [.. behind.Where(ahead.Contains).Distinct().Order()];
        Nodes = [graph.From, graph.To, .. between];
        FromGoesOn = ahead.Contains(graph.From);
        ToGoesOn = ahead.Contains(graph.To);
        Begun = [.. Numbered(graph).Where(l => l.Link.First < number && l.Link.Last >= number)];
        Met = [.. Begun, .. Numbered(graph).Where(l => l.Link.First == number)];
        Beginning = [.. Met.SelectMany(l => Ends(l.Link)).Except(Nodes)];
    }

    /// <summary>So many levels are behind.</summary>
    public int Number { get; }

    /// <summary>The two ends of all ways; then the nodes with links behind and ahead, an end perhaps again.</summary>
    public int[] Nodes { get; }

    /// <summary>Nodes whose first links depend on the level that comes next.</summary>
    public int[] Beginning { get; }

    /// <summary>Links that depend on levels behind and ahead.</summary>
    public (int Number, SweptLink Link)[] Begun { get; }

    /// <summary>Those, and the links of which the level that comes next is the first.</summary>
    public (int Number, SweptLink Link)[] Met { get; }

    /// <summary>The node from which ways begin has links ahead.</summary>
    public bool FromGoesOn { get; }

    /// <summary>The node where ways end has links ahead.</summary>
    public bool ToGoesOn { get; }

    private static IEnumerable<int> Ends(SweptLink link) => [link.A, link.B];

    private static IEnumerable<(int Number, SweptLink Link)> Numbered(SweptGraph graph) =>
        graph.Links.Select((link, number) => (number, link));
}
