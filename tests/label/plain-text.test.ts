import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { plainText } from '../../src/label/plain-text.ts'

describe('plain text', () => {
  test.each([
    ['words stay', 'valve cover, 8 × M6x25', 'valve cover, 8 × M6x25'],
    ['other scripts stay', 'Ventildeckel äöü 蓋 крышка غطاء', 'Ventildeckel äöü 蓋 крышка غطاء'],
    ['emoji stay', '🔩 bolt', '🔩 bolt'],
    ['colours go', '\x1b[1;31mred\x1b[0m', 'red'],
    ['eight-bit colours go', '\x9b31mred\x9bm', 'red'],
    ['cursor moves go', 'a\x1b[2J\x1b[Hb', 'ab'],
    ['a control sequence cut short goes', 'a\x1b[31', 'a'],
    ['a window title goes with its text', 'a\x1b]0;evil\x07b', 'ab'],
    ['a link goes, its words stay', '\x1b]8;;http://example.org\x1b\\words\x1b]8;;\x1b\\', 'words'],
    ['an eight-bit title goes with its text', 'a\x9d0;evil\x9cb', 'ab'],
    ['a device control string goes', 'a\x1bPq#0\x1b\\b', 'ab'],
    ['an unfinished title goes to the end of its line', 'a\x1b]0;evil\nb', 'a b'],
    [
      'an eight-bit control in text decoded wrongly costs no words',
      'a \x93long\x94 bolt\x9d b',
      'a long bolt b',
    ],
    ['a character set switch goes', 'a\x1b(0b', 'ab'],
    ['a terminal reset goes', 'a\x1bcb', 'ab'],
    ['ESC alone goes', 'a\x1b', 'a'],
    ['ESC twice goes', 'a\x1b\x1b[31mb', 'ab'],
    ['NUL, BEL, BS and DEL go', 'a\0\x07\b\x7fb', 'ab'],
    ['white space collapses', ' a \t\r\n\v\f b  c ', 'a b c'],
    ['line and paragraph separators are white space', 'a\u2028b\u2029c\x85d', 'a b c d'],
    ['no-break and wide spaces are white space', 'a\u00a0b\u3000c', 'a b c'],
    ['a control between spaces leaves one', 'a \0 b', 'a b'],
    ['something hidden between spaces leaves one', 'a \u200b b', 'a b'],
    ['reading order stays', 'a\u202egnp.\u202cb\u2066c\u2069\u200e\u061c', 'agnp.bc'],
    ['zero width characters go', 'M\u200b6\u200cx\u200d2\u2060\ufeff5\u00ad', 'M6x25'],
    ['a joined emoji falls apart', '👩\u200d🔧', '👩🔧'],
    ['text in tag characters goes', 'a\u{e0068}\u{e0069}', 'a'],
    ['text in variation selectors goes', 'a\ufe0f\u{e0100}\u{e01ef}', 'a'],
    ['annotation marks go', 'a\ufff9b\ufffac\ufffb', 'abc'],
    ['marks compose', 'e\u0301', 'é'],
    ['marks compose over something hidden', 'e\u034f\u0301', 'é'],
    ['half a character is replaced', 'a\ud83db', 'a\ufffdb'],
    ['nothing', ' \0\u200b ', ''],
  ])('%s', (_, text, expected) => {
    expect(plainText(text)).toBe(expected)
  })

  test('500 characters at most, never half a one, never a space at the end', () => {
    expect(plainText('x'.repeat(501))).toBe('x'.repeat(500))
    expect(plainText('🔩'.repeat(600))).toBe('🔩'.repeat(500))
    // Nor shorter where something was cut off: 499 would pass for whole.
    expect(plainText(`${'x'.repeat(499)} y`)).toBe(`${'x'.repeat(499)}…`)
  })
})

const anything = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 40 }),
  fc
    .array(
      fc.oneof(
        fc.constantFrom(
          '\x1b',
          '[',
          ']',
          '\x9b',
          '\x9d',
          '\x07',
          '\x1b\\',
          '\x9c',
          '31m',
          '0;',
          'a',
          ' ',
          '\n',
        ),
        fc.constantFrom(
          '\u202e',
          '\u200d',
          '\ufeff',
          '\u0301',
          'e',
          '\u1100',
          '\u1161',
          '\u0344',
          '\ud83d',
          '\udd29',
        ),
        fc.string({ unit: 'binary', maxLength: 3 }),
        fc.constant('x'.repeat(249)),
      ),
      { maxLength: 20 },
    )
    .map((parts) => parts.join('')),
)

test('applying it twice changes nothing more', () => {
  fc.assert(
    fc.property(anything, (text) => {
      const once = plainText(text)
      expect(plainText(once)).toBe(once)
    }),
    { numRuns: 5000 },
  )
})

test('what comes out is one short line that hides nothing', () => {
  fc.assert(
    fc.property(anything, (text) => {
      const plain = plainText(text)
      expect(plain).not.toMatch(/\p{Cc}|\p{Cs}|\p{Bidi_Control}|\p{Default_Ignorable_Code_Point}/u)
      expect(plain).not.toMatch(/^\s|\s$|\s\s|[^\S ]/)
      expect([...plain].length).toBeLessThanOrEqual(500)
      expect(plain.normalize('NFC')).toBe(plain)
    }),
    { numRuns: 5000 },
  )
})

test('letters, digits and signs of the trade come through in order', () => {
  const words = fc.string({ unit: fc.constantFrom(...'abzÄß09/.,-+×Ø°µ"#()') })
  fc.assert(
    fc.property(words, (text) => {
      expect(plainText(text)).toBe(text.normalize('NFC').trim())
    }),
  )
})
