using Coldpath.Wiring;
using Coldpath.Wiring.Failures;

namespace Coldpath.Devices;

/// <summary>The failure of one contact that has welded: it can happen only while the contact is closed.</summary>
internal static class ContactWeld
{
    public static Variable Of(string element) =>
        FailureVariable.Of($"weld{element}", device: "", FailureClass.Contact, new Closed(element));

    public static Expression Happened(Variable failure) => FailureVariable.Happened(failure.Name);
}
