using System;
using System.Threading;
using InscriptionLab.Measures;
using InscriptionLab.Vision.Tests.Rendering;
using InscriptionLab.Vision.Tubes;
using Xunit;

namespace InscriptionLab.Vision.Tests.Tubes;

/// <summary>A draw that comes out of a wider one: both are found along one direction, and each claims only what stands on its own length.</summary>
public sealed class NestedDrawTests
{
    private static readonly TubeScene Narrow = new() { Width = 660, Height = 440, Focal = 1020, Radius = 14, Distance = 220, End = 5, Paint = Paints.Scratched(900, 900, 3) };
    private static readonly TubeScene Wide = Narrow with { Radius = 20, Start = 5, End = 1000 };

    [Fact]
    public void Both_draws_are_found_and_keep_to_their_own_length()
    {
        // The wide draw is rendered with the narrow one for its background: outside either there is cloth.
        var behind = TubeRenderer.Render(Narrow);
        var photo = TubeRenderer.Render(Wide with { Noise = 0 }, (x, y) => behind.Gray[Math.Clamp((int)Math.Round(x), 0, 659), Math.Clamp((int)Math.Round(y), 0, 439)]);
        using var finder = new TubeFinder();

        var tubes = finder.RunAll(photo, CancellationToken.None);

        var left = Narrow.Project(new Vector3D(-30, 0, Narrow.Radius));
        var right = Wide.Project(new Vector3D(35, 0, Wide.Radius));
        var narrow = Assert.Single(tubes, tube => tube.Carries(left));
        var wide = Assert.Single(tubes, tube => tube.Carries(right));
        Assert.NotSame(narrow, wide);
        Near(Narrow, narrow, left);
        Near(Wide, wide, right);
        Assert.True(narrow.Shows(right), "Drawn out, the outlines of the narrow draw reach over the wide one: only the visible length tells them apart.");
    }

    private static void Near(TubeScene scene, InscriptionLab.Tubes.Tube found, PixelPoint at) =>
        Assert.Equal(Strips.UnrollerTests.TubeOf(scene).DiameterAt(at).Pixels, found.DiameterAt(at).Pixels, 0.01 * found.Diameter.Pixels);
}
