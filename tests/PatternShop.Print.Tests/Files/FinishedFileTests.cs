using Xunit;

namespace PatternShop.Print.Tests;

public sealed class FinishedFileTests
{
    [Fact]
    public void Sample_plan_to_file() => File.WriteAllBytes("sample.pdf", Painter.Paint(SamplePlan.Make()));
}
