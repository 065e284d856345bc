namespace Coldpath.Circuit.Diagrams;

/// <summary>
/// A Boolean function in a <see cref="DiagramTable"/>: twice the node's number, plus one when complemented. Two
/// diagrams of one table are the same function exactly when they are equal.
/// </summary>
public readonly record struct Diagram(int Edge)
{
    public static readonly Diagram True = new(0);
    public static readonly Diagram False = new(1);

    public bool IsTrue => Edge == 0;
    public bool IsFalse => Edge == 1;
    public bool IsConstant => Edge <= 1;

    public static Diagram operator !(Diagram f) => new(f.Edge ^ 1);
}
