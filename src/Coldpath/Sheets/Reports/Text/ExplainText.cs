using Coldpath.Inspection;

namespace Coldpath.Sheets.Reports.Text;

/// <summary>A check's card as a page to read, and the list of all cards.</summary>
public static class ExplainText
{
    public static Page Of(Card card)
    {
        var page = new Page();
        page.Line($"{card.Code} {card.Name}", Style.Strong);
        page.Line($"{FindingText.Word(card.Severity)}, {FamilyName(card.Family)}").Line();
        page.Line(card.Title).Line(card.Why).Line();
        Field(page, "reference", card.Reference);
        Field(page, "help", card.Remedy);
        Field(page, "limits", card.Limits);
        WriteExample(page, card.Example);
        return page;
    }

    /// <summary>All checks, a line each, by family.</summary>
    public static Page List(IEnumerable<Card> cards)
    {
        var page = new Page();
        foreach (var family in cards.GroupBy(c => c.Family))
        {
            var table = new Table(FamilyName(family.Key), "", "", "");
            foreach (var card in family.OrderBy(c => c.Code, StringComparer.Ordinal))
                table.Add(Style.Plain, card.Code, card.Name, FindingText.Word(card.Severity), card.Title);
            table.WriteTo(page);
        }
        return page;
    }

    public static string FamilyName(Family family) =>
        family switch
        {
            Family.EnergisedPaths => "energised paths",
            Family.Protection => "protection",
            Family.Isolation => "isolation",
            Family.ControlLogic => "control logic",
            Family.Description => "description",
            Family.Failures => "failures",
            _ => "intent",
        };

    private static void Field(Page page, string name, string? text)
    {
        if (text is { Length: > 0 })
            page.Write($"{name}: ", Style.Strong).Line(text);
    }

    /// <summary>The lines that make the difference, good and bad, in their base panel.</summary>
    private static void WriteExample(Page page, Example example)
    {
        if (example.Bad.Count == 0)
            return;
        page.Line().Line("instead of", Style.Strong);
        WriteLines(page, example.Good);
        page.Line("this gives it", Style.Strong);
        WriteLines(page, example.Bad);
        page.Line($"in base panel {example.Base}", Style.Faint);
    }

    private static void WriteLines(Page page, IEnumerable<string> lines)
    {
        foreach (var line in lines.SelectMany(l => l.Split('\n')))
            page.Line("  " + (line.Trim() is { Length: > 0 } said ? said : "(left out)"));
    }
}
