using Coldpath.Tests.Sheets.Drawings.Control;
using CsCheck;

namespace Coldpath.Tests.Sheets.Drawings;

/// <summary>Panels at random, as text, with a power circuit and a control circuit.</summary>
internal static class RandomPanels
{
    public static Gen<string> Texts =>
        from head in Heads
        from power in RandomPower.Circuits(20)
        from rungs in RandomRungs.Circuits
        select head + power + rungs;

    /// <summary>What stands before the devices.</summary>
    public static Gen<string> Heads =>
        from rules in Gen.OneOf(Gen.Const("IEC"), Gen.Const("NEC"))
        select $"""
            panel "Trial"
              rules   {rules}
              system  400 V 3-phase 50 Hz, TN-S


            """;
}
