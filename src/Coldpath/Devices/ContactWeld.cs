using Coldpath.Wiring;

namespace Coldpath.Devices;

/// <summary>The failure of one contact that has welded: it can happen only while the contact is closed.</summary>
internal static class ContactWeld
{
    public static Variable Of(string element) =>
        FailureVariable.Of($"weld{element}", FailureClass.Contact, new Closed(element));

    public static Expression Happened(Variable failure) => new VariableIs(failure.Name, FailureVariable.Yes);
}
