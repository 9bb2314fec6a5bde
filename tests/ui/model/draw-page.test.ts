import { describe, expect, test } from 'vitest'
import { jobWith, screens } from '../support/bench.ts'

const right = '\x1b[C'
const left = '\x1b[D'
const down = '\x1b[B'
const backspace = '\x7f'

const cover = ['begin cover off', 'off 4 M6x25 hex 10 cover bolts into new bag']
const lots = [
  'begin pump off',
  'off 4 M6x25 hex 10 pump bolts @1..4 into new bag',
  'off 2 M6x110 hex 10 pump bolts @5,6 into new bag',
]

const places = (state: ReturnType<ReturnType<typeof jobWith>['state']>) =>
  state.layouts.at(-1)?.places.map(({ position, x, y }) => `${position}:${x},${y}`)

describe('a drawing of positions', () => {
  test('is proposed from the names, and Enter records the proposal', () => {
    const { enter, text, state } = jobWith(...cover)
    enter('draw cover bolts')
    expect(text()).toContain('4 cover bolts, all M6x25 hex 10, proposed from the names alone')
    expect(text()).toMatch(/^ +1 +2 +3 +4 *$/m)
    enter('')
    expect(places(state())).toEqual(['1:0,0', '2:1,0', '3:2,0', '4:3,0'])
    expect(text()).not.toContain('proposed')
  })

  test('is typed: a form answers the page', () => {
    const { enter, text, state, desk } = jobWith(...cover)
    enter('layout cover bolts', '2x2')
    expect(places(state())).toEqual(['1:0,0', '2:1,0', '3:0,1', '4:1,1'])
    expect(text()).toMatch(/ 1 +2 *\n *\n? +3 +4/)
    enter('1 2 / . 3 / 4')
    expect(state().layouts.at(-1)?.shape).toBe('free')
    expect(desk.screen).toMatchObject({ at: 'draw', placing: null })
  })

  test.each([
    ['2y2', `'2y2' is no layout. Perhaps "2x2"`],
    ['1 2 / 3 3', 'Missing: position 4. More than once: position 3.'],
    ['1x2', '1 row of 2 is 2 places for 4 positions.'],
    ['90x90', '90 x 90 is too large. At most 40 rows of 40.'],
  ])('that cannot be says why: %s', (typed, says) => {
    const { enter, answer, state } = jobWith(...cover)
    enter('layout cover bolts', typed)
    expect(answer().replace(/\s+(?:· )?/g, ' ')).toContain(says)
    expect(state().layouts).toEqual([])
  })

  test('words of the record and screens mean here what they mean elsewhere', () => {
    const { enter, state, desk } = jobWith(...cover)
    enter('layout cover bolts', 'note: looked at it')
    expect(state().notes).toHaveLength(1)
    enter('.2')
    expect(desk.screen.at).toBe('lies')
  })

  test('shows which size belongs where, and where they are now', () => {
    const { enter, text } = jobWith(...lots, 'layout pump bolts: 2x3')
    enter('layout pump bolts')
    expect(text()).toMatch(/1 M6x25 +2 M6x25 +3 M6x25/)
    expect(text()).toMatch(/4 M6x25 +5 M6x110 +6 M6x110/)
    enter('3')
    expect(text()).toMatch(/4 bag 1 +5 bag 2 +6 bag 2/)
  })

  test('shows the order of tightening', () => {
    const { enter, text } = jobWith(
      ...cover,
      'end',
      'layout cover bolts: 2x2',
      'tighten cover bolts: 8 Nm order 1,4,2,3',
    )
    enter('layout cover bolts', '4')
    expect(text()).toMatch(/1 \(1\) +2 \(3\)/)
    expect(text()).toMatch(/3 \(4\) +4 \(2\)/)
  })

  test('arrows point where a number says', () => {
    const { enter, text, state } = jobWith(...cover, 'layout cover bolts: 2x2')
    enter('layout cover bolts', '8')
    expect(
      state()
        .layouts.at(-1)
        ?.places.map(({ arrow }) => arrow),
    ).toEqual(['left', 'left', 'left', 'left'])
    expect(text()).toMatch(/1 ← +2 ←/)
  })

  test('of what has no positions says so', () => {
    const { enter, text, answer } = jobWith('begin x off', 'off pump into bench')
    enter('layout pump')
    expect(`${text()}${answer()}`).toContain('one piece alone')
  })
})

describe('placing one after the other', () => {
  test('arrow keys move on the empty line, Enter places, the last Enter records', () => {
    const { enter, type, text, state, desk } = jobWith(...cover)
    enter('layout cover bolts', '1')
    expect(text()).toContain('PLACE: 1')
    type('\r')
    expect(text()).toContain('PLACE: 2')
    type(`${right}\r${down}\r${left}${left}${left}${left}\r`)
    expect(text()).toContain('ALL ARE PLACED')
    expect(state().layouts).toEqual([])
    type('\r')
    expect(places(state())).toEqual(['1:0,0', '2:2,0', '3:3,1', '4:0,1'])
    expect(desk.screen).toMatchObject({ at: 'draw', placing: null })
  })

  test('Backspace takes the last back, and goes back where there is none', () => {
    const { enter, type, text, desk } = jobWith(...cover)
    enter('layout cover bolts', '1')
    type(`\r\r${backspace}`)
    expect(text()).toContain('PLACE: 2')
    type(`${backspace}`)
    expect(text()).toContain('PLACE: 1')
    type(`${backspace}`)
    expect(desk.screen.at).not.toBe('draw')
  })

  test('no two in one place', () => {
    const { enter, type, text, answer } = jobWith(...cover)
    enter('layout cover bolts', '1')
    type(`\r${left}\r`)
    expect(answer()).toContain('1 lies here already.')
    expect(text()).toContain('PLACE: 2')
  })

  test('while something is typed, arrow keys move in the line', () => {
    const { enter, type, line, text } = jobWith(...cover)
    enter('layout cover bolts', '1')
    type(`2x2${left}`)
    expect(line()).toBe('2x|2')
    expect(text()).toContain('[·]')
  })

  test('Escape leaves at once, whatever is placed', () => {
    const { enter, type, desk } = jobWith(...cover)
    enter('layout cover bolts', '1')
    type('\r\r')
    type('\x1b')
    expect(desk.screen.at).not.toBe('draw')
  })

  test('arrows are chosen on the way and recorded with it', () => {
    const { enter, type, state } = jobWith(...cover)
    enter('layout cover bolts', '1', '4')
    type('\r\r\r\r\r')
    expect(
      state()
        .layouts.at(-1)
        ?.places.map(({ arrow }) => arrow),
    ).toEqual(['left', 'left', 'left', 'left'])
  })

  test('a code scanned in between is a scan, and what is placed stays', () => {
    const { enter, type, text, desk } = jobWith(...cover)
    enter('layout cover bolts', '1')
    type('\r\r')
    enter('001000168')
    expect(desk.screen.at).toBe('scan')
    type(backspace)
    expect(text()).toContain('PLACE: 3')
  })

  test('forty columns of a grid pass by the cursor on a small screen', () => {
    const { shelf } = jobWith('begin x off', 'off 40 M6x20 hex 10 pan bolts into new bag')
    const { enter, type, rows, text } = screens(shelf, { width: 64, height: 18 })
    enter('layout pan bolts', '1')
    type('\r'.repeat(39))
    expect(text()).toContain('PLACE: 40')
    for (const row of rows().slice(1)) expect(row.length).toBeLessThanOrEqual(64)
    expect(text()).toMatch(/ 38 +39 +\[·\]/)
  })
})
