using Coldpath.Circuit.Sequence;

namespace Coldpath.Tests.Circuit.Sequence;

/// <summary>A story as "VARIABLE=VALUE", step by step.</summary>
internal static class Told
{
    public static IEnumerable<string> By(Behaviour panel, Story story) =>
        story.Steps.Select(step =>
        {
            var variable = panel.Space.Variables[step.Move.Variable];
            return $"{variable.Name}={variable.Values[step.Move.To]}";
        });
}
