using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>What happens when something fails, in words.</summary>
public static class FailureWords
{
    public static string Of(Variable failure) =>
        failure.Name.StartsWith(failure.Device + ".", StringComparison.Ordinal)
            ? $"{failure.Device}: {failure.Name[(failure.Device.Length + 1)..]}"
            : failure.Name;
}
