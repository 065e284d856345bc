using Coldpath.Devices;
using Coldpath.Wiring;
using Coldpath.Wiring.Failures;

namespace Coldpath.Panels.Flattening;

/// <summary>
/// Wires to earth: conductors that can break, since the earth is one net and nothing is joined to it but through an
/// element.
/// </summary>
internal sealed class BondFlattening(IReadOnlyList<Bond> bonds)
{
    private readonly IReadOnlyList<(Bond Bond, string Id)> named =
    [
        .. bonds
            .GroupBy(b => b.Point)
            .SelectMany(g => g.Select((b, i) => (b, i == 0 ? $"{b.Point}-PE" : $"{b.Point}-PE.{i + 1}"))),
    ];

    public IEnumerable<Variable> Variables() =>
        named.Select(b =>
            FailureVariable.Of(BreakOf(b.Id), b.Bond.Device, FailureClass.Wiring, Expression.True)
        );

    public IEnumerable<Element> Elements() =>
        named.Select(b => new Element
        {
            Id = b.Id,
            Device = b.Bond.Device,
            A = b.Bond.Net,
            B = Naming.Earth,
            Type = ElementType.Conductor,
            Closed = new VariableIs(BreakOf(b.Id), FailureVariable.No),
        });

    private static string BreakOf(string id) => $"{id} broken";
}
