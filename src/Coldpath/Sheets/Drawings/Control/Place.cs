namespace Coldpath.Sheets.Drawings.Control;

internal enum PlaceKind
{
    Rung,
    Power,

    /// <summary>Among the parts that no rung passes, wired otherwise.</summary>
    Apart,

    /// <summary>Not wired.</summary>
    Spare,
}

/// <summary>Where something is drawn.</summary>
/// <param name="Rung">Index of the rung.</param>
/// <param name="Number">Of the rung, as printed.</param>
/// <param name="Terminal">On the power sheet or apart: "Q1:2/T1".</param>
internal sealed record Place(PlaceKind Kind, int Rung, string Number, string Terminal)
{
    public static Place Of(Rung rung) =>
        rung.IsApart
            ? new(rung.IsSpare ? PlaceKind.Spare : PlaceKind.Apart, -1, "", rung.Number)
            : new(PlaceKind.Rung, rung.Index, rung.Number, "");

    public static Place OnPower(string terminal) => new(PlaceKind.Power, -1, "", terminal);
}

/// <summary>Which sheet shows what, once that is known.</summary>
/// <param name="OfRung">Sheet number by rung index.</param>
/// <param name="OfApart">Sheet number of what stands apart, by terminal.</param>
/// <param name="OfPower">Sheet number of the power sheet by terminal "Q1:2/T1"; null when it is not drawn.</param>
internal sealed record SheetIndex(
    IReadOnlyDictionary<int, int> OfRung,
    IReadOnlyDictionary<string, int> OfApart,
    Func<string, int?> OfPower
)
{
    /// <summary>The longest text that <see cref="Name"/> may give.</summary>
    public static string Longest(Place place) =>
        place.Kind switch
        {
            PlaceKind.Rung => $"sheet 99, rung {place.Number}",
            PlaceKind.Power => "power, sheet 99",
            PlaceKind.Spare => "spare",
            _ => $"sheet 99, {place.Terminal}",
        };

    /// <summary>"rung 5", with the sheet in front when it is another one.</summary>
    /// <param name="from">The sheet it is read on.</param>
    public string Name(Place place, int from) =>
        place.Kind switch
        {
            PlaceKind.Rung when OfRung.TryGetValue(place.Rung, out var sheet) =>
                $"{Before(sheet, from)}rung {place.Number}",
            PlaceKind.Rung => $"rung {place.Number}",
            PlaceKind.Power when OfPower(place.Terminal) is { } sheet && sheet != from =>
                $"power, sheet {sheet}",
            PlaceKind.Power => "power",
            PlaceKind.Spare => "spare",
            _ when OfApart.TryGetValue(place.Terminal, out var sheet) =>
                $"{Before(sheet, from)}{place.Terminal}",
            _ => place.Terminal,
        };

    private static string Before(int sheet, int from) => sheet == from ? "" : $"sheet {sheet}, ";
}
