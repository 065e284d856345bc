using Coldpath.Devices;
using Coldpath.Notation.Syntax;

namespace Coldpath.Panels.Binding;

/// <summary>
/// Gives every contact that is spoken of its number: first those written with one, then the next free number of the
/// device for each contact passed, then names at the ends of chains, which stand for the one contact there is.
/// </summary>
internal sealed class ContactBook
{
    private readonly BindingFindings findings;
    private readonly Dictionary<string, ContactList> lists = new(StringComparer.Ordinal);
    private readonly Dictionary<int, Contact> byReference = [];
    private readonly HashSet<int> refused = [];
    private readonly SortedDictionary<int, string> allocated = [];

    public ContactBook(IEnumerable<(DeviceReading Reading, Role Role)> readings, BindingFindings findings)
    {
        this.findings = findings;
        var known = readings.Where(r => r.Reading.Device.Blueprint!.Families.Count > 0).ToList();
        var isPair = known.ToLookup(r => NamesPair(r.Reading), r => r.Reading);
        foreach (var reading in isPair[true].OrderBy(r => r.Words.Length == 0))
            TakeNamed(reading);
        foreach (var reading in isPair[false])
            ListOf(reading).Reserve(reading.Syntax.Terminals?.Names.Select(n => n.Text) ?? []);
        foreach (var (tag, reading) in isPair[false].DistinctBy(r => r.Tag).Select(r => (r.Tag, r)))
            Complete(reading, lists[tag]);
        var unnumbered = known.Where(r => FamilyOf(r.Reading) is not null).ToList();
        foreach (var (reading, _) in unnumbered.Where(r => r.Role == Role.Passes))
            Allocate(reading);
        foreach (var (reading, _) in unnumbered.Where(r => r.Role != Role.Passes))
            TakeOnlyOne(reading);
    }

    /// <summary>Numbers that were found for contacts named by their sort, by the offset where the name starts.</summary>
    public IReadOnlyDictionary<int, string> Allocated => allocated;

    /// <summary>The contact that a name uses; null when it uses none.</summary>
    public Contact? UsedBy(DeviceReading reading) => byReference.GetValueOrDefault(reading.Syntax.Span.Start);

    /// <summary>Whether it has been said that a name uses no contact that is understood.</summary>
    public bool IsRefused(DeviceReading reading) => refused.Contains(reading.Syntax.Span.Start);

    /// <summary>The contacts of a device, by number.</summary>
    public IReadOnlyList<Contact> Of(string tag) => lists.TryGetValue(tag, out var list) ? list.InOrder : [];

    /// <summary>Terminals of families that are named, whether or not they came to be a contact.</summary>
    public IEnumerable<string> TerminalsOf(string tag) =>
        lists.TryGetValue(tag, out var list) ? list.Terminals : [];

    private ContactList ListOf(DeviceReading reading)
    {
        if (!lists.TryGetValue(reading.Tag, out var list))
            lists.Add(reading.Tag, list = new ContactList(reading.Device.Blueprint!));
        return list;
    }

    /// <summary>Whether it is written as <c>K1:13-14</c>, a contact of a family.</summary>
    private bool NamesPair(DeviceReading reading) =>
        reading.Syntax.Terminals is { Names: [{ Text: var name }] } && ListOf(reading).Pairs(name).Any();

    private void TakeNamed(DeviceReading reading)
    {
        var name = reading.Syntax.Terminals!.Names[0];
        var list = ListOf(reading);
        var fitting = list.Pairs(name.Text).ToList();
        var chosen = fitting.Where(f => reading.Words.Length == 0 || f.Family.Name == reading.Words).ToList();
        if (chosen.Count == 0)
        {
            var message =
                $"{reading.Tag}:{name} is a contact of the sort {fitting[0].Family.Name}, not {reading.Words}";
            Refuse(reading, message);
            return;
        }
        if (
            chosen.Select(c => list.Between(c.Family, c.Number)).FirstOrDefault() is { } other
            && !chosen.Any(c => c.Family == other.Family)
        )
        {
            Refuse(reading, $"{reading.Tag}:{name} is a contact of the sort {other.Family.Name} elsewhere");
            return;
        }
        var existing = chosen.Select(c => list.Find(c.Family, c.Number)).FirstOrDefault(c => c is not null);
        var contact = existing is not null ? Agreeing(reading, existing) : Introduced(reading, list, chosen);
        if (contact is not null)
            byReference[reading.Syntax.Span.Start] = contact;
    }

    private Contact? Agreeing(DeviceReading reading, Contact contact)
    {
        if (reading.Positions.Count == 0 || reading.Positions.SequenceEqual(contact.Positions))
            return contact;
        var message =
            $"{reading.Tag}:{contact.Name} is said to close at {string.Join(" or ", contact.Positions)} "
            + $"and here at {string.Join(" or ", reading.Positions)}";
        Refuse(reading, message);
        return null;
    }

    private Contact? Introduced(
        DeviceReading reading,
        ContactList list,
        List<(ContactFamily Family, int Number)> chosen
    )
    {
        if (Undecided(chosen.Select(c => c.Family), reading.Positions.Count > 0) is { } question)
        {
            var written = string.Join(", ", reading.Syntax.Terminals!.Names);
            var message = $"{reading.Tag}:{written} does not say {question}";
            Refuse(reading, message);
            return null;
        }
        return list.Add(chosen[0].Family, chosen[0].Number, reading.Positions);
    }

    /// <summary>What is still open when a contact is known by its number alone.</summary>
    private static string? Undecided(IEnumerable<ContactFamily> families, bool hasPositions)
    {
        var sorts = families.ToList();
        return sorts.Count > 1 ? $"which sort is meant, {string.Join(" or ", sorts.Select(s => s.Name))}"
            : sorts[0].Positions is not null && !hasPositions ? "at which positions the contact closes"
            : null;
    }

    /// <summary>Terminals named singly, as in wires, bring into being the contact that lies between them.</summary>
    private void Complete(DeviceReading reading, ContactList list)
    {
        foreach (var (family, number) in list.Complete())
        {
            var left = Markings.Numbered(family.LeftPattern, number);
            var right = Markings.Numbered(family.RightPattern, number);
            var message = $"{reading.Tag}:{left}-{right} does not say at which positions the contact closes";
            var remedy = $"write it in a chain, as in {reading.Tag} {family.Name} POSITION:{left}-{right}";
            Refuse(reading, message, remedy);
        }
    }

    /// <summary>The family that a name without number takes a contact of.</summary>
    private static ContactFamily? FamilyOf(DeviceReading reading)
    {
        if (reading.Syntax.Terminals is not null)
            return null;
        var blueprint = reading.Device.Blueprint!;
        if (reading.Words.Length > 0)
            return blueprint.Parts.Any(p => p.Name == reading.Words)
                ? null
                : blueprint.Families.FirstOrDefault(f => f.Name == reading.Words);
        var isStatic =
            blueprint.Parts.Any(p => p.Through) || blueprint.LineSide.Count + blueprint.LoadSide.Count > 0;
        return isStatic ? null : blueprint.Families.FirstOrDefault(f => f.Through);
    }

    private void Allocate(DeviceReading reading)
    {
        var list = ListOf(reading);
        var family = FamilyOf(reading)!;
        var contact = list.Add(family, list.NextFree(family), reading.Positions);
        byReference[reading.Syntax.Span.Start] = contact;
        if (reading.Words.Length > 0)
            allocated[reading.Syntax.Span.Start] = contact.Name;
    }

    private void TakeOnlyOne(DeviceReading reading)
    {
        var family = FamilyOf(reading)!;
        var present = ListOf(reading).Alike(family, reading.Positions);
        if (present.Count == 0)
        {
            Allocate(reading);
            return;
        }
        if (present.Count == 1)
        {
            byReference[reading.Syntax.Span.Start] = present[0];
            return;
        }
        var names = string.Join(" and ", present.Select(c => c.Name));
        var message = $"{reading.Name} has more than one contact in use, {names}: say which";
        var remedy = $"write {reading.Tag}:{present[0].Name}, or name the node there and begin with it";
        Refuse(reading, message, remedy);
    }

    private void Refuse(DeviceReading reading, string message, string? remedy = null)
    {
        refused.Add(reading.Syntax.Span.Start);
        findings.Add(Complaint.ContactConflict.At(reading.Syntax.Span, message, reading.Tag, remedy));
    }
}
