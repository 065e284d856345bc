namespace Coldpath.Sheets.Drawings;

/// <summary>A place on paper in millimetres, x to the right, y downwards.</summary>
public readonly record struct At(double X, double Y)
{
    public At Times(double by) => new(X * by, Y * by);

    public At Plus(double x, double y) => new(X + x, Y + y);
}
