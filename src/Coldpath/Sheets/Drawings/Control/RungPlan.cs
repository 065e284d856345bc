namespace Coldpath.Sheets.Drawings.Control;

/// <summary>Rungs between one pair of rails, under one heading.</summary>
/// <param name="Left">Net of the left rail; null when no rung begins at one.</param>
/// <param name="Right">Net of the right rail; null when no rung ends at one.</param>
internal sealed record LadderSection(string? Left, string? Right);

/// <summary>How a rung hangs together with its neighbours.</summary>
/// <param name="Section">Index of its section.</param>
/// <param name="Block">Rungs of one number are joined by nodes and stand together.</param>
/// <param name="FromRail">Begins at the left rail.</param>
/// <param name="ToRail">Ends at the right rail.</param>
/// <param name="From">The node that it hangs from; null when it begins otherwise.</param>
/// <param name="To">The node that it gives to rungs below; null when it ends otherwise.</param>
internal sealed record RungPlan(
    Rung Rung,
    int Section,
    int Block,
    bool FromRail,
    bool ToRail,
    Stem? From,
    Stem? To
);
