/**
 * The characters of a text that cannot be drawn with the fonts, each once, in the order in which they first stand.
 *
 * Beside those that have no glyph these are:
 * - whatever hides or steers: controls, format and bidirectional characters, variation selectors, fillers, private
 *   use, the place of an object. Some fonts hold glyphs for them, mostly empty ones, but what cannot be seen must not be on a label;
 * - characters written from right to left: a line is set from left to right, and would show them in the wrong order;
 * - a third mark in a row over one letter, for such a pile would stand in the line above.
 */
export function missingCharacters(text: string, hasGlyph: (codePoint: number) => boolean): string[] {
  const missing = new Set<string>()
  let marks = 0
  for (const character of text) {
    marks = mark.test(character) ? marks + 1 : 0
    if (marks > 2 || unfit.test(character) || !hasGlyph(character.codePointAt(0) ?? 0)) missing.add(character)
  }
  return [...missing]
}

const mark = /\p{M}/u

// Bidi_Class is no property of regular expressions: these are the scripts that Unicode gives R and AL, marks aside.
const rightToLeft = [
  ...['Hebrew', 'Arabic', 'Syriac', 'Thaana', 'Nko', 'Samaritan', 'Mandaic', 'Adlam'],
  ...[
    'Hanifi_Rohingya',
    'Mende_Kikakui',
    'Phoenician',
    'Imperial_Aramaic',
    'Avestan',
    'Old_Turkic',
    'Lydian',
  ],
]
const unfit = new RegExp(
  `[\\p{C}\\p{Zl}\\p{Zp}\\p{Default_Ignorable_Code_Point}\u2800\ufffc${rightToLeft.map((script) => `\\p{Script=${script}}`).join('')}]`,
  'u',
)
