using System.Buffers.Binary;
using System.Collections.Frozen;
using System.Text;

namespace PatternShop.Print;

/// <summary>
/// What page planning needs of a TrueType font: which characters it has and how wide they are. Read from the tables
/// head, hhea, hmtx and cmap (OpenType specification 1.9); lengths in font units, <see cref="UnitsPerEm"/> to the em.
/// </summary>
internal sealed class TrueTypeFont
{
    // Characters up to here are looked up by an array: nearly all that is ever measured.
    private const int Near = 0x250;

    private readonly FrozenDictionary<int, ushort> _glyphs;
    private readonly ushort[] _advances;
    private readonly int[] _near;

    private TrueTypeFont(int unitsPerEm, ushort[] advances, FrozenDictionary<int, ushort> glyphs)
    {
        UnitsPerEm = unitsPerEm;
        _advances = advances;
        _glyphs = glyphs;
        _near = [.. Enumerable.Range(0, Near).Select(character => glyphs.TryGetValue(character, out var glyph) ? AdvanceOf(glyph) : -1)];
    }

    public int UnitsPerEm { get; }

    /// <summary>The characters that the font can show, each with its glyph.</summary>
    public IReadOnlyDictionary<int, ushort> Glyphs => _glyphs;

    public bool Has(Rune character) => character.Value < Near ? _near[character.Value] >= 0 : _glyphs.ContainsKey(character.Value);

    /// <summary>The advance of a character; of the glyph for missing characters if the font lacks it.</summary>
    public int Advance(Rune character) =>
        character.Value < Near && _near[character.Value] is var near and >= 0 ? near : AdvanceOf(_glyphs.GetValueOrDefault(character.Value));

    private int AdvanceOf(ushort glyph) => _advances[Math.Min(glyph, _advances.Length - 1)];

    public static TrueTypeFont Read(ReadOnlySpan<byte> file)
    {
        var head = Table(file, "head"u8);
        var hhea = Table(file, "hhea"u8);
        var hmtx = Table(file, "hmtx"u8);
        var advances = new ushort[U16(hhea, 34)];
        for (var glyph = 0; glyph < advances.Length; glyph++)
        {
            advances[glyph] = U16(hmtx, glyph * 4);
        }

        return new TrueTypeFont(U16(head, 18), advances, CharacterMap(Table(file, "cmap"u8)));
    }

    private static ReadOnlySpan<byte> Table(ReadOnlySpan<byte> file, ReadOnlySpan<byte> tag)
    {
        for (var at = 12; at < 12 + (U16(file, 4) * 16); at += 16)
        {
            if (file.Slice(at, 4).SequenceEqual(tag))
            {
                return file.Slice((int)U32(file, at + 8), (int)U32(file, at + 12));
            }
        }

        throw new InvalidDataException($"The font has no table {Encoding.ASCII.GetString(tag)}.");
    }

    private static FrozenDictionary<int, ushort> CharacterMap(ReadOnlySpan<byte> cmap)
    {
        var glyphs = new Dictionary<int, ushort>();
        for (var at = 4; at < 4 + (U16(cmap, 2) * 8); at += 8)
        {
            var map = cmap[(int)U32(cmap, at + 4)..];
            if (U16(map, 0) == 12)
            {
                AddGroups(map, glyphs);
            }
            else if (U16(map, 0) == 4)
            {
                AddSegments(map, glyphs);
            }
        }

        return glyphs.ToFrozenDictionary();
    }

    private static void AddGroups(ReadOnlySpan<byte> map, Dictionary<int, ushort> glyphs)
    {
        for (var group = 16; group < 16 + (U32(map, 12) * 12); group += 12)
        {
            var first = (int)U32(map, group);
            for (var character = first; character <= U32(map, group + 4); character++)
            {
                glyphs[character] = (ushort)(U32(map, group + 8) + character - first);
            }
        }
    }

    private static void AddSegments(ReadOnlySpan<byte> map, Dictionary<int, ushort> glyphs)
    {
        int doubled = U16(map, 6);
        for (var segment = 0; segment < doubled; segment += 2)
        {
            int last = U16(map, 14 + segment);
            int first = U16(map, 16 + doubled + segment);
            int delta = U16(map, 16 + (2 * doubled) + segment);
            var rangeAt = 16 + (3 * doubled) + segment;
            int range = U16(map, rangeAt);
            for (var character = first; character <= last && character < 0xFFFF; character++)
            {
                var glyph = range == 0 ? character : U16(map, rangeAt + range + (2 * (character - first)));
                if (glyph != 0 && (ushort)(glyph + delta) is not 0 and var shifted)
                {
                    glyphs[character] = shifted;
                }
            }
        }
    }

    private static ushort U16(ReadOnlySpan<byte> bytes, int at) => BinaryPrimitives.ReadUInt16BigEndian(bytes[at..]);

    private static uint U32(ReadOnlySpan<byte> bytes, int at) => BinaryPrimitives.ReadUInt32BigEndian(bytes[at..]);
}
