namespace Coldpath.Wiring;

/// <summary>
/// The flattened panel: everything an outsider needs to recompute an answer. Kinds and trade names mean nothing
/// to a reader of it. Written as JSON by the export.
/// </summary>
public sealed record Netlist
{
    public required string Panel { get; init; }

    /// <summary>Rule set, "NEC" or "IEC".</summary>
    public string Rules { get; init; } = "IEC";

    /// <summary>Hertz.</summary>
    public double Frequency { get; init; } = 50;

    /// <summary>The one earth net; also listed in <see cref="Nets"/>.</summary>
    public required string Earth { get; init; }

    public required IReadOnlyList<string> Nets { get; init; }
    public IReadOnlyList<Supply> Supplies { get; init; } = [];
    public IReadOnlyList<Converter> Converters { get; init; } = [];
    public IReadOnlyList<Coupling> Couplings { get; init; } = [];

    /// <summary>In declared order, which is also the order that breaks ties between equally short stories.</summary>
    public IReadOnlyList<Variable> Variables { get; init; } = [];

    /// <summary>Operations that lead from rest to powered, in order, each "VARIABLE=VALUE".</summary>
    public IReadOnlyList<Operation> Powered { get; init; } = [];
    public IReadOnlyList<Element> Elements { get; init; } = [];
    public IReadOnlyList<NetlistDevice> Devices { get; init; } = [];
    public IReadOnlyList<Load> Loads { get; init; } = [];
    public IReadOnlyList<Constraint> Constraints { get; init; } = [];

    /// <summary>Devices declared to belong together: reversing, speed or change-over pairs.</summary>
    public IReadOnlyList<DevicePair> Pairs { get; init; } = [];

    /// <summary>Terminals and named nodes by their notation, such as "Q1:1".</summary>
    public IReadOnlyList<Point> Points { get; init; } = [];
    public IReadOnlyList<Intent> Intents { get; init; } = [];

    /// <summary>What the description left open and how it was taken, one sentence each.</summary>
    public IReadOnlyList<string> Assumed { get; init; } = [];
}

/// <summary>Setting a variable to a value.</summary>
public sealed record Operation(string Variable, string Value);

public sealed record Supply
{
    public required string Name { get; init; }
    public bool Direct { get; init; }
    public Expression Present { get; init; } = Expression.True;

    /// <summary>Supplies of one group share their angle reference (are synchronised).</summary>
    public required string Group { get; init; }

    /// <summary>Extra-low voltage (SELV, PELV).</summary>
    public bool ExtraLow { get; init; }

    /// <summary>Cannot deliver its short-circuit current, so need not operate a short-circuit device.</summary>
    public bool Limited { get; init; }
    public Store? Store { get; init; }

    /// <summary>Source resistance and reactance in ohms.</summary>
    public Ohms Ohms { get; init; } = new(0, 0);
    public required IReadOnlyList<SupplyConductor> Conductors { get; init; }
}

/// <summary>Resistance and reactance in ohms.</summary>
public readonly record struct Ohms(double Resistance, double Reactance);

/// <param name="Name">As the standard marks it, such as L1.</param>
/// <param name="Net">Where it is connected.</param>
/// <param name="Volts">To the supply's own reference point.</param>
/// <param name="Degrees">Phase angle in the group's reference; 0 for DC.</param>
/// <param name="Polarity">Alternating, plus or minus.</param>
/// <param name="Present">Over variables.</param>
public sealed record SupplyConductor(
    string Name,
    string Net,
    double Volts,
    double Degrees,
    Polarity Polarity,
    Expression Present
);

public enum Polarity
{
    Alternating,
    Plus,
    Minus,
}

/// <summary>A stored source: the variable that says it is charged or turning, and its declared discharge time.</summary>
public sealed record Store(string Variable, string? Discharge);

public sealed record Converter
{
    public required string Name { get; init; }
    public ConverterType Type { get; init; }
    public required IReadOnlyList<string> Inputs { get; init; }

    /// <summary>Its loose coupling: one virtual net joined loosely to every terminal of these. Empty: none.</summary>
    public IReadOnlyList<IReadOnlyList<string>> Windings { get; init; } = [];

    /// <summary>Uses no negation over network predicates.</summary>
    public required Expression When { get; init; }
    public double Ratio { get; init; } = 1;
    public Ohms Ohms { get; init; }
    public required Supply Output { get; init; }
}

public enum ConverterType
{
    Transformer,
    Rectifier,
    Drive,
    Ups,
}

/// <summary>
/// Windings coupled loosely through one virtual net that is not a converter's (a motor frame, a drive). With
/// <paramref name="FirstDrives"/> only the first winding drives the rest.
/// </summary>
public sealed record Coupling(string Name, IReadOnlyList<IReadOnlyList<string>> Windings, bool FirstDrives);

public enum VariableKind
{
    Position,
    Process,
    Armature,
    Cell,
    Timer,
    Trip,
    Condition,
    Failure,
    Supply,
}

public enum FailureClass
{
    Contact,
    Semiconductor,
    Coil,
    Wiring,
    Control,
}

public sealed record Variable
{
    public required string Name { get; init; }
    public required string Device { get; init; }
    public required VariableKind Kind { get; init; }

    /// <summary>Only for <see cref="VariableKind.Failure"/>.</summary>
    public FailureClass? Class { get; init; }
    public required IReadOnlyList<string> Values { get; init; }
    public required string Rest { get; init; }

    /// <summary>A control with a release move of its own.</summary>
    public bool Momentary { get; init; }

    /// <summary>Stays open when the panel is powered.</summary>
    public bool Standby { get; init; }

    /// <summary>The coil's two nets, for an armature.</summary>
    public IReadOnlyList<string> Coil { get; init; } = [];
    public IReadOnlyList<Move> Moves { get; init; } = [];
}

public enum Mover
{
    Operator,
    Process,
    Settle,
    Delay,
    Trip,
    Condition,
    Failure,
}

/// <param name="From">Value before.</param>
/// <param name="To">Value after.</param>
/// <param name="By">Who or what makes it. Moves by short circuit follow from <see cref="ShortOpening"/>.</param>
/// <param name="When">The move is certain (urgent for settle) when this holds.</param>
/// <param name="May">The move is optional when this holds and <paramref name="When"/> does not.</param>
public sealed record Move(string From, string To, Mover By, Expression When, Expression May);

public enum ElementType
{
    Conductor,
    Contact,
    Semiconductor,
    Thermal,
    Series,
    Load,
    Diode,
    Fault,
}

public sealed record Element
{
    public required string Id { get; init; }
    public required string Device { get; init; }

    /// <summary>Numbered from 1; 0 where poles mean nothing.</summary>
    public int Pole { get; init; }

    /// <summary>One that a load's feed can pass.</summary>
    public bool Power { get; init; }
    public required string A { get; init; }
    public required string B { get; init; }
    public required ElementType Type { get; init; }
    public Expression Closed { get; init; } = Expression.True;

    /// <summary>Null: leaks whenever not closed for a semiconductor, never for anything else.</summary>
    public Expression? Leaks { get; init; }
    public Ohms Ohms { get; init; }

    /// <summary>What a load takes; the first whose condition holds counts. Empty: not known, unless ohms are given.</summary>
    public IReadOnlyList<Burden> Burdens { get; init; } = [];
    public string? Size { get; init; }
    public double? Metres { get; init; }
}

/// <summary>What a load takes at its rated voltage, as the range that a rating leaves open.</summary>
/// <param name="When">Over variables: a coil takes more with its armature out.</param>
/// <param name="Volts">Rated voltage; null when not given.</param>
/// <param name="Direct">Made for direct voltage.</param>
/// <param name="Least">Volt-amperes; 0 when it may take nothing at all.</param>
/// <param name="Most">Volt-amperes.</param>
/// <param name="LeastFactor">Power factor with alternating voltage.</param>
/// <param name="MostFactor">Power factor with alternating voltage.</param>
public sealed record Burden(
    Expression When,
    double? Volts,
    bool Direct,
    double Least,
    double Most,
    double LeastFactor,
    double MostFactor
);

public enum ControlUse
{
    None,
    Stop,
    Start,
    Mode,
}

public sealed record NetlistDevice
{
    public required string Tag { get; init; }
    public string Panel { get; init; } = "";
    public required string Kind { get; init; }
    public string? Place { get; init; }
    public ControlUse Use { get; init; }

    /// <summary>A stop that must stop everything, whatever feeds it.</summary>
    public bool Emergency { get; init; }

    /// <summary>It stands for things in another panel: what these may do is free already, their failures with it.</summary>
    public bool Elsewhere { get; init; }
    public IReadOnlyList<Protection> Protects { get; init; } = [];
    public Isolation? Isolates { get; init; }
    public IReadOnlyList<ShortOpening> OpensOnShort { get; init; } = [];

    /// <summary>What its kind calls its states ("full speed"), over the netlist's names.</summary>
    public IReadOnlyList<KeyValuePair<string, Expression>> States { get; init; } = [];

    /// <summary>Ratings as printed in the description, by parameter name.</summary>
    public IReadOnlyList<KeyValuePair<string, string>> Ratings { get; init; } = [];
    public IReadOnlyList<int> Span { get; init; } = [];
}

/// <summary>Protection against "overload", "phase loss" or "earth fault" by the elements, acting through the variable.</summary>
public sealed record Protection(string Against, IReadOnlyList<string> Elements, string Variable);

/// <param name="Variable">Its position; null when it has none (fuse links that are taken out).</param>
/// <param name="Elements">The pole elements that opening takes out.</param>
/// <param name="Lockable">Lockable open.</param>
/// <param name="Visible">Visible break.</param>
/// <param name="Rank">1: isolating device; 2: needs a further measure.</param>
public sealed record Isolation(
    string? Variable,
    IReadOnlyList<string> Elements,
    bool Lockable,
    bool Visible,
    int Rank
);

/// <summary>A short through any of the elements moves the variable to the value.</summary>
/// <param name="Variable">The variable that operates.</param>
/// <param name="To">The value it takes.</param>
/// <param name="Elements">The elements whose short current operates it.</param>
/// <param name="Breaks">Interrupting rating in kA, null when not given.</param>
public sealed record ShortOpening(string Variable, string To, IReadOnlyList<string> Elements, double? Breaks);

public sealed record Load
{
    public required string Name { get; init; }
    public IReadOnlyList<string> Elements { get; init; } = [];

    /// <summary>Its terminals' nets: the load stands live when one of these is live.</summary>
    public IReadOnlyList<string> Terminals { get; init; } = [];
    public IReadOnlyList<LoadMode> Modes { get; init; } = [];
}

/// <param name="Name">Such as "delta".</param>
/// <param name="Speed">Revolutions a minute, null where it means nothing.</param>
/// <param name="Feed">Two or three nets, to be reached by distinct conductors.</param>
/// <param name="Joined">Pairs that must be in one solid component.</param>
/// <param name="Apart">Pairs that must not be.</param>
/// <param name="Turns">Direction of rotation when the feed comes in forward order (or plus first).</param>
public sealed record LoadMode(
    string Name,
    double? Speed,
    IReadOnlyList<string> Feed,
    IReadOnlyList<NetPair> Joined,
    IReadOnlyList<NetPair> Apart,
    Turning Turns
);

public readonly record struct NetPair(string A, string B);

/// <param name="Name">For the reader.</param>
/// <param name="Kind">"mechanical", "key" or "mirror".</param>
/// <param name="Holds">Over variables; a move whose result makes it false does not exist.</param>
public sealed record Constraint(string Name, string Kind, Expression Holds);

/// <param name="Kind">"reversing", "speed" or "change-over".</param>
/// <param name="Devices">Their tags.</param>
public sealed record DevicePair(string Kind, IReadOnlyList<string> Devices);

public sealed record Point(string Name, string Net, string? Device, string? Place);

public enum IntentForm
{
    Never,
    Dead,
    Stops,
    Can,
}

/// <summary>A line that says what the panel is meant to do.</summary>
public sealed record Intent
{
    public required IntentForm Form { get; init; }

    /// <summary>The load or device spoken of (dead, stops, can).</summary>
    public string? Of { get; init; }

    /// <summary>The operated control (stops): its variable and the values that count as operated.</summary>
    public IReadOnlyList<Operation> By { get; init; } = [];

    /// <summary>Devices whose power elements the way passes (can).</summary>
    public IReadOnlyList<string> Via { get; init; } = [];

    /// <summary>The condition (never, dead); true otherwise.</summary>
    public Expression When { get; init; } = Expression.True;
    public bool Settled { get; init; }
    public bool AtOnce { get; init; }
    public int Failures { get; init; }
    public IReadOnlyList<int> Span { get; init; } = [];
}
