using Coldpath.Panels;

namespace Coldpath.Answers;

/// <summary>What an answer rests on without anybody having seen it.</summary>
public static class Doubtful
{
    /// <summary>One sentence for each untraced point and each part taken from the drawing.</summary>
    public static IReadOnlyList<string> Parts(Panel panel) =>
        [
            .. panel.Untraced.Select(u =>
                $"{u.Point} goes where nobody followed it: taken as possibly live from an unknown supply"
            ),
            .. panel
                .Devices.Where(d => d.Knowledge == Knowledge.FromDrawing)
                .Select(d => $"{d.Tag} is from the drawing: nobody has seen it in the panel"),
        ];
}
