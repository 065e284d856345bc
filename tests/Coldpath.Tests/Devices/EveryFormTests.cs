using Coldpath.Devices;
using Coldpath.Devices.Ratings;
using Coldpath.Notation.Syntax;
using CsCheck;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Devices;

/// <summary>Whatever ratings a declaration has, a standard kind's text is sound.</summary>
public class EveryFormTests
{
    private static readonly PanelFacts[] Systems =
    [
        Declared.Nec,
        Declared.Iec,
        Declared.Nec with
        {
            Voltage = 240,
            Phases = 1,
            Earthing = "earthed centre tap",
        },
        Declared.Iec with
        {
            Voltage = 110,
            Phases = null,
            Direct = true,
            Earthing = "IT",
        },
    ];

    public static TheoryData<string> Names => [.. KindLibrary.Standard.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void IsSound(string name) =>
        Gen.Select(RatingsOf(name), Gen.Int[0, Systems.Length - 1])
            .Sample(
                (ratings, system) =>
                {
                    ratings = [.. ratings, .. Completing(ratings)];
                    var line = $"{name} D1 {string.Join(", ", ratings.Where(r => r.Length > 0))}".TrimEnd();
                    var made = Declared.Instance(line, Systems[system]);
                    made.Findings.Should().BeEmpty(line);
                    Soundness.Check(made.Blueprint!);
                },
                iter: 25,
                threads: 1
            );

    /// <summary>Magnets make a voltage that has to be given.</summary>
    private static IEnumerable<string> Completing(string[] ratings) =>
        ratings.Contains("permanent magnet")
        && !ratings.Any(r => r.StartsWith("voltage ", StringComparison.Ordinal))
            ? ["voltage 400 V"]
            : [];

    private static Gen<string[]> RatingsOf(string name) =>
        FormsOf(name)
            .Select(Rating)
            .Aggregate(
                Gen.Const(Array.Empty<string>()),
                (all, one) => Gen.Select(all, one, (a, o) => (string[])[.. a, o])
            );

    private static IEnumerable<KindLineSyntax> FormsOf(string name)
    {
        foreach (var line in KindLibrary.Standard.Find(name)!.Lines)
            if (line is LikeSyntax like)
                foreach (var borrowed in FormsOf(like.KindName))
                    yield return borrowed;
            else if (line is TakesSyntax or FlagSyntax)
                yield return line;
    }

    /// <summary>A rating as it may be written; nothing when it is left out.</summary>
    private static Gen<string> Rating(KindLineSyntax line)
    {
        var name = RatingForms.NameOf(line);
        if (line is not TakesSyntax asked)
            return OneOf(["", name]);
        string[] written = asked.Form switch
        {
            UnitFormSyntax { SecondUnit: { } second } form => [$"{name} 480 {form.Unit} to 120 {second}"],
            UnitFormSyntax { Unit: "V" } => [$"{name} 120 V", $"{name} 24 V DC"],
            UnitFormSyntax form => [$"{name} 3 {form.Unit}"],
            ChoiceFormSyntax form => [.. form.Choices.Select(c => $"{name} {c}")],
            PlainFormSyntax { Form: PlainForm.Number } => [$"{name} 1", $"{name} 2", $"{name} 3"],
            PlainFormSyntax { Form: PlainForm.Text } => [$"{name} \"words\""],
            PlainFormSyntax { Form: PlainForm.Positions } => ["A | B", "HAND | OFF | AUTO", "1 | 2 | 3 | 4"],
            _ => [$"{name} K1 and K2"],
        };
        return OneOf(asked.Needed ? written : ["", .. written]);
    }

    private static Gen<string> OneOf(string[] choices) =>
        Gen.Int[0, choices.Length - 1].Select(i => choices[i]);
}
