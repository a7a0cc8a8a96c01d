using System.Buffers.Binary;
using System.Xml.Linq;
using NightWatch.Letters.Tests.Plans;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Subjects;

namespace NightWatch.Pictures.Tests;

public sealed class FrameChartTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void A_subject_that_leaves_is_drawn_with_first_frame_and_time_of_leaving()
    {
        var plan = PlannedNights.CoreLeavesTheFrame;
        var words = Words(plan);

        Assert.InRange(plan.Framing!.ShareIn, 0.05, 0.95);
        Assert.Contains(words, text => text.EndsWith(" first", StringComparison.Ordinal));
        Assert.Contains(words, text => text.EndsWith(" leaves", StringComparison.Ordinal));
        Assert.Contains(
            words, text => text.StartsWith("In the frame ", StringComparison.Ordinal) && text.Contains('%', StringComparison.Ordinal));
        Assert.Contains("dashed", string.Join(' ', words), StringComparison.Ordinal); // a skyline that the move changes
    }

    [Fact]
    public void Nothing_is_drawn_where_nothing_is_framed()
    {
        var stars = PlannedNights.Of(PlannedNights.Watch with { Subject = new Subject.Stars(), Move = null });

        Assert.Null(FrameChart.Png(stars));
        Assert.Null(FrameChart.Svg(stars));
        Assert.Null(FrameChart.Says(stars));
    }

    [Theory]
    [InlineData(36, 24)]
    [InlineData(24, 36)]
    [InlineData(17.3, 13)]
    public void Every_mark_stands_on_the_paper(double width, double height)
    {
        var plan = PlannedNights.Of(
            PlannedNights.Watch with
            {
                Kit = new Kit
                {
                    SensorWidthMm = width,
                    SensorHeightMm = height,
                    FocalLengthMm = 24,
                },
            });
        var png = FrameChart.Png(plan)!;
        Assert.Equal(2 * FrameChart.WidthPx, BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)));

        var svg = XElement.Parse(FrameChart.Svg(plan)!);
        var tall = (double)svg.Element(Svg + "rect")!.Attribute("height")!;
        Assert.All(svg.Elements(Svg + "text"), text =>
        {
            Assert.InRange((double)text.Attribute("x")!, 0, FrameChart.WidthPx);
            Assert.InRange((double)text.Attribute("y")!, 0, tall);
        });
    }

    private static string[] Words(NightPlan plan) =>
        [.. XElement.Parse(FrameChart.Svg(plan)!).Elements(Svg + "text").Select(text => text.Value)];
}
