using System.Globalization;
using PatternShop.Store;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>What a maker typed about a photo.</summary>
/// <param name="Hash">Which photo it is; empty for one that is not kept yet.</param>
/// <param name="Caption">What is to be seen.</param>
/// <param name="Row">The chart row; empty for the whole pattern.</param>
public sealed record PhotoForm(string Hash, string Caption, string Row)
{
    public static PhotoForm Blank { get; } = new("", "", "");

    internal static PhotoForm Of(Photo photo) => new(photo.Hash, photo.Caption, photo.Row?.ToString(CultureInfo.InvariantCulture) ?? "");

    internal static PhotoForm Read(IFormCollection form) => new(
        form[nameof(Hash)].ToString(), form[nameof(Caption)].ToString().ReplaceLineEndings(" ").Trim(), form[nameof(Row)].ToString().Trim());

    /// <summary>The photo as the document names it; or null and what is wrong.</summary>
    internal Photo? Photo(PatternDocument document, out IReadOnlyList<FieldProblem> problems)
    {
        int? row = int.TryParse(Row, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;
        var photo = new Photo(Hash, Caption, row);
        var checkedWith = document with { RowWords = [], Videos = [], Photos = [photo with { Hash = new string('0', Hash.Length == 0 ? 64 : Hash.Length) }] };
        problems =
        [
            .. DocumentRules.Check(checkedWith).Concat(NewWords.Check(checkedWith, before: document))
                .Select(problem => new FieldProblem(problem.Pointer.EndsWith("/row", StringComparison.Ordinal) ? nameof(Row) : nameof(Caption), problem.What, problem.Remedy)),
            .. row is null && Row.Length > 0
                ? [new FieldProblem(nameof(Row), "The chart row is no number.", "Write digits only, or leave it empty.")]
                : Array.Empty<FieldProblem>(),
        ];
        return problems.Count == 0 ? photo : null;
    }
}
