using System.Globalization;
using System.Reflection;
using System.Text;
using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class SpoiltDocumentTests
{
    private const int Cases = 100_000;

    [Fact]
    public void Spoilt_documents_are_read_or_refused_in_bounded_work_and_no_kind_of_problem_is_missing()
    {
        var seed = FixedCases.Seed;
        TestContext.Current.TestOutputHelper?.WriteLine($"PATTERNSHOP_SEED={seed.ToString(CultureInfo.InvariantCulture)}");
        var spoiler = new Spoiler(seed);
        var good = GoodFiles(seed);
        var codes = BadDocuments.All.SelectMany(bad => bad.Expected.Split('\n')).Select(line => line.Split(' ')[0]).ToHashSet(StringComparer.Ordinal);
        var read = 0;
        for (var i = 0; i < Cases; i++)
        {
            var file = spoiler.Spoil(good[i % good.Length]);
            try
            {
                var result = ReadWithinBounds(file);
                AssertSound(file, result);
                read += result is ReadResult.Read ? 1 : 0;
                codes.UnionWith(Codes(result));
            }
            catch (Exception e)
            {
                Assert.Fail($"Seed {seed}, case {i}, file {Convert.ToBase64String(file)}: {e}");
            }
        }

        TestContext.Current.TestOutputHelper?.WriteLine($"{read} of {Cases} still accepted");
        Assert.InRange(read, Cases / 5, Cases * 4 / 5);
        Assert.Equal(AllCodes().Order(StringComparer.Ordinal), codes.Order(StringComparer.Ordinal), StringComparer.Ordinal);
    }

    public static TheoryData<string> LargeNames { get; } = new(Large().Select(file => file.Name));

    [Theory]
    [MemberData(nameof(LargeNames))]
    public void The_largest_files_are_refused_in_bounded_work(string name)
    {
        var file = Large().Single(file => file.Name == name).Make();
        Assert.InRange(file.Length, 1_000_000, Bounds.FileBytes);
        var refused = Assert.IsType<ReadResult.Refused>(ReadWithinBounds(file));
        AssertSound(file, refused);
    }

    /// <summary>Every colour would be looked for among all others.</summary>
    [Fact]
    public void More_colours_and_wefts_than_there_can_be_are_refused_in_bounded_work()
    {
        var colours = Enumerable.Range(0, 8_000).Select(i => $"{{\"name\":\"c{i}\",\"value\":\"#000000\"}}");
        var wefts = Enumerable.Range(0, 12_000).Select(i => $"{{\"colour\":\"d{i}\"}}");
        var file = Encoding.UTF8.GetBytes($"{{\"format\":4,\"title\":\"T\",\"cloth\":{{\"colours\":[{string.Join(",", colours)}],\"wefts\":[{string.Join(",", wefts)}]}}}}");
        var refused = Assert.IsType<ReadResult.Refused>(ReadWithinBounds(file));
        Assert.All([ProblemCodes.ColourCount, ProblemCodes.ClothWefts, ProblemCodes.ColourUnknown], code => Assert.Contains(refused.Problems, problem => problem.Code == code));
        AssertSound(file, refused);
    }

    private static ReadResult ReadWithinBounds(byte[] file)
    {
        var before = GC.GetAllocatedBytesForCurrentThread();
        var result = PatternReader.Read(file, out var steps);
        var allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        Assert.True(allocated <= 100_000 + (50L * file.Length), $"{allocated} bytes were allocated for {file.Length}");
        Assert.True(steps <= 10_000 + (20L * file.Length), $"{steps} steps were taken for {file.Length} bytes");
        return result;
    }

    private static void AssertSound(byte[] file, ReadResult result)
    {
        if (result is ReadResult.Read good)
        {
            Assert.Equal([], DocumentRules.Check(good.Document));
            Assert.Equal(good with { Format = PatternWriter.Format }, PatternReader.Read(PatternWriter.CanonicalBytes(good.Document)));
            return;
        }

        var problems = ((ReadResult.Refused)result).Problems;
        Assert.InRange(problems.Count, 1, Bounds.ListedProblems + 1);
        var lines = file.Count(unit => unit is (byte)'\n' or (byte)'\r') + 1;
        foreach (var problem in problems)
        {
            BadDocumentTests.AssertReadable(problem);
            Assert.InRange(problem.Line, 1, lines);
            Assert.InRange(problem.Column, 1, file.Length + 1);
            Assert.True(problem.Pointer.Length == 0 || problem.Pointer[0] == '/', problem.Pointer);
        }
    }

    private static IEnumerable<string> Codes(ReadResult result) => result is ReadResult.Refused refused ? refused.Problems.Select(problem => problem.Code) : [];

    private static IEnumerable<string> AllCodes() =>
        typeof(ProblemCodes).GetFields(BindingFlags.Public | BindingFlags.Static).Select(field => (string)field.GetRawConstantValue()!);

    private static byte[][] GoodFiles(int seed)
    {
        var documents = DocumentGen.Documents.Array[300].Single(_ => true, new PCG(1, (ulong)seed).ToString());
        var canonical = documents.Take(200).Select(PatternWriter.CanonicalBytes);
        var readable = documents.Skip(200).Select(PatternWriter.ReadableBytes);
        return [.. canonical, .. readable, .. Enumerable.Repeat(Encoding.UTF8.GetBytes(BadDocuments.Good), 30), .. Enumerable.Repeat(FirstFormat(), 30)];
    }

    private static byte[] FirstFormat() => Encoding.UTF8.GetBytes(BadDocuments.Good
        .Replace("\"format\": 4", "\"format\": 1", StringComparison.Ordinal)
        .Replace("\"wefts\": [{\"start\": \"left\"}, {\"start\": \"right\"}]", "\"start\": \"right\"", StringComparison.Ordinal));

    private static IEnumerable<(string Name, Func<byte[]> Make)> Large()
    {
        const int most = Bounds.FileBytes;
        yield return ("spaces", () => Fill("", " ", ""));
        yield return ("lists in lists", () => Fill("", "[", ""));
        yield return ("empty lists", () => Fill("[", "[],", "[]]"));
        yield return ("digits", () => Fill("", "1", ""));
        yield return ("a word", () => Fill("", "a", ""));
        yield return ("one text", () => Fill("\"", "x", "\""));
        yield return ("a text without end", () => Fill("\"", "x", ""));
        yield return ("a title of escapes", () => Fill("{\"title\":\"", "\\u0041", "\"}"));
        yield return ("a title of halves", () => Fill("{\"title\":\"", "\\ud83d", "\"}"));
        yield return ("a title of strange bytes", () => Fill("{\"title\":\"", "é", "\"}").Select(unit => unit == 0xA9 ? (byte)'x' : unit).ToArray());
        yield return ("a title of control characters", () => Fill("{\"title\":\"", "\t", "\"}"));
        yield return ("a name without end", () => Fill("{\"", "x", ""));
        yield return ("unknown members", () => Encoding.UTF8.GetBytes("{" + string.Join(",", Enumerable.Range(0, 49_000).Select(i => $"\"{new string('m', 70)}{i}\":0")) + "}"));
        yield return ("unknown members of an unknown step", () => Encoding.UTF8.GetBytes("{\"rows\":{\"steps\":[{" + string.Join(",", Enumerable.Range(0, 49_000).Select(i => $"\"{new string('m', 70)}{i}\":0")) + "}]}}"));
        yield return ("wrong steps behind unknown members", () => Encoding.UTF8.GetBytes(
            $"{{{string.Join(",", Enumerable.Range(0, 20_000).Select(i => $"\"{new string('m', 70)}{i}\":0"))},\"rows\":{{\"steps\":[{string.Join(",", Enumerable.Repeat("{\"step\":\"chart\",\"first\":0,\"last\":0}", 4_000))}]}}}}"));
        yield return ("one member many times", () => Encoding.UTF8.GetBytes("{" + string.Join(",", Enumerable.Repeat($"\"{new string('m', 70)}\":0", 49_000)) + "}"));
        yield return ("many under a long name", () => Encoding.UTF8.GetBytes($"{{\"{new string('n', 2_000_000)}\":[{string.Join(",", Enumerable.Repeat("{\"a\":0,\"a\":0}", 15_000))}]}}"));
        yield return ("rows of strange cells", () => Encoding.UTF8.GetBytes($"{{\"motif\":[{string.Join(",", Enumerable.Repeat($"\"{new string('o', 70)}\"", 49_000))}]}}"));
        yield return ("rows of other lengths", () => Encoding.UTF8.GetBytes($"{{\"motif\":[{string.Join(",", Enumerable.Range(1, 2_000).Select(i => $"\"{new string('x', i)}\""))}]}}"));
        yield return ("strange steps", () => Encoding.UTF8.GetBytes($"{{\"rows\":{{\"steps\":[{string.Join(",", Enumerable.Repeat($"\"{new string('s', 70)}\"", 49_000))}]}}}}"));

        static byte[] Fill(string start, string piece, string end)
        {
            var count = (most - start.Length - end.Length) / Encoding.UTF8.GetByteCount(piece);
            return Encoding.UTF8.GetBytes(start + string.Concat(Enumerable.Repeat(piece, count)) + end);
        }
    }
}
