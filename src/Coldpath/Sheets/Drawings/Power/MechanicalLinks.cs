namespace Coldpath.Sheets.Drawings.Power;

/// <summary>Interlocks as dashed lines from symbol to symbol.</summary>
internal static class MechanicalLinks
{
    public static IEnumerable<Figure> Of(
        LinkTracks links,
        Grid grid,
        PowerCircuit circuit,
        IReadOnlyList<Standee> standees
    ) =>
        links.Runs.Select(run => new Figure
        {
            Kind = FigureKind.Link,
            Title =
                $"{run.Device.Tag}, {run.Device.Blueprint.Kind.Name} between "
                + $"{circuit.Blocks[run.A].Tag} and {circuit.Blocks[run.B].Tag}",
            Device = run.Device.Tag,
            Span = run.Device.Span,
            Shapes = [new Polyline(Way(run, grid, circuit, standees), Ink.Dashed)],
        });

    private static IReadOnlyList<At> Way(
        LinkRun run,
        Grid grid,
        PowerCircuit circuit,
        IReadOnlyList<Standee> standees
    )
    {
        var (a, b) = (Hold(standees[run.A], circuit, grid), Hold(standees[run.B], circuit, grid));
        var (xa, xb) = (grid.XOfMechanical(run.GapA, run.TrackA), grid.XOfMechanical(run.GapB, run.TrackB));
        if (run.ChannelTrack < 0)
            return [a, new(xa, a.Y), new(xa, b.Y), b];
        var y = grid.YOfMechanical(run.Channel, run.ChannelTrack);
        return [a, new(xa, a.Y), new(xa, y), new(xb, y), new(xb, b.Y), b];
    }

    private static At Hold(Standee standee, PowerCircuit circuit, Grid grid)
    {
        var at = PowerSheet.PlaceOf(standee, circuit, grid);
        return at.Plus(standee.Symbol.LinkAt.X, standee.Symbol.LinkAt.Y);
    }
}
