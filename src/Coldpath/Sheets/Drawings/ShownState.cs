using Coldpath.Answers;
using Coldpath.Circuit.States;
using Coldpath.Inspection;
using Coldpath.Wiring;

namespace Coldpath.Sheets.Drawings;

/// <summary>A settled state as a drawing shows it.</summary>
internal static class ShownState
{
    public static Shown Of(Evidence evidence, LiveAnswer answer, ShowState asked)
    {
        var space = evidence.Behaviour.Space;
        var state = new State(answer.State.Select(v => space.IndexOfValue(v.Key, v.Value)));
        return new()
        {
            Caption = Caption(answer, asked),
            Nets = Nets(evidence.Netlist, answer),
            Closed = evidence.Netlist.Elements.ToDictionary(
                e => e.Id,
                e => space.Holds(evidence.Of(e.Closed), state)
            ),
        };
    }

    /// <summary>Of a net with several points the worst counts, which is the first of the tones; the earth is not judged.</summary>
    private static Dictionary<string, Tone> Nets(Netlist netlist, LiveAnswer answer)
    {
        var reaches = answer.Points.ToDictionary(p => p.Point, p => p.Reach);
        var tones = netlist
            .Points.GroupBy(p => p.Net)
            .ToDictionary(net => net.Key, net => net.Select(p => ToneOf(reaches[p.Name])).Min());
        tones[netlist.Earth] = Tone.Plain;
        return tones;
    }

    private static Tone ToneOf(Reach reach) =>
        reach switch
        {
            Reach.Dead => Tone.Dead,
            Reach.Solid => Tone.SolidlyLive,
            _ => Tone.LooselyLive,
        };

    private static string Caption(LiveAnswer answer, ShowState asked)
    {
        var start = asked.FromRest ? "from rest" : "powered";
        var made = asked.Operations.Select(o => $"{o.Variable} = {o.Value}").ToList();
        var after = made.Count == 0 ? start : $"{start}, after {string.Join(", ", made)}";
        var settled = answer.Settled switch
        {
            Settled.Chatter => "; does not settle",
            Settled.Short => "; a short circuit stands",
            _ => "",
        };
        return after + settled + (answer.Complete ? "" : "; not complete: take what is not sure as live");
    }
}
