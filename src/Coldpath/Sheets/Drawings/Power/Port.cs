using Coldpath.Panels;

namespace Coldpath.Sheets.Drawings.Power;

/// <summary>A place where wire meets a block: one terminal, or in one-line form those that belong together.</summary>
/// <param name="Index">Over all ports of the power side.</param>
/// <param name="Block">Index of its block.</param>
/// <param name="Above">On the line side.</param>
/// <param name="Slot">Its place across, from 0.</param>
/// <param name="Terminals">In order of their conductors.</param>
internal sealed record Port(int Index, int Block, bool Above, int Slot, IReadOnlyList<Terminal> Terminals)
{
    public bool Has(Terminal terminal) => Terminals.Contains(terminal);
}
