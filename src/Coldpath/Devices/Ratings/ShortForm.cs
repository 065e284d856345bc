using System.Globalization;
using Coldpath.Notation.Syntax;

namespace Coldpath.Devices.Ratings;

/// <summary>"three-pole" for poles 3, "six-lead" for leads 6, "1-phase" for phases 1.</summary>
internal static class ShortForm
{
    private static readonly string[] Numbers =
    [
        "zero",
        "one",
        "two",
        "three",
        "four",
        "five",
        "six",
        "seven",
        "eight",
        "nine",
        "ten",
        "eleven",
        "twelve",
    ];

    /// <summary>The rating meant and its value; null when the word is none of the sort.</summary>
    public static Rating? Read(string word, RatingForms forms)
    {
        var dash = word.IndexOf('-');
        if (dash <= 0 || NumberOf(word[..dash]) is not { } number)
            return null;
        var thing = word[(dash + 1)..];
        var text = number.ToString(CultureInfo.InvariantCulture);
        var asked = forms.Takes.FirstOrDefault(t =>
            Takes(t.Form, text) && IsOneOf(thing, RatingForms.NameOf(t))
        );
        return asked switch
        {
            null => null,
            { Form: ChoiceFormSyntax } => new Rating(RatingForms.NameOf(asked), text, Words: [text]),
            _ => new Rating(RatingForms.NameOf(asked), text, number),
        };
    }

    private static bool Takes(RatingFormSyntax form, string number) =>
        form switch
        {
            ChoiceFormSyntax choice => choice.Choices.Contains(number),
            PlainFormSyntax plain => plain.Form == PlainForm.Number,
            _ => false,
        };

    private static bool IsOneOf(string thing, string name) => name == thing || name == thing + "s";

    private static int? NumberOf(string word)
    {
        if (word == "single")
            return 1;
        var named = Array.IndexOf(Numbers, word);
        if (named >= 0)
            return named;
        return int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? number
            : null;
    }
}
