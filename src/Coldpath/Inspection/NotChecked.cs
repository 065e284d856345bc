namespace Coldpath.Inspection;

/// <param name="Check">Name of the check.</param>
/// <param name="Reason">Why it could not be made, without a full stop.</param>
public sealed record NotChecked(string Check, string Reason);
