using System.Globalization;
using Coldpath.Devices;

namespace Coldpath.Panels.Binding;

/// <summary>The contacts of one device that are in use.</summary>
internal sealed class ContactList
{
    private readonly Blueprint blueprint;
    private readonly HashSet<string> fixedTerminals;
    private readonly SortedSet<int> taken;
    private readonly SortedSet<string> touched = new(StringComparer.Ordinal);
    private readonly HashSet<string> ofContacts = new(StringComparer.Ordinal);
    private readonly Dictionary<(string Left, string Right), Contact> contacts = [];
    private readonly Dictionary<(string Family, string Positions), List<Contact>> alike = [];
    private int lowestFree = 1;

    public ContactList(Blueprint blueprint)
    {
        this.blueprint = blueprint;
        fixedTerminals = [.. Markings.TerminalsOf(blueprint)];
        taken = [.. fixedTerminals.Select(SequenceNumber).OfType<int>()];
    }

    public IReadOnlyList<Contact> InOrder =>
        [.. contacts.Values.OrderBy(c => c.Number).ThenBy(c => c.Left, StringComparer.Ordinal)];

    public Contact? Find(ContactFamily family, int number) =>
        Between(family, number) is { } contact && contact.Family == family ? contact : null;

    /// <summary>The contact between those terminals, of whatever sort.</summary>
    public Contact? Between(ContactFamily family, int number) =>
        contacts.GetValueOrDefault(TerminalsOf(family, number));

    /// <summary>Contacts of one sort, and of the same positions where it goes by those.</summary>
    public IReadOnlyList<Contact> Alike(ContactFamily family, IReadOnlyList<string> positions) =>
        alike.GetValueOrDefault((family.Name, string.Join('|', positions)), []);

    public Contact Add(ContactFamily family, int number, IReadOnlyList<string> positions)
    {
        var (left, right) = TerminalsOf(family, number);
        var contact = new Contact(family, number, left, right, positions);
        contacts.Add((contact.Left, contact.Right), contact);
        var key = (family.Name, string.Join('|', positions));
        if (!alike.TryGetValue(key, out var others))
            alike.Add(key, others = []);
        others.Add(contact);
        ofContacts.UnionWith([contact.Left, contact.Right]);
        taken.Add(number);
        return contact;
    }

    /// <summary>The lowest number that no contact of the device has, whatever its sort.</summary>
    public int NextFree(ContactFamily family)
    {
        while (taken.Contains(lowestFree))
            lowestFree++;
        var number = lowestFree;
        while (taken.Contains(number) || IsFixed(TerminalsOf(family, number)))
            number++;
        return number;
    }

    private bool IsFixed((string Left, string Right) terminals) =>
        fixedTerminals.Contains(terminals.Left) || fixedTerminals.Contains(terminals.Right);

    private static (string Left, string Right) TerminalsOf(ContactFamily family, int number) =>
        (Markings.Numbered(family.LeftPattern, number), Markings.Numbered(family.RightPattern, number));

    /// <summary>What "13-14" may be.</summary>
    public IEnumerable<(ContactFamily Family, int Number)> Pairs(string name) =>
        from pair in Markings.PairsIn(name)
        where !fixedTerminals.Contains(pair.Left) || !fixedTerminals.Contains(pair.Right)
        from family in blueprint.Families
        let number = InFamily(pair.Left, pair.Right, family) ?? InFamily(pair.Right, pair.Left, family)
        where number is not null
        select (family, number.Value);

    /// <summary>Keeps terminals named singly from being given to other contacts.</summary>
    public void Reserve(IEnumerable<string> terminals)
    {
        foreach (var terminal in terminals.Where(t => !fixedTerminals.Contains(t)))
        foreach (var (_, number) in Singles(terminal))
        {
            taken.Add(number);
            touched.Add(terminal);
        }
    }

    public IEnumerable<string> Terminals =>
        InOrder.SelectMany(c => new[] { c.Left, c.Right }).Concat(touched).Distinct();

    /// <summary>
    /// Adds the contacts both of whose terminals are named singly, or one so and one of another contact. Returns those
    /// that it cannot add because their positions are not known.
    /// </summary>
    public IReadOnlyList<(ContactFamily Family, int Number)> Complete()
    {
        var unknown = new List<(ContactFamily, int)>();
        foreach (var number in taken.ToList())
        foreach (var family in blueprint.Families.Where(f => IsBetweenNamed(f, number)))
            if (family.Positions is null)
                Add(family, number, []);
            else
                unknown.Add((family, number));
        return unknown;
    }

    private bool IsBetweenNamed(ContactFamily family, int number)
    {
        var (left, right) = TerminalsOf(family, number);
        var (leftUsed, rightUsed) = (IsOfContact(left), IsOfContact(right));
        return (leftUsed || touched.Contains(left))
            && (rightUsed || touched.Contains(right))
            && !(leftUsed && rightUsed);
    }

    private bool IsOfContact(string terminal) => ofContacts.Contains(terminal);

    private IEnumerable<(ContactFamily Family, int Number)> Singles(string terminal) =>
        from family in blueprint.Families
        let number = Markings.NumberIn(terminal, family.LeftPattern)
            ?? Markings.NumberIn(terminal, family.RightPattern)
        where number is not null
        select (family, number.Value);

    private static int? InFamily(string left, string right, ContactFamily family)
    {
        var number = Markings.NumberIn(left, family.LeftPattern);
        return number is not null && number == Markings.NumberIn(right, family.RightPattern) ? number : null;
    }

    /// <summary>9 of a fixed 95: no other contact of the device may bear it.</summary>
    private static int? SequenceNumber(string terminal) =>
        terminal.Length is 2 or 3 && Markings.IsNumber(terminal)
            ? int.Parse(terminal, CultureInfo.InvariantCulture) / 10
            : null;
}
