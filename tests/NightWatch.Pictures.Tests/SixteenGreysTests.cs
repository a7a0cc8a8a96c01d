using CsCheck;
using SkiaSharp;

namespace NightWatch.Pictures.Tests;

/// <summary>Read back by libpng, the reference decoder of ISO/IEC 15948, inside Skia.</summary>
public sealed class SixteenGreysTests
{
    [Fact]
    public void Any_picture_is_read_back_with_each_grey_rounded_to_a_sixteenth() =>
        Gen.Select(Gen.Int[1, 40], Gen.Int[1, 20], Gen.Int[0, 5], Gen.Int).Sample(
            (width, height, padding, seed) =>
            {
                var greys = new byte[height * (width + padding)];
                new Random(seed).NextBytes(greys);

                using var read = SKBitmap.Decode(SixteenGreys.Png(greys, width + padding, width, height));

                Assert.Equal((width, height), (read.Width, read.Height));
                for (var row = 0; row < height; row++)
                {
                    for (var at = 0; at < width; at++)
                        Assert.Equal(Math.Round(greys[row * (width + padding) + at] / 17.0) * 17, read.GetPixel(at, row).Red);
                }
            },
            iter: 200);
}
