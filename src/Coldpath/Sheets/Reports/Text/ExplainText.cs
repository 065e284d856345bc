using Coldpath.Inspection;

namespace Coldpath.Sheets.Reports.Text;

/// <summary>A check's card as a page to read.</summary>
public static class ExplainText
{
    public static Page Of(Card card)
    {
        var page = new Page();
        page.Line($"{card.Code} {card.Name}", Style.Strong);
        page.Line($"{card.Title} ({FindingText.Word(card.Severity)}; {card.Family})").Line();
        page.Line(card.Why).Line();
        Field(page, "reference", card.Reference);
        Field(page, "put right", card.Remedy);
        Field(page, "limits", card.Limits);
        Example(page, "gives it", card.Bad);
        Example(page, "does not", card.Good);
        return page;
    }

    /// <summary>All checks, a line each, by family.</summary>
    public static Page List(IEnumerable<Card> cards)
    {
        var page = new Page();
        foreach (var family in cards.GroupBy(c => c.Family))
        {
            var table = new Table(family.Key, "", "", "");
            foreach (var card in family.OrderBy(c => c.Code, StringComparer.Ordinal))
                table.Add(Style.Plain, card.Code, card.Name, FindingText.Word(card.Severity), card.Title);
            table.WriteTo(page);
        }
        return page;
    }

    private static void Field(Page page, string name, string? text)
    {
        if (text is { Length: > 0 })
            page.Write($"{name}: ", Style.Strong).Line(text);
    }

    private static void Example(Page page, string name, string? panel)
    {
        if (panel is null)
            return;
        page.Line().Line($"{name}:", Style.Strong).Line();
        foreach (var line in panel.TrimEnd('\n').Split('\n'))
            page.Line(line.Length > 0 ? "  " + line : "");
    }
}
