using Coldpath.Wiring;

namespace Coldpath.Tests.Inspection.Recomputed;

/// <summary>Each way of feeding each motor, and what protection it lacks: by trying every set of controllers.</summary>
internal static class Ways
{
    public static IEnumerable<string> Found(Trade trade, Survey survey)
    {
        foreach (var motor in trade.Motors)
        {
            var controllers = Conducting(trade, survey, motor);
            var ways = Minimal(trade, survey, motor, controllers);
            var bare = Unprotected(trade, survey, motor, controllers, ways);
            foreach (var finding in bare.Concat(Bypasses(trade, survey, ways)))
                yield return finding;
        }
    }

    private static string[] Conducting(Trade trade, Survey survey, Load motor)
    {
        var all = trade.Controllers.ToArray();
        var asked = all.Select(tag =>
            Part.All(
                Part.Settled,
                Part.Holds(Part.All(Part.Runs(motor.Name), Part.AnyClosed(trade.Poles(tag))))
            )
        );
        return [.. all.Zip(survey.Happens([.. asked])).Where(c => c.Second).Select(c => c.First)];
    }

    private static string[][] Minimal(Trade trade, Survey survey, Load motor, string[] controllers)
    {
        var sets = Enumerable
            .Range(0, 1 << controllers.Length)
            .Select(bits => controllers.Where((_, i) => (bits >> i & 1) == 1).ToArray())
            .ToArray();
        var runs = survey.Happens([
            .. sets.Select(s => Part.All(Part.Settled, RunsBy(trade, motor, controllers, s))),
        ]);
        var enough = sets.Zip(runs).Where(s => s.Second).Select(s => s.First).ToArray();
        return [.. enough.Where(s => !enough.Any(t => t.Length < s.Length && t.All(s.Contains)))];
    }

    /// <summary>With the poles of all other controllers taken out.</summary>
    private static object RunsBy(Trade trade, Load motor, string[] controllers, string[] way) =>
        Part.Holds(Part.Runs(motor.Name), controllers.Except(way).SelectMany(trade.Poles).Select(e => e.Id));

    private static IEnumerable<string> Unprotected(
        Trade trade,
        Survey survey,
        Load motor,
        string[] controllers,
        string[][] ways
    )
    {
        var shorts = trade.Netlist.Devices.SelectMany(d => d.OpensOnShort).SelectMany(o => o.Elements);
        var claims = (
            from way in ways
            from lack in new[]
            {
                ("way-without-overload", OverloadsOf(trade, survey, motor)),
                ("way-without-short-circuit-device", shorts.Distinct()),
            }
            select (
                Finding: $"{lack.Item1} {string.Join(' ', way.Prepend(motor.Name))}",
                Part: Part.All(
                    Part.Settled,
                    Part.Holds(Part.Runs(motor.Name)),
                    RunsBy(trade, motor, controllers, way),
                    Part.Holds(Fed(motor), lack.Item2, trade.StoreVariables)
                )
            )
        ).ToArray();
        return claims
            .Zip(survey.Happens([.. claims.Select(c => c.Part)]))
            .Where(c => c.Second)
            .Select(c => c.First.Finding);
    }

    /// <summary>Runs, or carries current with two voltages at its terminals.</summary>
    private static object Fed(Load motor) =>
        Part.Any(
            Part.Runs(motor.Name),
            Part.All(
                Part.Any(motor.Elements.Select(e => new { carries = e })),
                Part.Any(motor.Modes.Where(m => m.Feed.Count == 3).Select(m => new { single = m.Feed }))
            )
        );

    /// <summary>An overload that another motor needs to run watches that one's current, too.</summary>
    private static IEnumerable<string> OverloadsOf(Trade trade, Survey survey, Load motor)
    {
        var overloads = trade
            .Netlist.Devices.SelectMany(d => d.Protects)
            .Where(p => p.Against == "overload")
            .ToArray();
        var another = overloads.Select(o =>
            Part.Any(
                from other in trade.Motors
                where other.Name != motor.Name
                let runs = Part.Runs(other.Name)
                select Part.All(Part.Settled, Part.Holds(runs), Part.Not(Part.Holds(runs, o.Elements)))
            )
        );
        return overloads
            .Zip(survey.Happens([.. another]))
            .Where(o => !o.Second)
            .SelectMany(o => o.First.Elements)
            .Distinct();
    }

    /// <summary>A contactor round a starter, closed beside it while it conducts and is not at full speed.</summary>
    private static IEnumerable<string> Bypasses(Trade trade, Survey survey, string[][] ways)
    {
        var claims = (
            from round in ways.Where(w => !w.Any(trade.HasSemiconductor))
            from through in ways.Where(w => w.Any(trade.HasSemiconductor))
            let starter = through.First(trade.HasSemiconductor)
            from contactor in round.Except(through)
            select (
                Finding: $"bypass-during-ramp {contactor} {starter}",
                Part: Early(trade, contactor, starter)
            )
        ).ToArray();
        return claims
            .Zip(survey.Happens([.. claims.Select(c => c.Part)]))
            .Where(c => c.Second)
            .Select(c => c.First.Finding);
    }

    private static object Early(Trade trade, string contactor, string starter)
    {
        var (poles, legs) = (trade.Poles(contactor).ToArray(), trade.Poles(starter).ToArray());
        var fullSpeed = trade
            .Netlist.Devices.Single(d => d.Tag == starter)
            .States.Where(s => s.Key == "full speed")
            .Select(s => Part.Of(s.Value));
        return Part.All(
            Part.Holds(Part.All(Part.AnyClosed(poles), Part.AnyClosed(legs), Part.Not(Part.Any(fullSpeed)))),
            Part.Holds(
                Part.Any(from pole in poles from leg in legs select Part.Joined(pole.B, leg.B)),
                poles.Concat(legs).Select(e => e.Id)
            )
        );
    }
}
