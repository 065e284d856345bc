using Coldpath.Devices;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Devices;

public class LanguagePageKindTests
{
    /// <summary>The page that teaches kinds shows a real one.</summary>
    [Fact]
    public void ShowsTheStandardContactor() =>
        Samples
            .LanguagePage.Select(s => s.Text.Trim())
            .Should()
            .Contain(KindLibrary.Standard.TextOf("contactor")!.ReplaceLineEndings("\n").Trim());
}
