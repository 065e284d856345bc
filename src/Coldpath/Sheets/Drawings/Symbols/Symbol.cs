namespace Coldpath.Sheets.Drawings.Symbols;

/// <summary>
/// A symbol in its own millimetres. On power sheets it hangs from its first terminal at (0, 0) with the line side at
/// y = 0 and the load side at y = <see cref="Height"/>; on control sheets it lies on y = 0 with its left terminal at
/// x = 0 and its right one at x = <see cref="Width"/>.
/// </summary>
/// <param name="Shapes">Leads included: each terminal has a line that ends at its place.</param>
/// <param name="Body">What it covers, leads and letters inside it included.</param>
/// <param name="LinkAt">Where a mechanical link takes hold, on the body's left edge (power) or lower edge (control).</param>
public sealed record Symbol(IReadOnlyList<Shape> Shapes, Box Body, At LinkAt)
{
    public double Height => Body.Bottom - Body.Top;
    public double Width => Body.Right - Body.Left;
}
