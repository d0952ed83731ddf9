using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class ContentRootTests
{
    [Fact]
    public void A_program_that_was_published_has_its_files_beside_it()
    {
        using var folder = new Folder();
        Directory.CreateDirectory(folder["wwwroot"]);
        Assert.Equal(folder.Path, ContentRoot.Of(folder.Path));
    }

    [Fact]
    public void A_program_that_was_built_from_source_has_them_in_its_project()
    {
        var project = Checkout.Path("src/PatternShop.Web");
        Assert.Equal(project, ContentRoot.Of(Path.Combine(project, "bin", "Debug", "net10.0") + Path.DirectorySeparatorChar));
    }

    [Fact]
    public void A_program_that_is_neither_has_no_folder_of_its_own()
    {
        using var folder = new Folder();
        Assert.Null(ContentRoot.Of(folder.Path));
    }
}
