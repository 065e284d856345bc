using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// What may be while somebody relies on a part being dead: every variable free, interlocks or not, contacts welded,
/// semiconductors shorted, supplies back; only coils, wiring and controls have not failed.
/// </summary>
internal static class Freedom
{
    public static Diagram Of(StateSpace space)
    {
        var whole = space
            .Variables.Index()
            .Where(v => v.Item.Class is FailureClass.Coil or FailureClass.Wiring or FailureClass.Control)
            .Select(v => space.Is(v.Index, space.Rest[v.Index]));
        return space.Table.AllOf([space.Domain, .. whole]);
    }
}
