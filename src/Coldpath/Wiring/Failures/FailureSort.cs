namespace Coldpath.Wiring.Failures;

/// <summary>What sort of thing a failure is, read off the wiring: a name or a kind would tell nothing.</summary>
public enum FailureSort
{
    /// <summary>A contact or an operating part that stays as it is or moves by itself.</summary>
    Part,
    Semiconductor,

    /// <summary>A wire comes off, a coil or winding opens, a contact does not make.</summary>
    Broken,

    /// <summary>A conductor touches earth or another one.</summary>
    Touching,
}
