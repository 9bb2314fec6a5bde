import { describe, expect, test } from 'vitest'
import { verbs } from '../../../../src/lines/verbs.ts'
import { KEYS, SCREEN_WORDS, SCREENS } from '../../../../src/ui/keys.ts'
import { widthOf } from '../../../../src/ui/text/line.ts'
import { emptyHome, jobWith, screens, shelfIn } from '../../support/bench.ts'

const strip = ['begin valve cover off', 'off 8 M6x25 hex 10 valve cover bolts', 'off valve cover']

describe('? alone', () => {
  test('shows every key, screen, word and verb, each on one row of 80 columns', () => {
    const { enter, rows } = jobWith(...strip)
    enter('.3', '?')
    const shown = rows()
    const words = [
      ...KEYS.map(({ words: [word] }) => word),
      ...SCREENS.map(({ digit }) => `.${digit}`),
      ...SCREEN_WORDS.map(({ words: [word] }) => word),
      ...verbs.map(({ words: [word] }) => word ?? ''),
    ]
    const isOf = (word: string) => (row: string) => row.slice(5).startsWith(`${word.padEnd(17)}`)
    expect(words.filter((word) => !shown.some(isOf(word)))).toEqual([])
    // Nothing is cut, and the only rows beside those are headings, the rows between, and two sentences at the top.
    expect(shown.filter((row) => widthOf(row) > 80 || row.endsWith('..'))).toEqual([])
    const others = shown.filter((row) => !words.some((word) => isOf(word)(row)))
    expect(others.filter((row) => row !== '' && row !== row.toUpperCase())).toEqual([
      'HELP  all keys and words',
      '     You came from BACK: what goes back.',
      '     Type what you look for, as torque or lost bolt. A number shows more.',
    ])
  })

  test('a number of two or three digits opens the page of its row', () => {
    const { enter, rows, text, answer, desk } = jobWith(...strip)
    enter('?')
    const no = rows()
      .find((row) => row.slice(5).startsWith('help '))
      ?.slice(0, 3)
      .trim()
    expect(Number(no)).toBeGreaterThan(99)
    enter(no ?? '')
    expect(desk.screen).toMatchObject({ at: 'help', about: 'help' })
    expect(text()).toContain('help [WORD]')
    enter('', '999')
    expect(answer()).toContain('There is no row 999.')
  })
})

describe('while one types, the rows follow', () => {
  test('best first and numbered, and whole again when the line is empty', () => {
    const { enter, type, rows } = jobWith(...strip)
    enter('?')
    const whole = rows()
    type('torque')
    expect(rows()[0]).toMatch(/^HELP {2}\d+ for "torque", best first$/)
    expect(rows()[1]).toMatch(/^ {2}1 {2}tighten {10}Sets the passes/)
    type('\x7f'.repeat(6))
    expect(rows()).toEqual(whole)
  })

  test('a line that is written there shows how its word is written', () => {
    const { enter, type, text } = jobWith(...strip)
    enter('?')
    type('move 2 cover bolts to bench')
    expect(text()).toContain('move [COUNT] PIECE [from PLACE] to PLACE [because REASON]')
  })

  test('Enter keeps what was found, a number chooses, Enter alone goes back', () => {
    const { enter, desk, line, rows } = jobWith(...strip)
    enter('.3', '?', 'bolt')
    expect(line()).toBe('|')
    const list = rows()
    expect(list[0]).toContain('for "bolt", best first')
    enter('1')
    expect(desk.screen).toMatchObject({ at: 'help', about: list[1]?.slice(5, 22).trim() })
    enter('')
    expect(rows()).toEqual(list)
    enter('', '')
    expect(desk.screen).toEqual({ at: 'back' })
  })

  test('the only hit is opened at once', () => {
    const { enter, text } = jobWith(...strip)
    enter('?', 'tihgten')
    expect(text()).toContain('tighten PIECE: 20 Nm, 40 Nm, 90 deg')
  })

  test('what there is not is said to be none, with what is near', () => {
    const { enter, type, text, below } = jobWith(...strip)
    enter('?')
    type('unod')
    expect(text()).toMatch(/^HELP {2}nothing for "unod"; near it are\n {2}1 {2}undo /)
    type('\x7f'.repeat(4))
    type('xyzzy')
    expect(text()).toMatch(/^HELP {2}nothing for "xyzzy"\n {5}No key and no word is anything like it/)
    expect(below()).toContain('No key and no word is anything like "xyzzy".')
  })
})

describe('? with words, from any screen', () => {
  test('several answer to them', () => {
    const { enter, rows } = jobWith(...strip)
    enter('.4', '? torque')
    expect(rows()[1]).toMatch(/^ {2}1 {2}tighten /)
    expect(rows()[2]).toMatch(/^ {2}2 {2}no torque /)
  })

  test('one is called so, and the others are one number away', () => {
    const { enter, rows, text } = jobWith(...strip)
    enter('.4', '? fit')
    expect(text()).toContain('HOW IT IS WRITTEN')
    const more = rows().at(-1) ?? ''
    expect(more).toMatch(/^ +\d+ {2}\d+ more for "fit"$/)
    enter(more.trim().split(' ')[0] ?? '')
    expect(rows()[1]).toMatch(/^ {2}1 {2}fit /)
  })

  test('a key is found by its sign, and answers also where a question waits', () => {
    const { enter, text, desk } = jobWith(...strip)
    enter('begin cylinder head off', 'quit')
    expect(desk.screen).toEqual({ at: 'leave' })
    enter('? *')
    expect(desk.ended).toBe(null)
    expect(text()).toContain('large letters and back')
  })
})

describe('to try it', () => {
  test('a form is begun in the line, on the screen from which one came, and the rest is asked for', () => {
    const { enter, type, line, answer, desk, state } = jobWith(...strip)
    enter('.3', '?', 'move', '1')
    enter('1')
    expect(desk.screen).toEqual({ at: 'back' })
    expect(line()).toBe('move |')
    expect(answer()).toContain('Complete it: move [COUNT] PIECE [from PLACE] to PLACE')
    type('2 valve cover bolts to bench\r')
    expect(state().ledger.accounts.get('p1')?.at.get('bench')).toBe(2)
  })

  test('a form without open words stands in the line, is understood, and is done', () => {
    const { enter, line, desk, entries } = jobWith(...strip)
    enter('? undo', '1')
    expect(line()).toBe('undo|')
    expect(desk.meaning()).toMatchObject({ kind: 'act', act: { do: 'send' } })
    const before = entries()
    enter('')
    expect(entries()).toBe(before + 1)
  })

  test('an example stands in the line as a whole, and is understood', () => {
    const { enter, rows, line, desk, text } = jobWith(...strip)
    for (const word of ['begin', 'off', 'bag', 'caution', 'tool', 'where', 'coolant', 'to buy']) {
      enter('.3', `? ${word}`)
      const shown = rows()
      const from = shown.findIndex((row) => row.startsWith('FOR EXAMPLE'))
      const row = from < 0 ? shown.find((each) => each.startsWith('  1')) : shown[from + 1]
      enter(row?.slice(0, 3).trim() ?? 'none')
      expect(line(), text()).toBe(`${row?.slice(5)}|`)
      expect(desk.screen).toEqual({ at: 'back' })
      expect(desk.meaning().kind, word).toBe('act')
      enter('')
    }
  })

  test.each(['.3', 'jobs', 'sound off', 'label', '0'])('what the screens know beside it: %s', (written) => {
    const { enter, rows, line, desk } = jobWith(...strip)
    enter(`? ${written.split(' ')[0]}`)
    const row = rows().find((each) => each.slice(5) === written)
    enter(row?.slice(0, 3).trim() ?? 'none')
    expect(line()).toBe(`${written}|`)
    expect(desk.meaning().kind).toBe('act')
  })

  test('a screen that would take the words for an answer is left for where one is', () => {
    const { enter, desk, line } = jobWith(...strip)
    enter('count 1', '? undo', '1')
    expect(desk.screen).toEqual({ at: 'now' })
    expect(line()).toBe('undo|')
  })

  test('without a job there is nowhere to write it, and that is said', () => {
    const { enter, answer, line, desk } = screens(shelfIn(emptyHome()))
    enter('?', 'tihgten', '1')
    expect(answer()).toContain('No job is open to write it in.')
    expect(line()).toBe('|')
    enter('', '')
    expect(desk.screen).toEqual({ at: 'jobs' })
  })
})

describe('a whole line does there what it does everywhere', () => {
  test('a command, a screen, a scan, and taking back', () => {
    const { enter, desk, entries } = jobWith(...strip)
    enter('?')
    const before = entries()
    enter('note: look at the chain')
    expect(entries()).toBe(before + 1)
    enter('0')
    expect(entries()).toBe(before + 2)
    enter('001000168')
    expect(desk.screen).toMatchObject({ at: 'scan' })
    enter('?', '.3')
    expect(desk.screen).toEqual({ at: 'back' })
    enter('?', 'left')
    expect(desk.screen).toEqual({ at: 'left' })
  })

  test('a word alone that would record is shown first, and done where it is written again', () => {
    const { enter, entries, text } = jobWith(...strip)
    enter('? end')
    expect(text()).toContain('Ends the strip step under way')
    const before = entries()
    enter('', '?', 'end')
    expect(entries()).toBe(before)
    enter('1', 'end')
    expect(entries()).toBe(before + 1)
  })
})
