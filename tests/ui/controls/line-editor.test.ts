import fc from 'fast-check'
import { describe, expect, test, vi } from 'vitest'
import { keyReader } from '../../../src/ui/controls/line/key-reader.ts'
import { type LineEvent, lineEditor } from '../../../src/ui/controls/line/line-editor.ts'
import { lineView } from '../../../src/ui/controls/line/line-view.ts'
import { anyCode } from '../../label/known-codes.ts'

/** Types chunks into a fresh line and tells what came of them, with what is left in the line. */
function typed(...chunks: string[]) {
  const reader = keyReader()
  const editor = lineEditor()
  const events = chunks.flatMap((chunk) => reader.push(chunk).flatMap((pressed) => [...editor.take(pressed)]))
  for (const pressed of reader.flush()) events.push(...editor.take(pressed))
  return { events, line: `${editor.before()}|${editor.after()}`, editor, reader }
}

const entered = (before: string, after = ''): LineEvent => ({ kind: 'line', before, after })
const key = (name: string) => ({ kind: 'key', key: name })

const up = '\x1b[A'
const left = '\x1b[D'
const right = '\x1b[C'
const home = '\x1b[H'
const del = '\x1b[3~'
const backspace = '\x7f'

describe('a line', () => {
  test.each([
    ['8 M6x25', [], '8 M6x25|'],
    ['8 M6x25\r', [entered('8 M6x25')], '|'],
    ['\r', [entered('')], '|'],
    ['\r\n', [entered('')], '|'],
    ['017000412\r017000509\r', [entered('017000412'), entered('017000509')], '|'],
    ['8 M6x25 hex017000412\r', [entered('8 M6x25 hex017000412')], '|'],
    // Keys of the screen, wherever they come in a chunk
    [`${up}5\r`, [key('up'), entered('5')], '|'],
    ['\x1b[5~\x1b[6~', [key('page-up'), key('page-down')], '|'],
    ['12\x03', [key('leave')], '12|'],
    // Signs of the number pad act on an empty line alone
    ['+-*', [key('page-down'), key('page-up'), key('large')], '|'],
    ['3+4-5*6', [], '3+4-5*6|'],
    // The cursor
    [`M6x25${home}8 `, [], '8 |M6x25'],
    [`bolts${left}${left}${del}`, [], 'bol|s'],
    [`bolts${left}${left}${right}x`, [], 'boltx|s'],
    [`M6x25${home}8 \r`, [entered('8 ', 'M6x25')], '|'],
    [`bolts${home}017000412\r`, [entered('017000412', 'bolts')], '|'],
    // Escape clears; Alt is passed over; what is no key of ours is dropped
    ['bolts\x1b', [], '|'],
    ['\x1bx', [], 'x|'],
    ['a\x1b[24~b\x1bOPc', [], 'abc|'],
    // What looks like the beginning of a sequence and is none swallows neither a scan nor the sequence after it
    ['\x1b[017000412\r', [entered('[017000412')], '|'],
    ['\x1bO017000412\r', [entered('O017000412')], '|'],
    ['\x9b017000412\r', [entered('017000412')], '|'],
    ['\x1b[1;5\x1b[A', [key('up')], '|'],
    ['\x1b[1;5\x03', [key('leave')], '[1;5|'],
    // What a terminal answers in the middle of a scan, to somebody who asked it before, is no part of the scan
    ['0170\x1b[24;80R00412\r', [entered('017000412')], '|'],
    ['0170\x1b[?1;2c00412\r', [entered('017000412')], '|'],
    ['0170\x1b]11;rgb:00/00/00\x0700412\r', [entered('017000412')], '|'],
    ['0170\x1b]11;rgb:00/00/00\x1b\\00412\r', [entered('017000412')], '|'],
    ['0170\x1bP>|some terminal\x1b\\00412\r', [entered('017000412')], '|'],
    ['a\x1b\\', [], 'a\\|'],
    // A scanner's STX and ETX are no Ctrl-C: they end a code as a TAB does
    ['\x02017004295\x03', [entered('017004295')], '|'],
    ['\x02017004295\x03\x02017004295\x03', [entered('017004295'), entered('017004295')], '|'],
    ['\x02017000412\r\x03', [entered('017000412'), key('leave')], '|'],
    ['\x02\x03', [key('leave')], '|'],
    ['\x02ab\x03\x03', [key('leave')], 'ab |'],
    // A number pad in application mode, as the manuals of the VT220 have it: SS3 and a letter
    [[...'prnwyj'].map((final) => `\x1bO${final}`).join(''), [], '02.79*|'],
    ['\x1bOk\x1bOm\x1bOj', [key('page-down'), key('page-up'), key('large')], '|'],
    ['\x1bOx\x1bOl\x1bOq\x1bOM', [entered('8,1')], '|'],
    // Modifiers do not change what a key is
    ['\x1b[1;5A', [key('up')], '|'],
    // A wide or a joined character is one
    [`漢字${left}`, [], '漢|字'],
    [`e\u0301x${left}${backspace}`, [], '|x'],
  ])('%j', (chunk, events, line) => {
    expect(typed(chunk)).toMatchObject({ events, line })
  })

  test('a sequence cut in two is still one key', () => {
    expect(typed('\x1b', '[', 'A').events).toEqual([key('up')])
  })

  test('a paste of one line is typed, of several lines is shown first', () => {
    expect(typed('\x1b[200~8 bolts\x1b[201~').line).toBe('8 bolts|')
    expect(typed('\x1b[200~8 bolts\n4 nuts\n\x1b[201~').events).toEqual([
      { kind: 'paste', lines: ['8 bolts', '4 nuts'] },
    ])
    expect(typed('\x1b[200~+\x7f*\x1b[201~').events).toEqual([])
  })

  test('nothing in a paste ends it, so nothing behind that is typed', () => {
    const paste = { kind: 'paste', lines: ['8 bolts', '0', '0'] }
    for (const end of ['[201~', '\x9b201~', '[20\x1b[m1~', '[201[200~~', '[200~']) {
      const { events } = typed(`\x1b[200~8 bolts${end}\n0\n0\n\x1b[201~`)
      expect(events).toHaveLength(1)
      expect(events[0]).toMatchObject({ kind: 'paste' })
      if (end !== '[201[200~~') expect(events).toEqual([paste])
    }
  })

  test('a paste of a hundred thousand lines is shown like any other', () => {
    const [event] = typed(`\x1b[200~${'off 8 M8x30 bolts in new bag\n'.repeat(100_000)}\x1b[201~`).events
    expect(event?.kind === 'paste' && event.lines.length).toBe(100_000)
  })

  test('a line of half a million characters is mended like any other', () => {
    // In pieces: of a single paste not so much is kept.
    const pastes = Array.from({ length: 25 }, () => `\x1b[200~${'x'.repeat(20_000)}\x1b[201~`)
    const { editor, line } = typed(...pastes, backspace, left, left, del)
    expect(line).toBe(`${'x'.repeat(499_997)}|x`)
    expect(lineView(editor.before(), editor.after(), 14).row).toEqual(lineView('x'.repeat(40), 'x', 14).row)
  })

  test('Ctrl-C leaves even out of a paste without an end', () => {
    expect(typed('\x1b[200~8 bolts\x03').events).toEqual([key('leave')])
  })
})

describe('Backspace', () => {
  test('on an empty line goes back', () => {
    expect(typed(backspace).events).toEqual([key('back')])
    expect(typed('\b').events).toEqual([key('back')])
  })

  test('held down on words erases them and stops there', () => {
    expect(typed('bolt', backspace.repeat(30))).toMatchObject({ events: [], line: '|' })
  })

  test('goes back again after a moment, or after another key', () => {
    const { editor, reader } = typed('bolt', backspace.repeat(30))
    editor.settle()
    expect(reader.push(backspace).flatMap((pressed) => [...editor.take(pressed)])).toEqual([key('back')])
    expect(typed('b', backspace, '\x1b[C', backspace).events.slice(1)).toEqual([key('back')])
  })
})

test('however input is cut, the same comes of it', () => {
  const pieces = fc.constantFrom(
    '8 bolts',
    '\r',
    up,
    left,
    home,
    del,
    backspace,
    '+',
    '漢',
    '\x1b[200~x\x1b[201~',
    '3',
  )
  fc.assert(
    fc.property(fc.array(pieces), fc.array(fc.nat(12)), (parts, cuts) => {
      const whole = parts.join('')
      const chunks: string[] = []
      let rest = whole
      for (const length of cuts) {
        chunks.push(rest.slice(0, length))
        rest = rest.slice(length)
      }
      const { events, line } = typed(whole)
      expect(typed(...chunks, rest)).toMatchObject({ events, line })
    }),
  )
})

test('a code scanned anywhere into a line comes out whole before the cursor', () => {
  fc.assert(
    fc.property(anyCode, fc.stringMatching(/^[a-z ]{0,20}$/), fc.nat(20), (code, words, back) => {
      const { events } = typed(words, left.repeat(Math.min(back, words.length)), `${code}\r`)
      expect(events).toHaveLength(1)
      const [event] = events
      expect(event?.kind === 'line' && event.before.endsWith(code)).toBe(true)
    }),
  )
})

describe('a line that was not taken', () => {
  test.each([
    ['typing replaces it', '2', '2|'],
    ['a scan replaces it', '017000412', '017000412|'],
    ['a space goes on with it', ' left', 'arrow caps left|'],
    ['Backspace mends it', `${backspace}ts`, 'arrow capts|'],
    ['an arrow mends it', `${left}r`, 'arrow capr|s'],
    ['the first of the line mends it', `${home}x`, 'x|arrow caps'],
    ['Delete mends it', `${del}x`, 'arrow capsx|'],
    ['the keys of the screen leave it as it is', `${up}2`, '2|'],
    ['so do the signs that act on an empty line', '+-*2', '2|'],
    ['a paste replaces it', '\x1b[200~2\x1b[201~', '2|'],
  ])('%s', (_, chunk, expected) => {
    const { editor, reader } = typed()
    editor.offer('arrow caps')
    for (const pressed of reader.push(chunk)) Array.from(editor.take(pressed))
    expect(`${editor.before()}|${editor.after()}`).toBe(expected)
  })

  test('Enter clears it, and a line feed of the Enter before does not', () => {
    const { editor, reader } = typed()
    const press = (chunk: string) => reader.push(chunk).flatMap((pressed) => [...editor.take(pressed)])
    press('arrow caps\r')
    editor.offer('arrow caps')
    expect(press('\n')).toEqual([])
    expect(editor.before()).toBe('arrow caps')
    expect(press('\r')).toEqual([])
    expect(editor.before()).toBe('')
    expect(editor.standing()).toBeNull()
  })

  test('a line feed behind the Enter that clears it is no Enter of its own', () => {
    const { editor, reader } = typed()
    editor.offer('arrow caps')
    expect(reader.push('\r\n').flatMap((pressed) => [...editor.take(pressed)])).toEqual([])
  })
})

describe('a line that was kept', () => {
  function kept() {
    const { editor, reader } = typed()
    const replaced = vi.fn()
    editor.keep('off 2 nuts', '', replaced)
    const press = (chunk: string) => reader.push(chunk).flatMap((pressed) => [...editor.take(pressed)])
    return { editor, press, replaced }
  }

  test('Enter sends it again', () => {
    const { editor, press, replaced } = kept()
    expect(editor.standing()).toBe('kept')
    expect(press('\r')).toEqual([{ kind: 'line', before: 'off 2 nuts', after: '' }])
    expect([editor.before(), editor.standing(), replaced.mock.calls.length]).toEqual(['', null, 0])
  })

  test('+ and - turn the page beside it', () => {
    const { editor, press, replaced } = kept()
    expect(press('+-')).toEqual([
      { kind: 'key', key: 'page-down' },
      { kind: 'key', key: 'page-up' },
    ])
    expect([editor.before(), editor.standing(), replaced.mock.calls.length]).toEqual([
      'off 2 nuts',
      'kept',
      0,
    ])
  })

  test('what is typed takes its place, and that is told once', () => {
    const { editor, press, replaced } = kept()
    press('doctor')
    expect([editor.before(), replaced.mock.calls.length]).toEqual(['doctor', 1])
  })

  test.each([
    ['Backspace mends it', '\x7f', 'off 2 nut'],
    ['a space goes on with it', ' ', 'off 2 nuts '],
    ['Ctrl-U gives it up', '\x15', ''],
  ])('%s, and nothing took its place', (_, chunk, expected) => {
    const { editor, press, replaced } = kept()
    press(chunk)
    expect([editor.before(), editor.standing(), replaced.mock.calls.length]).toEqual([expected, null, 0])
  })
})

test('what an event leaves in the line stands before what is typed after it', () => {
  const { editor, reader } = typed()
  for (const pressed of reader.push('pump co017000412\r01'))
    for (const event of editor.take(pressed)) if (event.kind === 'line') editor.set('pump co')
  expect(editor.before()).toBe('pump co01')
})
