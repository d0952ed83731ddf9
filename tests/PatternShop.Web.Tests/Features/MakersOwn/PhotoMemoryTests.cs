using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Runtime.InteropServices;
using PatternShop.Print;
using SkiaSharp;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>The largest picture that is taken costs the server little memory: measured on a process of its own, as the system counts it.</summary>
public sealed class PhotoMemoryTests
{
    private const long Most = 200_000_000;
    private static readonly string Host = Path.GetFullPath(Path.Combine(RuntimeEnvironment.GetRuntimeDirectory(), "..", "..", "..", "dotnet"));

    [Fact]
    public async Task A_PNG_of_40_million_points_is_taken_within_200_MB()
    {
        using var folder = new Folder();
        using var server = await RunningServer.HearAsync(Start(folder.Path), isNew: true);
        using var maker = new Visitor(server.Address);
        Assert.Equal("/studio", (await maker.FillAsync(server.SetUpPath, "/setup", [.. TestShop.SetUpFields(), ("Samples", "first-steps")])).Location);
        var pattern = (await maker.GetAsync("/studio")).Html.QuerySelectorAll("a[href*='/studio/patterns/']").Select(link => string.Join('/', link.GetAttribute("href")!.Split('/').Take(4))).First();
        var small = Png(400, 300);
        await UploadAsync(maker, pattern, small);
        var large = Png(8000, PhotoMaker.MostPixels / 8000);
        var before = Memory(server.Process, "VmRSS");
        await UploadAsync(maker, pattern, large);
        Assert.InRange(Memory(server.Process, "VmHWM") - before, 1, Most);
        await server.StopAsync();
    }

    private static async Task UploadAsync(Visitor maker, string pattern, byte[] file)
    {
        var path = pattern + "/photos";
        using var form = new MultipartFormDataContent { { new StringContent(await maker.TokenAsync(path)), "__RequestVerificationToken" }, { new StringContent("As woven"), "Caption" }, { new ByteArrayContent(file), "File", "photo.png" } };
        Assert.Equal(HttpStatusCode.SeeOther, (await maker.SendAsync(HttpMethod.Post, path, form)).Status);
    }

    private static Process Start(string folder)
    {
        var start = new ProcessStartInfo(Host, [Path.Combine(AppContext.BaseDirectory, "PatternShop.Web.dll"), "--urls", "http://127.0.0.1:0", "--PatternShop:DataFolder", Path.Combine(folder, "data")])
        {
            RedirectStandardOutput = true,
            UseShellExecute = false,
        };
        return Process.Start(start)!;
    }

    private static byte[] Png(int width, int height)
    {
        using var picture = new SKBitmap(new SKImageInfo(width, height, SKColorType.Gray8, SKAlphaType.Opaque));
        picture.Erase(SKColors.Gray);
        using var data = picture.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }

    private static long Memory(Process process, string name)
    {
        var line = File.ReadLines($"/proc/{process.Id.ToString(CultureInfo.InvariantCulture)}/status").Single(line => line.StartsWith(name + ":", StringComparison.Ordinal));
        return long.Parse(line.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)[1], CultureInfo.InvariantCulture) * 1024;
    }
}
