using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Notation;

/// <summary>What the reader says about mistakes, and where.</summary>
public class FindingsTests
{
    [Theory]
    [InlineData("contactor\n^^^^^^^^^ X009 expected a tag after 'contactor'")]
    public void One_row(string annotated) => Carets.Draw(annotated).Should().Be(annotated);
}
