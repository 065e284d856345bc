using Coldpath.Wiring;

namespace Coldpath.Sheets.Drawings.Symbols.Poles;

/// <summary>Poles side by side, each a column of signs from its line side down, their blades linked by dashes.</summary>
internal static class PoleBank
{
    private const double Lead = Pen.M;

    /// <summary>Null when the ports are not the two ends of poles, or the poles are more than switches, links and windings.</summary>
    public static Symbol? Of(PowerPart part)
    {
        var columns = Columns(part);
        if (columns is null)
            return null;
        var signs = columns.Select(c => Signs(part, c.Pole)).ToList();
        if (signs.Any(s => s is null))
            return null;
        var pen = new Pen();
        var lead = Lead + Strokes.Room(part);
        var tall = signs.Max(s => s!.Sum(sign => sign.Height));
        var bends = columns.Where(c => !c.IsStraight).ToList();
        var height = lead + tall + Lead + (bends.Count > 0 ? (bends.Count + 1) * Pen.M : 0);
        foreach (var (column, own) in columns.Zip(signs))
        {
            pen.Line(column.X, 0, column.X, lead);
            var y = lead;
            foreach (var sign in own!)
            {
                sign.Draw(pen, column.X, y);
                y += sign.Height;
            }
            if (column.IsStraight)
                pen.Line(column.X, y, column.X, height);
            else
                Bend(pen, column, y, lead + tall + Lead + bends.IndexOf(column) * Pen.M);
        }
        foreach (
            var meeting in bends
                .GroupBy(b => b.End)
                .Where(g => !columns.Any(c => c.IsStraight && c.End == g.Key))
        )
            pen.Line(
                meeting.Key,
                lead + tall + Lead + bends.IndexOf(meeting.First()) * Pen.M,
                meeting.Key,
                height
            );
        Markings.Beside(pen, part, height);
        Strokes.Across(pen, part);
        Frames(pen, columns, signs!, lead);
        return pen.Hanging(height, Linkage.Draw(pen, part, columns, signs!, lead));
    }

    /// <summary>From the foot of a column across to the pole's other end, where another column comes down.</summary>
    private static void Bend(Pen pen, Column column, double from, double level)
    {
        pen.Line(column.X, from, column.X, level, column.End, level);
        pen.Dot(column.End, level);
    }

    /// <summary>One box around the heaters of all poles.</summary>
    private static void Frames(Pen pen, List<Column> columns, List<IReadOnlyList<Sign>> signs, double lead)
    {
        var y = lead;
        for (var i = 0; i < signs[0].Count; i++)
        {
            var sign = signs[0][i];
            if (sign.Framed && signs.All(s => s.Count > i))
                pen.Frame(
                    columns.Min(c => c.X) - 2.5,
                    y + 0.5,
                    columns.Max(c => c.X) + 3.5,
                    y + sign.Height - 0.5
                );
            y += sign.Height;
        }
    }

    private static List<Column>? Columns(PowerPart part)
    {
        var columns = new List<Column>();
        foreach (var pole in part.Poles)
        {
            var (a, b) = (part.Ports[pole.From], part.Ports[pole.To]);
            if (a.Above == b.Above)
                return null;
            var (top, bottom) = a.Above ? (a, b) : (b, a);
            columns.Add(new(a.Above ? pole : pole.Turned, top.X, bottom.X));
        }
        var reached = part.Poles.SelectMany(p => new[] { p.From, p.To }).Distinct().Count();
        var apart = columns.Select(c => c.X).Distinct().Count() == columns.Count;
        return columns.Count > 0 && reached == part.Ports.Count && apart ? columns : null;
    }

    private static IReadOnlyList<Sign>? Signs(PowerPart part, Pole pole)
    {
        var signs = pole
            .Types.Index()
            .Where(t => t.Item != ElementType.Conductor)
            .Select(t => Signing.Of(part, t.Item, pole.IsClosed(t.Index)))
            .ToList();
        return signs.Any(s => s is null) ? null
            : signs.Count == 0 ? [Sign.Plain]
            : [.. signs.OfType<Sign>().Concat(Signing.Releases(part))];
    }
}
