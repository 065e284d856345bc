using System.Globalization;
using Coldpath.Wiring;

namespace Coldpath.Devices;

/// <summary>
/// One device in its own terms: its kind with the ratings filled in. It is a small netlist whose nets are terminal
/// names ("1/L1"), internal nets ("*star") or the earth ("PE"), and whose variables and elements have local names;
/// a panel is the union of such networks with terminals joined.
/// </summary>
public sealed record Blueprint
{
    public required Kind Kind { get; init; }

    /// <summary>Ratings in declared order: given ones, defaults and flags that were said.</summary>
    public required IReadOnlyList<Rating> Ratings { get; init; }

    /// <summary>
    /// The device as a netlist in local names. Element ids are terminal pairs ("1/L1-2/T1").
    /// <see cref="Netlist.Powered"/> holds what closes it when the panel is powered; <see cref="Netlist.Devices"/> has
    /// one entry, without a tag, with what it protects and isolates.
    /// </summary>
    public required Netlist Network { get; init; }

    /// <summary>
    /// The variable that is named by the tag alone: the first that is no failure, unless each pole has one of its
    /// own. Null when there is none.
    /// </summary>
    public string? OwnVariable { get; init; }

    /// <summary>Terminals that a chain meets when it ends here, in pole order, and those it leaves from.</summary>
    public required IReadOnlyList<string> LineSide { get; init; }
    public required IReadOnlyList<string> LoadSide { get; init; }

    /// <summary>Named two-terminal parts and the one a bare name passes.</summary>
    public required IReadOnlyList<Part> Parts { get; init; }
    public required IReadOnlyList<ContactFamily> Families { get; init; }

    /// <summary>States for conditions, by their words ("full speed"), over the device's own variables and elements.</summary>
    public required IReadOnlyList<KeyValuePair<string, Expression>> States { get; init; }
    public ControlUse Use { get; init; }

    /// <summary>Constraints and pairs that speak of other devices named in the ratings.</summary>
    public IReadOnlyList<LinkRule> Links { get; init; } = [];
}

/// <summary>A rating as given or derived, for answers and for conditions in kinds.</summary>
/// <param name="Name">The kind's name for it.</param>
/// <param name="Text">As printed ("140 A").</param>
/// <param name="Value">In base units (A, V, W, s, m, ohm); null for words.</param>
/// <param name="Second">Second value of a pair or of a dual voltage.</param>
/// <param name="Unit">Base unit, "V DC" apart from "V"; null for words and numbers.</param>
/// <param name="Words">Positions, device tags or the one word of a choice.</param>
public sealed record Rating(
    string Name,
    string Text,
    double? Value = null,
    double? Second = null,
    string? Unit = null,
    IReadOnlyList<string>? Words = null
);

/// <param name="Name">The words around the tag, as the kind writes them: "coil", "input run"; empty for a bare name.</param>
/// <param name="Left">Terminals on its line side.</param>
/// <param name="Right">Terminals on its load side, as many.</param>
/// <param name="Through">What a bare name in a chain passes.</param>
public sealed record Part(string Name, IReadOnlyList<string> Left, IReadOnlyList<string> Right, bool Through);

/// <summary>Contacts made as they are used: the star in the terminal patterns becomes the contact's number.</summary>
/// <param name="Name">"NO", "NC trip", "at".</param>
/// <param name="LeftPattern">Such as "*3".</param>
/// <param name="RightPattern">Such as "*4".</param>
/// <param name="Through">What a bare name in a chain uses.</param>
/// <param name="Closed">Over local variables; for a positions family true and <paramref name="Positions"/> decides.</param>
/// <param name="Positions">The variable whose named positions close the contact, or null.</param>
/// <param name="Welds">Whether a contact can weld, each for itself.</param>
public sealed record ContactFamily(
    string Name,
    string LeftPattern,
    string RightPattern,
    bool Through,
    Expression Closed,
    string? Positions,
    bool Welds = false
)
{
    /// <summary>The contact of a number, closed in the positions where the family goes by positions.</summary>
    /// <param name="number">What the star becomes.</param>
    /// <param name="positions">Where a contact of a positions family is closed.</param>
    /// <param name="values">The values of the device's positions variable.</param>
    public FamilyContact Contact(int number, IReadOnlyList<string> positions, IReadOnlyList<string> values)
    {
        var (a, b) = (Numbered(LeftPattern, number), Numbered(RightPattern, number));
        var id = $"{a}-{b}";
        var closed = Positions is null
            ? Closed
            : Expression.AnyOf(
                AndBetween(positions).Intersect(values).Select(p => new VariableIs(Positions, p))
            );
        var weld = Welds ? ContactWeld.Of(id) : null;
        var element = new Element
        {
            Id = id,
            Device = "",
            A = a,
            B = b,
            Type = ElementType.Contact,
            Closed = weld is null ? closed : Expression.AnyOf(closed, ContactWeld.Happened(weld)),
        };
        return new FamilyContact(element, weld);
    }

    /// <summary>A contact that is closed in two neighbouring positions stays closed on the way from one to the other.</summary>
    private static IEnumerable<string> AndBetween(IReadOnlyList<string> positions) =>
        positions.Concat(from a in positions from b in positions where a != b select $"{a}>{b}");

    private static string Numbered(string pattern, int number) =>
        pattern.Replace("*", number.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal);
}

/// <summary>A contact made from a family: its element and, where it can weld, the failure of its own.</summary>
public sealed record FamilyContact(Element Element, Variable? Weld);

/// <summary>A rule over other devices: at most one of them in a state, or a declared pair.</summary>
/// <param name="Rule">"mechanical", "key", "mirror" for constraints; "reversing", "speed", "change-over" for pairs.</param>
/// <param name="Devices">Their tags.</param>
/// <param name="State">The state at most one may be in; null for pairs.</param>
public sealed record LinkRule(string Rule, IReadOnlyList<string> Devices, string? State);
