using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Print.Tests;

public sealed class SameBytesTests
{
    private const string ExpectedDigests = "PATTERNSHOP_EXPECTED_DIGESTS";

    [Fact]
    public void Printing_twice_gives_the_same_bytes() =>
        Assert.All(Samples.All.Values, document => Assert.Equal(Samples.Print(document), Samples.Print(document)));

    /// <summary>Runs itself again in a process of its own that has another zone, another language and, mostly, another day.</summary>
    [Fact]
    public async Task Another_process_zone_and_language_give_the_same_bytes()
    {
        if (Environment.GetEnvironmentVariable(ExpectedDigests) is { } expected)
        {
            // one after the other, so that a wrong one ends it at once
            foreach (var (digest, (name, file)) in expected.Split(' ').Zip(Files()))
            {
                Assert.True(digest == Digest(file()), name);
            }

            return;
        }

        var digests = Files().Select(file => Digest(file.Make())).ToList();
        var wrong = Task.Run(() => RunAgain([Digest([1]), .. digests.Skip(1)]), TestContext.Current.CancellationToken);
        Assert.Equal(0, RunAgain(digests));
        Assert.NotEqual(0, await wrong);
    }

    [Fact]
    public void Nothing_of_chance_or_of_the_clock_is_in_any_file() => Assert.All(EveryEdition.All.Values, make =>
    {
        var text = System.Text.Encoding.Latin1.GetString(make());
        Assert.DoesNotMatch("/(NM|M|CreationDate|ModDate) *[(<]", text);
        Assert.Equal(text, System.Text.Encoding.Latin1.GetString(make()));
    });

    [Fact]
    public void The_culture_of_the_thread_does_not_matter()
    {
        var decimalComma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        decimalComma.NumberFormat.NumberDecimalSeparator = ",";
        decimalComma.NumberFormat.NegativeSign = "~";
        var before = Samples.Print(Samples.Diamond);
        byte[] after = [];
        var thread = new Thread(() => after = Samples.Print(Samples.Diamond)) { CurrentCulture = decimalComma, CurrentUICulture = decimalComma };
        thread.Start();
        thread.Join();
        Assert.Equal(before, after);
    }

    [Fact]
    public void Another_cell_title_version_or_paper_gives_other_bytes()
    {
        var piece = Piece.Of(Samples.Diamond);
        byte[][] files =
        [
            Printable.Make(piece, VersionLine.NotIssued, Paper.A4, Wording.English),
            Printable.Make(piece, VersionLine.NotIssued, Paper.Letter, Wording.English),
            Printable.Make(piece, new VersionLine(1, new DateOnly(2026, 11, 5)), Paper.A4, Wording.English),
            Printable.Make(piece, new VersionLine(1, new DateOnly(2026, 11, 6)), Paper.A4, Wording.English),
            Samples.Print(Samples.Diamond with { Title = "Other" }),
            Samples.Print(Samples.Diamond with { Motif = Samples.Diamond.Motif.With(3, 3, !Samples.Diamond.Motif[3, 3]) }),
        ];
        Assert.Equal(files.Length, files.Select(file => Convert.ToHexString(SHA256.HashData(file))).Distinct().Count());
    }

    private static IEnumerable<(string Name, Func<byte[]> Make)> Files() =>
    [
        .. Samples.All.Select(sample => (sample.Key, (Func<byte[]>)(() => Samples.Print(sample.Value)))),
        .. EveryEdition.All.Select(edition => (edition.Key, edition.Value)),
    ];

    private static string Digest(byte[] file) => Convert.ToHexString(SHA256.HashData(file));

    private static int RunAgain(IEnumerable<string> digests)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!)
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = Path.GetTempPath(),
        };
        if (Path.GetFileNameWithoutExtension(Environment.ProcessPath!) == "dotnet")
        {
            start.ArgumentList.Add("exec");
            start.ArgumentList.Add(typeof(SameBytesTests).Assembly.Location);
        }

        start.ArgumentList.Add("-method");
        start.ArgumentList.Add($"{typeof(SameBytesTests).FullName}.{nameof(Another_process_zone_and_language_give_the_same_bytes)}");
        start.Environment["TZ"] = "Pacific/Kiritimati";
        start.Environment["LANG"] = "tr_TR.UTF-8";
        start.Environment["LC_ALL"] = "tr_TR.UTF-8";
        start.Environment[ExpectedDigests] = string.Join(' ', digests);
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        process.StandardOutput.ReadToEnd();
        errors.GetAwaiter().GetResult();
        process.WaitForExit();
        return process.ExitCode;
    }
}
