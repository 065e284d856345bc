using SkiaSharp;

namespace Coldpath.Sheets.Drawings.Rendering;

/// <summary>The typefaces that the library carries, so that a picture is the same on every machine.</summary>
internal sealed class Faces : IDisposable
{
    public SKTypeface Regular { get; } = Load("LiberationSans-Regular.ttf");
    public SKTypeface Bold { get; } = Load("LiberationSans-Bold.ttf");

    public void Dispose()
    {
        Regular.Dispose();
        Bold.Dispose();
    }

    private static SKTypeface Load(string name)
    {
        using var stream = typeof(Faces).Assembly.GetManifestResourceStream(name)!;
        using var data = SKData.Create(stream);
        return SKTypeface.FromData(data);
    }
}
