using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using PatternShop.Tests.Shared;
using SkiaSharp;
using Xunit;

namespace PatternShop.Print.Tests;

public sealed class PhotoMakerTests
{
    private const int JfifMarker = 0xE0;

    [Theory]
    [InlineData(SKEncodedImageFormat.Jpeg)]
    [InlineData(SKEncodedImageFormat.Png)]
    [InlineData(SKEncodedImageFormat.Webp)]
    public void A_picture_comes_in_two_sizes_and_as_nothing_but_a_picture(SKEncodedImageFormat format)
    {
        var photo = Made(SentPhoto.OfQuarters(1800, 1200, format));
        Assert.Equal((1600, 1067, 400, 267), (photo.Large.Width, photo.Large.Height, photo.Small.Width, photo.Small.Height));
        Assert.All([photo.Large, photo.Small], AssertBare);
    }

    [Fact]
    public void A_small_picture_is_not_made_larger()
    {
        var photo = Made(SentPhoto.OfQuarters(120, 90));
        Assert.Equal((120, 90, 120, 90), (photo.Large.Width, photo.Large.Height, photo.Small.Width, photo.Small.Height));
    }

    [Fact]
    public void The_same_file_makes_the_same_photo()
    {
        var sent = SentPhoto.OfQuarters(700, 500);
        Assert.Equal(Made(sent).Large.Bytes, Made(sent).Large.Bytes);
        Assert.NotEqual(Made(sent).Large.Bytes, Made(SentPhoto.OfQuarters(700, 501)).Large.Bytes);
    }

    /// <summary>Noise packs worst.</summary>
    [Fact]
    public void A_photo_has_bounded_bytes()
    {
        var noise = new Random(7);
        var photo = Made(SentPhoto.Make(1600, 1600, SKEncodedImageFormat.Png, (_, _) => new SKColor((uint)noise.Next() | 0xFF000000)));
        Assert.InRange(photo.Large.Bytes.Length, 1, PhotoMaker.LargeBytes);
        Assert.InRange(photo.Small.Bytes.Length, 1, PhotoMaker.SmallBytes);
    }

    [Fact]
    public void Where_and_with_what_it_was_taken_stays_behind()
    {
        byte[] sent = SentPhoto.WithSegment(
            SentPhoto.WithSegment(SentPhoto.WithExif(SentPhoto.OfQuarters(200, 100), 6), 0xFE, "a comment: SecretCamera"u8),
            0xED,
            "Photoshop 3.0\0SecretCamera"u8);
        Assert.Contains("SecretCamera", Encoding.Latin1.GetString(sent), StringComparison.Ordinal);
        var photo = Made(sent);
        Assert.All([photo.Large, photo.Small], file =>
        {
            AssertBare(file);
            Assert.DoesNotContain("SecretCamera", Encoding.Latin1.GetString(file.Bytes), StringComparison.Ordinal);
            Assert.DoesNotContain("Exif", Encoding.Latin1.GetString(file.Bytes), StringComparison.Ordinal);
        });
    }

    /// <summary>Read back by Poppler. Where row 0 and column 0 are to be seen: Exif 2.3, table 6, orientation.</summary>
    [Fact]
    public void A_picture_stands_upright_however_the_camera_was_held()
    {
        var sent = SentPhoto.OfQuarters(320, 160);
        var made = Enumerable.Range(1, 8).Select(orientation => Made(SentPhoto.WithExif(sent, orientation)).Large).ToList();
        Assert.Equal(Enumerable.Range(1, 8).Select(orientation => orientation < 5 ? (320, 160) : (160, 320)), made.Select(file => (file.Width, file.Height)));
        var seen = Poppler.Quarters(made);
        for (var orientation = 1; orientation <= 8; orientation++)
        {
            var row0 = "TTBBLRRL"[orientation - 1];
            var column0 = "LRRLTTBB"[orientation - 1];
            for (var quarter = 0; quarter < 4; quarter++)
            {
                var (down, right) = (Far(quarter / 2, quarter % 2, 'T', 'B'), Far(quarter / 2, quarter % 2, 'L', 'R'));
                Assert.Equal((orientation, SentPhoto.Quarters[quarter]), (orientation, seen[orientation - 1][(down * 2) + right]));
            }

            // 0 where a quarter of that row and column lies at the first of the two sides
            int Far(int row, int column, char first, char last) =>
                row0 == first ? row : row0 == last ? 1 - row : column0 == first ? column : 1 - column;
        }
    }

    [Fact]
    public void What_is_see_through_becomes_white()
    {
        var photo = Made(SentPhoto.Make(64, 64, SKEncodedImageFormat.Png, (_, _) => SKColors.Transparent));
        Assert.All(Poppler.Quarters([photo.Large])[0], colour => Assert.Equal((255, 255, 255), colour));
    }

    private static Dictionary<string, byte[]> Hostile { get; } = new(StringComparer.Ordinal)
    {
        ["nothing"] = [],
        ["not a picture: text"] = "hello"u8.ToArray(),
        ["not a picture: SVG"] = "<svg xmlns='http://www.w3.org/2000/svg'><script>alert(1)</script></svg>"u8.ToArray(),
        ["not a picture: HTML that begins like a GIF"] = "GIF89a=1;/*<script>"u8.ToArray(),
        ["not a picture: a GIF"] = [.. "GIF89a"u8, 1, 0, 1, 0, 0x80, 0, 0, 0, 0, 0, 255, 255, 255, 0x2C, 0, 0, 0, 0, 1, 0, 1, 0, 0, 2, 2, 0x44, 1, 0, 0x3B],
        ["not a picture: a PDF"] = "%PDF-1.7\n"u8.ToArray(),
        ["damaged: half a JPEG"] = [.. SentPhoto.OfQuarters(600, 400).Take(2500)],
        ["damaged: half a PNG"] = Half(SentPhoto.OfQuarters(600, 400, SKEncodedImageFormat.Png)),
        ["damaged: half a WebP"] = Half(SentPhoto.Make(600, 400, SKEncodedImageFormat.Webp, (x, y) => new SKColor((byte)(x * y), (byte)(x + y), (byte)(x * 7)))),
        ["too large: a PNG that unpacks to 3.6 thousand million points"] = SentPhoto.PngHead(60_000, 60_000),
        ["too large: a PNG just beyond"] = SentPhoto.PngHead(8_000, 5_001),
        ["too large: a thread of a picture"] = SentPhoto.PngHead(20_001, 1),
        ["too large: a JPEG that says so"] = SentPhoto.WithSize(SentPhoto.OfQuarters(64, 64), 65_000, 65_000),
        ["too many bytes"] = new byte[PhotoMaker.MostBytes + 1],
    };

    public static TheoryData<string> HostileNames { get; } = new(Hostile.Keys);

    [Theory]
    [MemberData(nameof(HostileNames))]
    public void What_is_no_good_picture_is_refused_in_words(string name)
    {
        var refused = Assert.IsType<PhotoResult.Refused>(PhotoMaker.Make(Hostile[name]));
        Assert.EndsWith(".", refused.What, StringComparison.Ordinal);
        Assert.EndsWith(".", refused.Remedy, StringComparison.Ordinal);
        Assert.StartsWith(Reason(name), refused.What, StringComparison.Ordinal);
    }

    [Fact]
    public void What_hangs_behind_a_picture_does_not_get_through()
    {
        var photo = Made([.. SentPhoto.OfQuarters(200, 100), .. "PK\u0003\u0004<html><script>alert(1)</script>"u8]);
        AssertBare(photo.Large);
        Assert.DoesNotContain("script", Encoding.Latin1.GetString(photo.Large.Bytes), StringComparison.Ordinal);
    }

    /// <summary>Broken anywhere, a file is refused or becomes a whole picture; nothing is thrown.</summary>
    [Fact]
    public void Spoilt_files_are_refused_or_become_whole_pictures()
    {
        byte[][] good = [SentPhoto.WithExif(SentPhoto.OfQuarters(90, 60), 6), SentPhoto.OfQuarters(90, 60, SKEncodedImageFormat.Png), SentPhoto.OfQuarters(90, 60, SKEncodedImageFormat.Webp)];
        var (made, refused) = (0, 0);
        var random = new Random(20261126);
        for (var i = 0; i < Effort.Of(600, 20_000); i++)
        {
            var file = good[i % good.Length].ToArray();
            for (var times = random.Next(1, 5); times > 0; times--)
            {
                file[random.Next(file.Length)] = (byte)random.Next(256);
            }

            switch (PhotoMaker.Make(random.Next(4) == 0 ? file.AsSpan(0, random.Next(file.Length)) : file))
            {
                case PhotoResult.Made { Photo: var photo }:
                    made++;
                    AssertBare(photo.Large);
                    break;
                default:
                    refused++;
                    break;
            }
        }

        Assert.True(made > 20 && refused > 20, $"{made} made, {refused} refused");
    }

    [Fact]
    public void What_is_not_bare_is_seen()
    {
        var jpeg = SentPhoto.OfQuarters(20, 20);
        Assert.Throws<InvalidDataException>(() => JpegParts.Of([.. jpeg, 0]));
        Assert.Contains(JpegParts.Of(SentPhoto.WithExif(jpeg, 1)), part => part.Marker == 0xE1);
    }

    private static string Reason(string name) => name.Split(':')[0] switch
    {
        "nothing" => "No file came",
        "not a picture" => "The file is not a picture",
        "damaged" => "The picture is damaged",
        "too large" => "The picture has ",
        _ => "The file has more than 16 MB",
    };

    private static byte[] Half(byte[] file) => file[..(file.Length / 2)];

    private static MadePhoto Made(byte[] sent) => Assert.IsType<PhotoResult.Made>(PhotoMaker.Make(sent)).Photo;

    // a JFIF head and what the picture needs: no Exif, no colour profile, no comment
    private static void AssertBare(PhotoFile file)
    {
        var parts = JpegParts.Of(file.Bytes);
        Assert.All(parts, part => Assert.True(part.Marker is JfifMarker or 0xDB or 0xC0 or 0xC4 or 0xDA, part.Marker.ToString("X", CultureInfo.InvariantCulture)));
        Assert.Single(parts, part => part.Marker == JfifMarker);
        var frame = parts.Single(part => part.Marker == 0xC0);
        Assert.Equal(
            (file.Height, file.Width),
            (BinaryPrimitives.ReadUInt16BigEndian(file.Bytes.AsSpan(frame.Start + 1)), BinaryPrimitives.ReadUInt16BigEndian(file.Bytes.AsSpan(frame.Start + 3))));
    }
}
