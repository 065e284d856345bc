using Coldpath.Findings;

namespace Coldpath.Notation.Syntax;

/// <summary>
/// One piece of a list of ratings. Ratings come as a flat row of atoms, since only the kind knows which words belong
/// together.
/// </summary>
public abstract record AtomSyntax(Span Span) : SyntaxNode(Span);

/// <summary>A word: "lockable", "AC-3", "HAND", "3-phase", "three-pole".</summary>
public sealed record WordAtom(string Text, Span Span) : AtomSyntax(Span);

/// <summary>A number without a unit: <c>poles 3</c>, <c>service factor 1.15</c>.</summary>
public sealed record NumberAtom(double Value, string Text, Span Span) : AtomSyntax(Span);

/// <summary>A number with its unit: "480 V", "24 V DC", "6 AWG", "35 mm2", "85 %".</summary>
/// <param name="Value">In the unit as written; 1/0 to 4/0 AWG count 0, −1, −2 and −3.</param>
/// <param name="Second">The second value of a dual one: 277 in "480Y/277 V".</param>
/// <param name="Number">The number as written: "480", "480Y/277", "1/0".</param>
/// <param name="Unit">As in <see cref="Units"/>: "V", "V DC", "kA", "AWG".</param>
public sealed record QuantityAtom(double Value, double? Second, string Number, string Unit, Span Span)
    : AtomSyntax(Span)
{
    public string Text => $"{Number} {Unit}";
}

/// <summary>A quoted text, without its quotes.</summary>
public sealed record TextAtom(string Text, Span Span) : AtomSyntax(Span);

/// <summary>The <c>|</c> between selector positions.</summary>
public sealed record BarAtom(Span Span) : AtomSyntax(Span);

/// <summary>A comma: what stands on its two sides does not belong together.</summary>
public sealed record CommaAtom(Span Span) : AtomSyntax(Span);

/// <summary>The <c>and</c> between tags of other devices.</summary>
public sealed record AndAtom(Span Span) : AtomSyntax(Span);
