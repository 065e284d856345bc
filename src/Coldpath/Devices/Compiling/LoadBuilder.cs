using Coldpath.Notation.Syntax;
using Coldpath.Wiring;

namespace Coldpath.Devices.Compiling;

/// <summary>The device as a load, where it lists connections in which it runs.</summary>
internal sealed class LoadBuilder(KindContext context)
{
    private const string Name = "load";

    private readonly List<LoadMode> modes = [];

    public void Add(PlacedLine placed)
    {
        if (placed.Line is ModeSyntax mode)
            modes.Add(Mode(mode));
    }

    public IReadOnlyList<Load> Loads(IReadOnlyList<Element> elements)
    {
        if (modes.Count == 0)
            return [];
        var loads = elements.Where(e => e.Type == ElementType.Load).ToList();
        return
        [
            new Load
            {
                Name = Name,
                Elements = [.. loads.Select(e => e.Id)],
                Terminals =
                [
                    .. loads
                        .SelectMany(e => new[] { e.A, e.B })
                        .Concat(modes.SelectMany(m => m.Feed))
                        .Where(Nets.IsTerminal)
                        .Distinct(),
                ],
                Modes = modes,
            },
        ];
    }

    private LoadMode Mode(ModeSyntax line) =>
        new(
            string.Join(' ', line.Name),
            line.Speed is null ? null : context.Arithmetic.Of(line.Speed),
            context.Nets.Of(line.Feeds, null),
            Pairs(line.Joined),
            Pairs(line.Apart),
            line.Turns?.Text switch
            {
                "forward" => Turning.Forward,
                "reverse" => Turning.Reverse,
                _ => Turning.Any,
            }
        );

    private NetPair[] Pairs(IReadOnlyList<PairSyntax> pairs)
    {
        var nets = new NetPair[pairs.Count];
        for (var i = 0; i < nets.Length; i++)
        {
            var (a, b) = context.Nets.Of(pairs[i], null);
            nets[i] = new NetPair(a, b);
        }
        return nets;
    }
}
