import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readCode } from '../../src/label/code.ts'
import { type Piece, scanAssembler } from '../../src/label/scan-assembler.ts'
import { anyCode } from './known-codes.ts'

const line = (text: string): Piece => ({ kind: 'line', text })

type Case = [name: string, chunks: string[], pieces: Piece[], pending: string]

const typed: Case[] = [
  ['a line', ['cover\r'], [line('cover')], ''],
  ['Enter alone', ['\r'], [line('')], ''],
  ['Enter twice', ['\r', '\r'], [line(''), line('')], ''],
  ['no terminator yet', ['cov', 'er'], [], 'cover'],
  ['character by character', [...'017004295\r'], [line('017004295')], ''],
  ['a whole burst', ['017004295\r'], [line('017004295')], ''],
  ['a burst cut in two', ['01700', '4295\r'], [line('017004295')], ''],
  ['two codes in one chunk', ['017004295\r042001874\r'], [line('017004295'), line('042001874')], ''],
  ['LF', ['a\nb\n'], [line('a'), line('b')], ''],
  ['CRLF is one', ['a\r\nb\r\n'], [line('a'), line('b')], ''],
  ['CRLF cut in two', ['a\r', '\nb'], [line('a')], 'b'],
  ['CR, NUL, LF is one', ['a\r\0\nb'], [line('a')], 'b'],
  ['LF after a typed character is its own', ['a\rb\n'], [line('a'), line('b')], ''],
  ['LF, CR are two', ['a\n\r'], [line('a'), line('')], ''],
  ['TAB after a code', ['017004295\t'], [line('017004295')], ''],
  ['TAB after words and a code', ['cov017004295\t'], [line('cov017004295')], ''],
  ['TAB after a wrong code', ['017004235\tx'], [], '017004235 x'],
  ['TAB between words', ['M6\t25'], [], 'M6 25'],
  ['TAB, then Enter', ['017004295\t', '\r'], [line('017004295'), line('')], ''],
  ['a symbology identifier stays', [']Q3017004295\r'], [line(']Q3017004295')], ''],
  ['NUL and group separator go', ['\x1d0170\x0004295\r'], [line('017004295')], ''],
  ['a burst into half a line', ['8 M6x25', '017004295\r'], [line('8 M6x25017004295')], ''],
  ['DEL erases', ['abc\x7f\x7fd'], [], 'ad'],
  ['BS erases', ['abc\bd'], [], 'abd'],
  ['erasing nothing', ['\x7f\x7fa'], [], 'a'],
  ['erasing one character as people see it', ['ae\u0301\x7f'], [], 'a'],
  ['erasing a joined emoji', ['a👩‍🔧\x7f'], [], 'a'],
  ['erasing does not reach back over a line', ['a\r\x7fb'], [line('a')], 'b'],
  ['an arrow key', ['ab\x1b[Dc'], [], 'abc'],
  ['an arrow key cut in two', ['ab\x1b', '[Dc'], [], 'abc'],
  ['Ctrl+C and bell', ['a\x03\x07b'], [], 'ab'],
  ['a character of two units cut in two', ['\ud83d', '\udd29\r'], [line('🔩')], ''],
]

const pasted: Case[] = [
  ['words', ['\x1b[200~valve cover\x1b[201~'], [], 'valve cover'],
  ['words without ESCs', ['[200~', 'valve cover', '[201~'], [], 'valve cover'],
  ['words into words', ['8 M6 ', '[200~valve[201~', ' cover\r'], [line('8 M6 valve cover')], ''],
  ['marks cut anywhere', ['[20', '0~valve[2', '01', '~\r'], [line('valve')], ''],
  ['a scan', ['[200~', '017004295\r', '[201~'], [line('017004295')], ''],
  ['a scan with CRLF', ['[200~017004295\r\n[201~'], [line('017004295')], ''],
  ['a scan with TAB', ['[200~017004295\t[201~'], [line('017004295')], ''],
  ['a scan with Enter after the mark', ['[200~017004295[201~\r'], [line('017004295')], ''],
  ['two scans', ['[200~017004295\r042001874\r[201~'], [line('017004295'), line('042001874')], ''],
  [
    'two codes, the last without a break',
    ['[200~017004295\n042001874[201~'],
    [line('017004295'), line('042001874')],
    '',
  ],
  ['a scan into half a line', ['8 M6x25', '[200~017004295\r[201~'], [line('8 M6x25017004295')], ''],
  ['blank lines among codes are not Enter', ['[200~\r\r017004295\r\r[201~'], [line('017004295')], ''],
  ['blank lines alone are nothing', ['[200~\r\n\r\n[201~'], [], ''],
  ['nothing', ['[200~[201~'], [], ''],
  [
    'lines of words',
    ['[200~cover\rbolts\r[201~'],
    [{ kind: 'paste', text: 'cover\nbolts', lines: ['cover', 'bolts'] }],
    '',
  ],
  [
    'lines of words keep what was typed',
    ['8 M6 ', '[200~cover\r\n\r\nbolts[201~', 'x'],
    [{ kind: 'paste', text: 'cover\n\nbolts', lines: ['cover', '', 'bolts'] }],
    '8 M6 x',
  ],
  [
    'one line of words with a break',
    ['[200~done\r[201~'],
    [{ kind: 'paste', text: 'done', lines: ['done'] }],
    '',
  ],
  [
    'a wrong code among codes',
    ['[200~017004295\r017004235\r[201~'],
    [{ kind: 'paste', text: '017004295\n017004235', lines: ['017004295', '017004235'] }],
    '',
  ],
  [
    'controls and sequences in it go, tabs stay',
    ['[200~a\tb\x1b[31m\x07\x7f\rc[201~'],
    [{ kind: 'paste', text: 'a\tb\nc', lines: ['a\tb', 'c'] }],
    '',
  ],
  ['no end yet', ['a[200~b\rc'], [], 'a'],
  ['an end without a start', ['a[201~b\r'], [line('ab')], ''],
  ['a start in a paste', ['[200~a[200~b[201~', '\r'], [line('ab')], ''],
  ['a mark that typing and paste make up together', ['[2', '[200~00~a[201~', '\r'], [line('[200~a')], ''],
]

describe.each([
  ['typed', typed],
  ['pasted', pasted],
])('%s', (_, cases) => {
  test.each(cases)('%s', (_, chunks, pieces, pending) => {
    const assembler = scanAssembler()
    expect(chunks.flatMap(assembler.push)).toEqual(pieces)
    expect(assembler.pending()).toBe(pending)
  })

  test.each(cases)('%s, in chunks of one and in one chunk', (_, chunks, pieces, pending) => {
    const whole = chunks.join('')
    for (const cut of [whole.split(''), [...whole], [whole]]) {
      const assembler = scanAssembler()
      expect(cut.flatMap(assembler.push)).toEqual(pieces)
      expect(assembler.pending()).toBe(pending)
    }
  })
})

describe('the pending text', () => {
  test('can be set, and typing goes on from there', () => {
    const assembler = scanAssembler()
    assembler.push('abc')
    assembler.set('valve ')
    expect(assembler.pending()).toBe('valve ')
    expect(assembler.push('cover\r')).toEqual([line('valve cover')])
  })

  test('a text that was set is not taken for a paste mark', () => {
    const assembler = scanAssembler()
    assembler.set('[200~x')
    assembler.push('\x7f\x7f')
    expect(assembler.push('y\r')).toEqual([line('[200y')])
  })

  test('may be set or reset between the CR and LF of one CRLF', () => {
    const assembler = scanAssembler()
    expect(assembler.push('a\r')).toEqual([line('a')])
    assembler.set('')
    expect(assembler.push('\nb\r')).toEqual([line('b')])
    assembler.reset()
    expect(assembler.push('\nc\r')).toEqual([line('c')])
  })

  test.each([['a[200~b\rc'], ['a\x1b'], ['a\x1b]11;rgb'], ['a\x1b[2'], ['a\r']])(
    'reset after %j starts anew',
    (before) => {
      const assembler = scanAssembler()
      assembler.push(before)
      assembler.reset()
      expect(assembler.pending()).toBe('')
      expect(assembler.push('[A\n')).toEqual([line('[A')])
    },
  )
})

// Everything that can reach the assembler, thick with what it looks at.
const input = fc
  .array(
    fc.oneof(
      anyCode,
      fc.constantFrom(
        '\r',
        '\n',
        '\r\n',
        '\t',
        '\0',
        '\x1d',
        '\x7f',
        '\b',
        '\x1b',
        '\x1b[A',
        '\x1bOP',
        '\x9b',
      ),
      fc.constantFrom(
        '[200~',
        '[201~',
        '\x1b[200~',
        '\x1b[201~',
        ']Q3',
        '\x1b]11;x',
        '\x1b\\',
        '\x07',
        '~',
        '[',
      ),
      fc.constantFrom('valve cover ', '8 M6x25', 'é', 'e\u0301', '👩‍🔧', '\ud83d', '٣'),
      fc.string({ unit: 'binary' }),
    ),
    { maxLength: 25 },
  )
  .map((parts) => parts.join(''))

test('of a paste of a million signs no more is kept than shows that it is too long', () => {
  const assembler = scanAssembler()
  assembler.paste('behind the bracket '.repeat(50_000))
  expect(assembler.pending().length).toBe(20_000)
  assembler.reset()
  assembler.push(`\x1b[200~${'x'.repeat(30_000)}\x1b[201~`)
  expect(assembler.pending().length).toBe(20_000)
  const lines = Array.from({ length: 5_000 }, () => 'off 6 bolts')
  expect(scanAssembler().paste(lines.join('\n'))).toMatchObject([{ kind: 'paste', lines }])
})

test('however the input is cut, the pieces and the pending text are the same', () => {
  fc.assert(
    fc.property(input, fc.array(fc.integer({ min: 1, max: 12 })), (text, lengths) => {
      const whole = scanAssembler()
      const cut = scanAssembler()
      const pieces = whole.push(text)
      expect(chunksOf(text, lengths).flatMap(cut.push)).toEqual(pieces)
      expect(cut.pending()).toBe(whole.pending())
    }),
    { numRuns: 2000 },
  )
})

test('whatever comes in, no control character but a tab in a paste comes out', () => {
  fc.assert(
    fc.property(input, (text) => {
      const assembler = scanAssembler()
      for (const piece of assembler.push(text)) {
        for (const each of piece.kind === 'paste' ? piece.lines : [piece.text]) {
          expect(each.replaceAll('\t', '')).not.toMatch(/\p{Cc}/u)
        }
      }
      expect(assembler.pending()).not.toMatch(/\p{Cc}/u)
    }),
    { numRuns: 2000 },
  )
})

// The shapes in which a scanner, a terminal and an input library between them deliver one code.
const shapes = fc.constantFrom<(code: string) => string>(
  (code) => `${code}\r`,
  (code) => `${code}\n`,
  (code) => `${code}\r\n`,
  (code) => `${code}\t`,
  (code) => `]Q3${code}\r`,
  (code) => `]C1\x1d${code}\r\n`,
  (code) => `${code}\x1d\r`,
  (code) => `${[...code].join('\0')}\r`,
  (code) => `\x1b[200~${code}\r\x1b[201~`,
  (code) => `\x1b[200~${code}\r\n\x1b[201~`,
  (code) => `\x1b[200~${code}\t\x1b[201~`,
  (code) => `\x1b[200~${code}\x1b[201~\r`,
  (code) => `[200~${code}\r[201~`,
  (code) => `[200~${code}\r\x1b[201~`,
  (code) => `[200~${code}\n[201~`,
)

test('codes scanned in any shape, cut anywhere, are exactly those lines', () => {
  const scans = fc.array(fc.tuple(anyCode, shapes), { minLength: 1, maxLength: 6 })
  fc.assert(
    fc.property(scans, fc.array(fc.integer({ min: 1, max: 30 })), (codes, lengths) => {
      const assembler = scanAssembler()
      const text = codes.map(([code, shape]) => shape(code)).join('')
      const readings = chunksOf(text, lengths)
        .flatMap(assembler.push)
        .map((piece) => readCode(piece.text))
      expect(readings.map((reading) => (reading.kind === 'code' ? reading.code : reading.kind))).toEqual(
        codes.map(([code]) => code),
      )
      expect(assembler.pending()).toBe('')
    }),
    { numRuns: 2000 },
  )
})

function chunksOf(text: string, lengths: number[]): string[] {
  const chunks: string[] = []
  let start = 0
  for (const length of lengths) {
    chunks.push(text.slice(start, start + length))
    start += length
  }
  return [...chunks, text.slice(start)]
}
