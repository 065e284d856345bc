using Coldpath.Sheets.Drawings.Symbols.Control;

namespace Coldpath.Sheets.Drawings.Symbols;

/// <summary>The symbol for a part in a rung: by its role, then by its kind's symbol name.</summary>
internal static class ControlSymbols
{
    public static Symbol Of(ControlPart part) =>
        part.Role switch
        {
            ControlRole.Coil => Coils.Of(part),
            ControlRole.Contact => part.Rules == "NEC" ? IeeeContacts.Of(part) : IecContacts.Of(part),
            ControlRole.Load => Ends.Of(part),
            ControlRole.Terminal => Ends.Terminal(part),
            _ => Passed.Of(part),
        };
}
