using Coldpath.Devices.Compiling;
using Coldpath.Devices.Ratings;
using Coldpath.Notation.Syntax;

namespace Coldpath.Devices;

/// <summary>Makes blueprints of kinds.</summary>
public static class KindCompiler
{
    /// <summary>
    /// The blueprint of a device of the kind, with what there is to say about its declaration and about the kind's
    /// text. A wrong rating is reported and left out, so that the rest of the panel can be looked at; a missing one
    /// that the kind needs, or a mistake in the kind, leaves no blueprint; nothing is said of a kind with a line that
    /// could not be read.
    /// </summary>
    /// <param name="library">Where <c>like</c> finds other kinds.</param>
    public static Instantiation Instantiate(
        KindSyntax kind,
        KindLibrary library,
        DeviceDeclaration device,
        PanelFacts facts
    )
    {
        var ofKind = new KindFindings(kind.KindName, device.Tag);
        var ofRatings = new RatingFindings(kind.KindName, device.Tag);
        var lines = new KindLines(new LineExpansion(library, ofKind).Of(kind));
        if (lines.IsBroken)
            return new Instantiation(null, []);
        var ratings = RatingBook.Read(new RatingForms(lines.Top), device, facts, ofRatings);
        if (ofRatings.HasMissing)
            return new Instantiation(null, ofRatings.InOrder);
        foreach (var line in lines.Misplaced)
            ofKind.InBlock(line.Span);
        var context = new KindContext(device.Tag, lines.Moving(), ratings, facts, ofKind, ofRatings);
        var blueprint = new BlueprintBuilder(context).Build(
            Describe(kind),
            context.Unfolding.Of(lines.Top, null)
        );
        return new Instantiation(ofKind.Any ? null : blueprint, [.. ofRatings.InOrder, .. ofKind.InOrder]);
    }

    /// <summary>What a kind is called and stands for.</summary>
    public static Kind Describe(KindSyntax kind) =>
        new(
            kind.KindName,
            kind.Lines.OfType<MeansSyntax>().FirstOrDefault()?.Text.Text,
            kind.Lines.OfType<LetterSyntax>().FirstOrDefault()?.Letter.Text,
            kind.Lines.OfType<SymbolSyntax>().FirstOrDefault() is { } symbol
                ? string.Join(' ', symbol.Name)
                : null,
            kind.Span
        );
}
