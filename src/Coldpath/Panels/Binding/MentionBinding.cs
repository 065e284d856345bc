using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation.Syntax;
using Coldpath.Panels.Flattening;

namespace Coldpath.Panels.Binding;

/// <summary>Checks what declarations say of other devices: that they are there, and are what is needed.</summary>
internal sealed class MentionBinding(
    Roster roster,
    IReadOnlySet<string> brokenWords,
    BindingFindings findings
)
{
    /// <summary>Every two of them are kept apart, so their number must stay small.</summary>
    private const int MostLinked = 50;

    public void Check(DeclarationSyntax declaration, Blueprint blueprint)
    {
        var tag = declaration.Tags[0].Text;
        foreach (var other in Synchronised(declaration, blueprint))
            Known(declaration, other);
        foreach (var other in Mentions.Sensed(blueprint))
            if (Known(declaration, other) is { } sensed && !Naming.Sensing(sensed).Any())
                Unfit(
                    declaration,
                    other,
                    $"{other} has nothing that senses current, which {tag} would act on"
                );
        if (blueprint.Links.Any(l => l.Devices.Count > MostLinked))
            Unfit(
                declaration,
                tag,
                $"{tag} names more than {MostLinked} devices, which is all that can be linked"
            );
        foreach (var link in blueprint.Links)
        foreach (var other in link.Devices)
            if (Known(declaration, other) is { } linked && !HasState(linked, link.State))
                Unfit(declaration, other, $"{other} has no state \"{link.State}\", which {tag} speaks of");
    }

    private static bool HasState(Blueprint blueprint, string? state) =>
        state is null || blueprint.States.Any(s => s.Key == state);

    /// <summary>A group that stands in the declaration is a tag; one that does not is a name of the kind's.</summary>
    private static IEnumerable<string> Synchronised(DeclarationSyntax declaration, Blueprint blueprint) =>
        blueprint
            .Network.Supplies.Where(s => s.Group != s.Name && PlaceOf(declaration, s.Group) is not null)
            .Select(s => s.Group)
            .Distinct();

    private static Span? PlaceOf(DeclarationSyntax declaration, string word) =>
        declaration.Atoms.OfType<WordAtom>().FirstOrDefault(a => a.Text == word)?.Span;

    /// <summary>Null when it is not known, or is known and was not understood.</summary>
    private Blueprint? Known(DeclarationSyntax declaration, string other)
    {
        if (roster.Find(other) is { } device)
            return device.Blueprint;
        if (brokenWords.Contains(other))
            return null;
        var remedy = findings.DidYouMean(other, roster.InOrder.Select(d => d.Tag)) ?? $"declare {other}";
        var span = PlaceOf(declaration, other) ?? declaration.Span;
        findings.Add(Complaint.UnknownName.At(span, $"{other} is not declared", other, remedy));
        return null;
    }

    private void Unfit(DeclarationSyntax declaration, string other, string message) =>
        findings.Add(
            Complaint.UnfitMention.At(PlaceOf(declaration, other) ?? declaration.Span, message, other)
        );
}
