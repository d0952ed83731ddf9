using System.Text.Json;
using Microsoft.Playwright;
using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>Where things stand on the screens of weave-along, measured as the browser lays them out.</summary>
public sealed class WeaveScreenTests(Stage stage) : Journey(stage)
{
    private const string OneWeft = "/samples/hazel-diamonds/weave";
    private const string TwoWefts = "/samples/harbour-lights/weave";

    // steps: before the first, in the middle of a row from the left (row 1, of 13 runs) and from the right (row 2, of 17), in a bracket (row 5, which begins at 64)
    private static readonly int[] Stops = [0, 3, 20, 70];

    // Every box that must be seen, and what it covers. "Next" is the whole lower part, so its word is measured instead.
    private const string Measure =
        """
        () => {
          const box = element => { const { left, right, top, bottom, width, height } = element.getBoundingClientRect(); return { left, right, top, bottom, width, height }; };
          const one = selector => document.querySelector(selector);
          const size = selector => one(selector) ? parseFloat(getComputedStyle(one(selector)).fontSize) : 0;
          const seen = [...document.querySelectorAll('.runs li, .from span, .from .arrow, .ends, #next span, #back, #more, #place, #strip, .key')]
            .map(element => ({ name: element.className?.baseVal ?? (element.className || element.id || element.parentElement.id || element.textContent), box: box(element), list: element.closest('.runs') && box(element.closest('.runs')) }))
            // what does not fit the list stands in a second column, out of sight
            .filter(({ box, list }) => !list || box.left < list.right - 1);
          const texts = [...document.querySelectorAll('#strip text')].map(text => ({ name: text.textContent, box: box(text) }));
          const cells = [...document.querySelectorAll('#strip g')].map(box);
          const fault = [];
          const apart = (a, b, slack) => a.right <= b.left + slack || b.right <= a.left + slack || a.bottom <= b.top + slack || b.bottom <= a.top + slack;
          for (const group of [seen, texts]) {
            for (const [i, a] of group.entries()) {
              for (const b of group.slice(i + 1)) { if (!apart(a.box, b.box, 1)) { fault.push(`${a.name} on ${b.name}`); } }
              if (a.box.left < -1 || a.box.right > innerWidth + 1 || a.box.top < -1 || a.box.bottom > innerHeight + 1) { fault.push(`${a.name} sticks out: ${JSON.stringify(a.box)}`); }
            }
          }
          const strip = box(one('#strip'));
          for (const text of texts) { if (text.box.bottom > strip.bottom + 1 || text.box.left < strip.left - 1 || text.box.right > strip.right + 1) { fault.push(`${text.name} leaves the strip`); } }
          const now = one('.runs .now'), following = one('.runs .now + li'), arrow = box(one('.arrow')), next = box(one('#next')), back = box(one('#back'));
          return {
            fault, size: parseFloat(getComputedStyle(now).fontSize), followingSize: parseFloat(getComputedStyle(following).fontSize),
            below: box(following).top >= box(now).bottom - 1, followingSeen: box(following).bottom <= innerHeight + 1 && box(following).left < box(one('.runs')).right - 1,
            weft: size('.weft'), from: size('.from'), fromRight: one('#hand').classList.contains('from-right'), arrow: (arrow.left + arrow.right) / 2, arrowWidth: arrow.width, width: innerWidth,
            next: { top: next.top / innerHeight, height: next.height / innerHeight, width: next.width / innerWidth, atFoot: Math.abs(next.bottom - innerHeight) < 1 },
            backArea: back.width * back.height / (next.width * next.height), backSize: Math.min(back.width, back.height),
            rows: cells.length, rowHeights: Math.min(...cells.map(cell => cell.height)), mark: one('#strip .mark') && box(one('#strip .mark')),
          };
        }
        """;

    // with two wefts their name stands there too, large
    public static TheoryData<string, int, int, bool, int> Screens => new(
        (OneWeft, 320, 568, false, 100), (OneWeft, 320, 568, true, 150), (OneWeft, 390, 844, false, 100), (OneWeft, 390, 844, true, 150), (OneWeft, 768, 1024, false, 100),
        (OneWeft, 1280, 800, true, 100), (OneWeft, 844, 390, false, 100), (OneWeft, 844, 390, true, 150), (OneWeft, 568, 320, false, 100),
        (TwoWefts, 320, 568, false, 150), (TwoWefts, 390, 844, true, 100), (TwoWefts, 1280, 800, false, 150), (TwoWefts, 844, 390, true, 150), (TwoWefts, 568, 320, false, 100));

    [Theory]
    [MemberData(nameof(Screens))]
    public async Task Nothing_covers_anything_and_the_run_to_weave_is_large_with_the_next_below_it(string address, int width, int height, bool dark, int text)
    {
        var visit = await OpenAsync(new Reader(width, height, Dark: dark));
        var page = new WeavePage(visit);
        await page.GoAsync(address);
        if (text != 100)
        {
            await Larger.TextAsync(visit, text);
        }

        var done = 0;
        foreach (var stop in Stops)
        {
            await visit.Page.EvaluateAsync("steps => new Promise(done => { for (let i = 0; i < steps; i++) document.getElementById('next').click(); requestAnimationFrame(() => requestAnimationFrame(done)); })", stop - done);
            done = stop;
            var seen = await visit.Page.EvaluateAsync<JsonElement>(Measure);
            var where = $"{address}, {width} × {height}, {text} %, step {stop}: {seen}";
            Assert.True(seen.GetProperty("fault").GetArrayLength() == 0, where);
            Assert.True(Number(seen, "size") >= 64, where);
            Assert.True(Number(seen, "followingSize") < Number(seen, "size") && seen.GetProperty("below").GetBoolean() && seen.GetProperty("followingSeen").GetBoolean(), where);
            Assert.True(seen.GetProperty("fromRight").GetBoolean() == (Number(seen, "arrow") > Number(seen, "width") / 2), where);
            Assert.True(Number(seen, "arrowWidth") >= 60, where);
            // a hand that has let go of one yarn must find the other at arm's length
            Assert.True(address == OneWeft ? Number(seen, "weft") == 0 : Number(seen, "weft") >= 28 && Number(seen, "weft") > 1.4 * Number(seen, "from"), where);
            var next = seen.GetProperty("next");
            Assert.True(Number(next, "top") is > 0.32 and < 0.345 && Number(next, "height") > 0.65 && Number(next, "width") > 0.98 && next.GetProperty("atFoot").GetBoolean(), where);
            Assert.True(Number(seen, "backArea") < 0.1 && Number(seen, "backSize") >= 44, where);
        }
    }

    [Theory]
    [InlineData(320, 568)]
    [InlineData(390, 844)]
    [InlineData(844, 390)]
    public async Task The_last_two_woven_rows_are_in_sight_and_the_rows_above_are_not(int width, int height)
    {
        var visit = await OpenAsync(new Reader(width, height));
        var page = new WeavePage(visit);
        await page.GoAsync(OneWeft);
        var numbers = visit.Page.Locator("#strip g");
        await Assertions.Expect(numbers).ToHaveCountAsync(1);
        await visit.Page.EvaluateAsync("() => { for (let i = 0; i < 50; i++) document.getElementById('next').click(); }");
        await Assertions.Expect(page.Place).ToHaveTextAsync("Row 4 of 10 · time 1 of 2 (row 4 of 22)");
        Assert.Equal(["woven", "woven", "now"], await numbers.EvaluateAllAsync<string[]>("rows => rows.map(row => row.className.baseVal)"));
        Assert.Equal("4", await visit.Page.Locator("#strip g.now text").TextContentAsync());
        // the opening of the sheet ends above the row that is woven, and the cells fill it down to its foot
        Assert.Empty(await visit.Page.EvaluateAsync<string[]>(
            """
            () => {
              const box = element => element.getBoundingClientRect(), opening = box(document.querySelector('.opening'));
              const rows = [...document.querySelectorAll('#strip g .over')].map(box), fault = [];
              if (Math.min(...rows.map(row => row.top)) < opening.top || Math.max(...rows.map(row => row.bottom)) > opening.bottom) { fault.push('a row leaves the opening'); }
              if (Math.min(...rows.map(row => row.top)) - opening.top > rows[0].height / 2) { fault.push('there is room above the row that is woven'); }
              if (Math.min(...rows.map(row => row.height)) < 7) { fault.push('cells are too small'); }
              return fault;
            }
            """));
    }

    [Fact]
    public async Task The_marker_moves_with_the_needle_and_left_stays_left()
    {
        var visit = await OpenAsync(new Reader(1280, 800));
        var page = new WeavePage(visit);
        await page.GoAsync(OneWeft);
        // computed: whole piece 1 of the check values, row 1 from the left, row 2 from the right; 23 ends with the floating ones
        await Moves([2, 1, 2, 3], fromRight: false);
        await visit.Page.Locator("#more").ClickAsync();
        await visit.Page.Locator("#jump-row").FillAsync("2");
        await visit.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Place).ToHaveTextAsync("Row 2 of 10 · time 1 of 2 (row 2 of 22)");
        await Moves([2, 1, 1, 2], fromRight: true);

        async Task Moves(int[] runs, bool fromRight)
        {
            var passed = 0;
            foreach (var run in runs)
            {
                var (left, right) = await visit.Page.Locator("#strip .mark").EvaluateAsync<JsonElement>(
                    "mark => { const cells = document.querySelector('.opening').getBoundingClientRect(), cell = (cells.width - 6) / 23, box = mark.getBoundingClientRect(); return [(box.left - cells.left - 3) / cell, (box.right - cells.left - 3) / cell]; }") is var at
                    ? (at[0].GetDouble(), at[1].GetDouble()) : default;
                var expected = fromRight ? (23 - passed - run, 23 - passed) : (passed, passed + run);
                Assert.Equal(((double)expected.Item1, (double)expected.Item2), (Math.Round(left, 0), Math.Round(right, 0)));
                passed += run;
                await page.Next.ClickAsync();
                await visit.Page.EvaluateAsync("() => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)))");
            }
        }
    }

    private static double Number(JsonElement element, string name) => element.GetProperty(name).GetDouble();
}
