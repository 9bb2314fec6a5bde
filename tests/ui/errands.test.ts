import { describe, expect, test } from 'vitest'
import type { ErrandOutcome } from '../../src/session/errands.ts'
import { done, heldErrands, jobWithErrands, refused, say } from './support/bench.ts'

/** So many that there is no room for them under the line. */
const NOT_MERGED: ErrandOutcome = {
  ok: false,
  exit: 'refused',
  code: 'merge-to-decide',
  told: {
    what: 'Nothing is merged yet.',
    lines: Array.from({ length: 30 }, (_, n) => `${n + 1}. there: moved`),
    cure: '"merge /media/stick/twin take" records what fits.',
  },
  entries: [],
}
const IMPORT = 'photos import /media/phone'

function bench(...lines: string[]) {
  const held = heldErrands()
  return { ...jobWithErrands(held.errands, ...lines), ...held }
}

describe('while an errand is out', () => {
  test('the last row says how far it is, whatever else is done', () => {
    const { enter, tell, below, type } = bench('begin cover off')
    enter(IMPORT)
    tell('3 of 40: lid.jpg')
    expect(below().split('\n').at(-1)).toBe(' # UNDER WAY  reading pictures: 3 of 40: lid.jpg')
    enter('.1', '8 M6x25 cover bolts')
    expect(below()).toContain('✓ RECORDED')
    type('4 nu')
    tell('4 of 40: bolts.jpg')
    expect(below()).toContain('4 × nu')
    expect(below().split('\n').at(-1)).toContain('4 of 40: bolts.jpg')
  })

  test('what is under the line has room for it, and the frame keeps its rows', () => {
    const { enter, tell, desk } = bench('begin cover off')
    enter(IMPORT)
    tell(`3 of 40: ${'long '.repeat(40)}`)
    expect(desk.progress()).toContain('3 of 40')
    expect(desk.page().rows.length).toBeGreaterThan(0)
  })

  test('control characters of a file name do not reach the terminal', () => {
    const { enter, tell, desk } = bench()
    enter(IMPORT)
    tell('1 of 2: \x1b[2Jlid\u202e.jpg')
    expect(desk.progress()).toBe('reading pictures: 1 of 2: [2Jlid.jpg')
  })

  test('what came of it is heard as well, whatever else is done meanwhile', async () => {
    const { enter, end, rings } = bench('begin cover off')
    enter(IMPORT)
    expect(rings).toEqual([])
    await end(done('12 new pictures'))
    expect(rings).toEqual([1])
    enter(IMPORT, '.2')
    await end(refused('No such folder.', 'Look at its name.'))
    expect(rings).toEqual([1, 3])
  })

  test('entries of another program appear', () => {
    const { enter, shelf, path, desk, text } = bench('begin cover off')
    enter(IMPORT)
    say(shelf.open(path), 'off 8 M6x25 cover bolts into new bag')
    desk.session?.refresh()
    enter('.1')
    expect(text()).toContain('8 × cover bolts')
  })

  test('a second one has to wait, and its words stay', async () => {
    const { enter, asked, answer, line, end, type } = bench()
    enter(IMPORT, 'labels all')
    expect(asked).toHaveLength(1)
    expect(answer()).toContain('still under way')
    expect(line()).toBe('labels all|')
    await end(done('12 new pictures'))
    type('\r')
    expect(asked).toHaveLength(2)
  })
})

describe('which piece is meant', () => {
  const hoses = [
    'begin hoses off',
    'off coolant hose: pump outlet > radiator top into new tag',
    'off fuel hose: tank > carburettor into new tag',
    'end',
  ]

  test('is asked, and the number goes on the errand', () => {
    const { enter, asked, desk, line } = bench(...hoses)
    enter('flags hose')
    expect(desk.screen.at).toBe('which')
    enter('1')
    expect(asked).toMatchObject([{ errand: 'print', what: { print: 'flags' } }])
    expect(line()).toBe('|')
  })

  test('of pictures too: the number leads to them, and no words stay', () => {
    const { enter, desk, line } = bench(...hoses)
    enter('photos hose')
    expect(desk.screen.at).toBe('which')
    enter('1')
    expect(desk.screen).toMatchObject({ at: 'photos', of: { piece: expect.stringMatching(/^p/) } })
    expect(line()).toBe('|')
  })
})

describe('what came of it', () => {
  test('is said to whoever waited for it', async () => {
    const { enter, end, answer, desk } = bench()
    enter(IMPORT)
    await end(done('12 new pictures from /media/phone.', '  4 of bag 1'))
    expect(answer()).toBe(' ✓ DONE  12 new pictures from /media/phone.\n   · 4 of bag 1')
    expect(desk.progress()).toBeNull()
  })

  test('is said on the screen that one went to, under the answer to what one did there', async () => {
    const { enter, end, below, desk } = bench('begin cover off')
    enter(IMPORT, '.1', '8 M6x25 cover bolts')
    await end(done('12 new pictures from /media/phone.'))
    expect(desk.screen.at).toBe('off')
    expect(below()).toContain('✓ RECORDED  came off: 8 × cover bolts')
    expect(below()).toContain('✓ DONE  12 new pictures')
  })

  test('stays in sight through the line that is being typed when it comes, and goes with the next', async () => {
    const { enter, end, below, type, line } = bench('begin cover off')
    enter(IMPORT, '.1')
    type('8 M6x25 cover bo')
    await end(done('12 new pictures from /media/phone.', '4 of bag 1', '8 of bag 2'))
    expect(line()).toBe('8 M6x25 cover bo|')
    expect(below()).toContain('✓ DONE  12 new pictures from /media/phone. ..')
    expect(below()).not.toContain('8 of bag 2')
    type('lts\r')
    expect(below()).toContain('✓ RECORDED')
    expect(below()).toContain('· 8 of bag 2')
    enter('2 clips')
    expect(below()).toContain('✓ RECORDED')
    expect(below()).not.toContain('12 new pictures')
  })

  test('refused: the words go back into the line, to be mended', async () => {
    const { enter, end, answer, line } = bench()
    enter(IMPORT)
    await end(refused('There is no folder /media/phone.', 'Plug the phone in.'))
    expect(answer()).toContain('X REFUSED  There is no folder')
    expect(line()).toBe(`${IMPORT}|`)
  })

  test('refused, but somebody went on: nothing is put into their line', async () => {
    const { enter, end, below, line } = bench()
    enter(IMPORT, '.2')
    await end(refused('There is no folder /media/phone.', 'Plug the phone in.'))
    expect(line()).toBe('|')
    expect(below()).toContain('X REFUSED  There is no folder')
    expect(below()).toContain('Plug the phone in.')
  })

  test('refused by number: the number does not go back into the line', async () => {
    const { enter, end, answer, line } = bench('bag')
    enter('label 1', '1')
    await end(refused('Label 1 cannot be drawn.', 'Use a larger label.'))
    expect(line()).toBe('|')
    expect(answer()).toContain('X REFUSED')
  })

  test('a fault of ours is said and nothing is stuck', async () => {
    const errands = { run: () => Promise.reject(new Error('no such thing')) }
    const { enter, answer, desk } = jobWithErrands(errands, 'bag')
    enter('labels 1')
    await new Promise((resolve) => setImmediate(resolve))
    expect(answer()).toContain("A fault of putback's own: Error: no such thing")
    expect(desk.progress()).toBeNull()
  })

  test('more than there is room for is a page of its own', async () => {
    const { enter, end, desk, text } = bench()
    enter('labels stocks')
    await end(done(...Array.from({ length: 30 }, (_, n) => `stock-${n}  labels`)))
    expect(desk.screen).toEqual({ at: 'told' })
    expect(text()).toContain('stock-29  labels')
    enter('')
    expect(desk.screen.at).toBe('now')
    enter('told')
    expect(desk.screen).toEqual({ at: 'told' })
  })

  test('also where nothing was done: what is to be seen first is seen, and the line is gone on with', async () => {
    const { enter, type, end, asked, desk, text, line } = bench()
    enter('merge /media/stick/twin')
    await end(NOT_MERGED)
    expect(desk.screen).toEqual({ at: 'told' })
    expect(text()).toContain('30. there: moved')
    expect(line()).toBe('merge /media/stick/twin|')
    type(' take\r')
    expect(asked.at(-1)).toEqual({ errand: 'merge', path: '/media/stick/twin', isTaken: true })
    // Whoever went on meanwhile reads it later.
    enter('.2')
    await end(NOT_MERGED)
    expect(desk.screen.at).toBe('lies')
    enter('told')
    expect(text()).toContain('30. there: moved')
  })

  test('the page is not forced on whoever went on, and leads from an import to the pictures', async () => {
    const { enter, end, desk, below } = bench()
    enter(IMPORT, '.2')
    await end(done('30 new pictures', ...Array.from({ length: 30 }, (_, n) => `  g${n} not sorted`)))
    expect(desk.screen.at).toBe('lies')
    expect(below()).toContain('"told" shows all of it.')
    enter('told', '')
    expect(desk.screen).toEqual({ at: 'photos', of: null })
  })

  test('of another job than the one open now names it', async () => {
    const { enter, end, below, shelf, desk } = bench()
    shelf.create({ name: 'red single', machine: '', units: 'metric' })
    enter(IMPORT, 'jobs')
    const rows = Array.from({ length: desk.page().rows.length }, (_, index) =>
      desk
        .page()
        .rows.at(index)
        .map(({ text }) => text)
        .join(''),
    )
    const red = rows.find((row) => row.includes('red single')) ?? ''
    enter(/\d+/.exec(red)?.[0] ?? '')
    expect(desk.session?.state.job.name).toBe('red single')
    await end(done('12 new pictures'))
    expect(below()).toContain('blue twin: 12 new pictures')
  })
})

describe('leaving while an errand is out', () => {
  test('asks, and Enter waits: it leaves when it is done, with what came of it as last words', async () => {
    const { enter, end, desk, text } = bench()
    enter(IMPORT, 'quit')
    expect(desk.ended).toBeNull()
    expect(text()).toContain('STILL UNDER WAY')
    enter('')
    expect(desk.ended).toBeNull()
    expect(text()).toContain('Leaves as soon as it is done.')
    await end(done('12 new pictures', '  4 of bag 1'))
    expect(desk.ended).toBe(0)
    expect(desk.lastWords).toEqual(['12 new pictures', '  4 of bag 1'])
  })

  test('with work under way the note is asked for first, and kept', async () => {
    const { enter, end, desk } = bench('begin cover off')
    enter(IMPORT, 'quit', 'bolts in the blue tray', '')
    expect(desk.session?.state.card).toBeNull()
    await end(done('12 new pictures'))
    expect(desk.ended).toBe(0)
    expect(desk.session?.state.card).toMatchObject({ note: 'bolts in the blue tray' })
  })

  test('1 leaves at once', () => {
    const { enter, desk } = bench()
    enter(IMPORT, 'quit', '1')
    expect(desk.ended).toBe(0)
    expect(desk.progress()).not.toBeNull()
  })

  test('Backspace stays, also after it was settled to wait', async () => {
    const { enter, end, desk, type, below } = bench()
    enter('.2', IMPORT, 'quit', '')
    type('\x7f')
    expect(desk.screen.at).toBe('lies')
    await end(done('12 new pictures'))
    expect(desk.ended).toBeNull()
    expect(below()).toContain('12 new pictures')
  })

  test('what went wrong is not left unseen', async () => {
    const { enter, end, desk, below } = bench()
    enter(IMPORT, 'quit', '')
    await end(refused('The disk is full.', 'Make room on it.'))
    expect(desk.ended).toBeNull()
    expect(desk.screen.at).toBe('now')
    expect(below()).toContain('The disk is full.')
  })

  test('done before anything was settled: one stays where one was', async () => {
    const { enter, end, desk } = bench()
    enter('.2', IMPORT, 'quit')
    await end(done('12 new pictures'))
    expect(desk.ended).toBeNull()
    expect(desk.screen.at).toBe('lies')
  })
})
