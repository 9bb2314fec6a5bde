import jsqr from 'jsqr'
import { describe, expect, test } from 'vitest'
import { labelCode } from '../../../src/label/code.ts'
import { textOf } from '../../../src/ui/text/line.ts'
import { jobWith, screens, shelfLater } from '../support/bench.ts'

const head = [
  'begin valve cover off',
  'off 8 M6x25 hex 10 valve cover bolts into new bag',
  'off valve cover gasket, single-use',
  'begin cylinder head off',
  'off cylinder head into bench',
  'off 4 M10x120 E14 head bolts @A1,A2,B1,B2 into new bag',
  'off rag > inlet port 1',
  'off coolant out 2.1 L',
  'end',
  'tighten head bolts: 20 Nm, 40 Nm, 90 deg order A2,B1,A1,B2',
]

describe('where things lie', () => {
  test('shelf, bin and bag one under the other, with what is in them', () => {
    const { enter, rows } = jobWith(
      'shelf',
      'bin small parts in 1',
      'begin x off',
      'off 4 nuts into new bag',
      'put 3 in 2',
    )
    enter('.2')
    expect(
      rows()
        .slice(1)
        .map((row) => row.replace(/ +$/, '')),
    ).toEqual([
      '    1  shelf                      1 container',
      '    2    bin small parts          1 container',
      '    3      bag                    4 × nuts',
    ])
  })

  test('what lies in no container stands first', () => {
    const { enter, rows } = jobWith('begin x off', 'off pump into bench', 'off 4 nuts into new bag')
    enter('.2')
    expect(rows()[1]).toMatch(/^ {7}the bench +1 × pump$/)
  })

  test('a long list is a row for each container, made one by one', () => {
    const { enter, desk } = jobWith(...Array<string>(120).fill('bag'))
    enter('.2')
    const { rows } = desk.page()
    expect(rows.length).toBe(120)
    expect(textOf(rows.at(119))).toMatch(/^ {2}120 {2}bag +empty$/)
  })
})

describe('what goes back', () => {
  test('every step says how it stands and why, in the order of the way back', () => {
    const { enter, rows } = jobWith(...head)
    enter('.3')
    const steps = rows().filter((row) => /^ {1,2}\d/.test(row))
    expect(steps.map((row) => row.replace(/ +/g, ' ').trim())).toEqual([
      '2 ! BLOCKED cylinder head',
      '1 ! BLOCKED valve cover',
    ])
    expect(rows().join('\n')).toMatch(/"look 2"/)
  })

  test('an override is shown wherever the step is', () => {
    const { enter, text } = jobWith(...head, 'override start 2 because the manual says so')
    enter('.3')
    expect(text()).toContain('overridden: the manual says so')
    enter('2')
    expect(text()).toContain('OVERRIDDEN\n     · the manual says so')
  })

  test('what was passed over is gone on with', () => {
    const { enter, desk, state } = jobWith(
      'begin cover off, does not hide',
      'off cover into bench',
      'begin pump off',
      'off pump into bench',
      'end',
    )
    enter('override start 1 because in a hurry')
    expect(desk.screen).toEqual({ at: 'step', step: 1 })
    enter('')
    expect(state().build).toBe(1)
  })

  test('what is done stands behind the rest, and says so', () => {
    const { enter, text } = jobWith(
      'begin x off, does not hide',
      'off 2 nuts into new bag',
      'end',
      'take 1',
      'fit nuts',
      'done',
    )
    enter('.3')
    expect(text()).toMatch(/BEHIND YOU\n {2}1 {3}✓ DONE/)
  })
})

describe('a step', () => {
  test('numbers every reason, and the number writes the words that lift it', () => {
    const { enter, line } = jobWith(...head)
    enter('step 1')
    enter('1')
    expect(line()).toBe('new p2|')
  })

  test('shows the tightening where its fasteners lie, as their names tell it, with the passes in brief', () => {
    const { enter, rows } = jobWith(
      ...head.slice(3, 6),
      'end',
      head[9] as string,
      'look 1',
      'take 1',
      'fit cylinder head',
      'fit head bolts',
      ...['turn', 'turn', 'turn', 'turn'],
    )
    enter('step 1', '')
    const grid = rows().slice(rows().findIndex((row) => row.startsWith('TIGHTENING')) + 1)
    expect(grid.slice(0, 6).map((row) => row.trim().replace(/ +/g, ' '))).toEqual([
      'A1 · A2 ✓',
      '',
      '[B1 ·] B2 ·',
      '✓ 1: 20 Nm > 2: 40 Nm 1/4 · 3: 90 deg',
      'then A1 B2',
      'Proposed from the names alone; a number below draws them.',
    ])
    expect(rows().join('\n')).toMatch(/NEXT: TURN/)
  })

  test('that hides others lists what has to be seen and counted before it', () => {
    const { enter, text } = jobWith(
      'begin cover off, hides',
      'off cover into bench',
      'begin pump off, does not hide',
      'off 2 M8x30 hex 10 pump bolts into new bag',
      'off rag > port',
      'caution: spring under load',
      'end',
      'take out rag',
      'take 2',
      'fit pump bolts',
      'done',
    )
    enter('step 1')
    expect(text()).toMatch(/LAST LOOK: SEE AND COUNT\n.*step 2, pump: 2 × pump bolts.*, out again: 1 × rag/)
    enter('step 2')
    expect(text()).toContain('CAUTION\n     ! spring under load')
  })

  test('of a check: Enter asks for what was found, and a number for what went wrong', () => {
    const { enter, line, state } = jobWith(
      'begin x off, does not hide',
      'off 2 nuts into new bag',
      'end',
      'add check leak test',
      'take 2',
    )
    enter('step 2', '')
    expect(line()).toBe('done 2: |')
    enter('dry after 10 min')
    expect(state().steps.get(2)?.built).toBe('done')
  })
})

describe('what is left over', () => {
  test('names each thing with the label that holds it and the steps to undo first', () => {
    const { enter, text } = jobWith(
      'begin cover off, does not hide',
      'off cover into bench',
      'begin pump off, does not hide',
      'off 2 M8x30 hex 10 pump bolts into new bag',
      'off pump into bench',
      'end',
      'override start 1 because in a hurry',
      'take 1',
      'fit cover',
      'done',
    )
    enter('.4')
    const code = labelCode(1, 1)
    expect(text()).toContain('! NOT CLEAR')
    expect(text()).toMatch(/2 × pump bolts M8x30 hex 10/)
    expect(text()).toContain(`${code.slice(0, 3)} ${code.slice(3, 7)} ${code.slice(7)}`)
    expect(text()).toContain('First undo: step 1')
  })

  test('a number looks into the container that holds it', () => {
    const { enter, desk } = jobWith('begin x off', 'off 2 nuts into new bag', 'end')
    enter('.4', '1')
    expect(desk.screen).toEqual({ at: 'scan', text: '1' })
  })

  test('nothing: the gates of the end by number, and the checks after the start', () => {
    const { enter, text, state } = jobWith(
      'begin x off, does not hide',
      'off 2 nuts into new bag',
      'end',
      'add later check oil level due after 10 km',
      'take 1',
      'fit nuts',
      'done',
    )
    enter('.4')
    expect(text()).toContain('✓ CLEAR')
    enter('1', '2')
    expect(state().started).toBe(true)
    expect(text()).toContain('due after 10 km')
    enter('3')
    expect(state().closed).toBe(false)
    enter('4')
    expect(text()).toContain('step 2, check oil level')
  })
})

describe('what happened', () => {
  test('with the year of another one, apart from what happened', () => {
    const { home } = jobWith()
    const { enter, rows } = screens(shelfLater(home, 400))
    enter('.1', '5 nuts into new bag', '.5')
    expect(rows()[1]).toContain('19 Feb 2031 14:05 came off: 5 × nuts')
  })

  test('newest first; what was taken back says so in a word', () => {
    const { enter, rows } = jobWith('begin x off', 'off 2 nuts', 'undo', 'note: gasket stuck')
    enter('.5')
    const told = rows()
      .slice(1)
      .map((row) => row.trim())
    expect(told[0]).toMatch(/^5 .*gasket stuck/)
    expect(told.find((row) => row.startsWith('3 '))).toContain('< UNDONE')
    expect(told.filter((row) => row.includes('UNDONE'))).toHaveLength(1)
  })
})

describe('a QR code', () => {
  test('drawn on the screen is read by an independent reader', () => {
    const { enter, desk } = jobWith('bag')
    enter('qr 1')
    const { rows } = desk.page()
    const lines = Array.from(
      { length: rows.length },
      (_, index) => rows.at(index).find(({ tone }) => tone === 'raw')?.text ?? '',
    )
    expect(read(lines)).toBe(labelCode(1, 1))
  })
})

describe('the card', () => {
  test('tells where the work broke off, what is half done and what is loose', () => {
    const { shelf } = jobWith(
      ...head.slice(3, 6),
      'end',
      head[9] as string,
      'look 1',
      'take 1',
      'fit cylinder head',
      'fit head bolts',
      ...Array<string>(9).fill('turn'),
    )
    const { text, state } = screens(shelf)
    expect(state().card).toMatchObject({ abrupt: true })
    expect(text()).toContain('broken off after')
    expect(text()).toMatch(/turn B1, perhaps turned already, pass 3 of 3: 90 deg/)
  })

  test('tells what is half done beside the next thing, what arrived, and what was done last', () => {
    const { text } = jobWith(
      'begin left cover off free, does not hide',
      'off 2 M6x20 left bolts into new bag',
      'off left gasket, single-use into bench',
      'begin right cover off free, does not hide',
      'off 2 M6x20 right bolts into new bag',
      'end',
      'buy left gasket',
      'arrived o1',
      'tighten right bolts: 5 Nm, 10 Nm',
      'take 2',
      'fit right bolts',
      ...Array<string>(3).fill('turn'),
      'compare p4: alike',
      'take 1',
    )
    const card = text().replace(/\s+/g, ' ')
    expect(card).toContain(
      'HALF DONE right cover: right bolts, pass 2 of 2: 10 Nm, 0 of 2 through: fastener 1 is next',
    )
    expect(card).toMatch(/LOOSE .*left gasket.* ARRIVED 1 × left gasket/)
    expect(card).toMatch(/LAST DONE \S+ took up step 1, left cover/)
  })

  test('tells of a step that was taken up and left for another', () => {
    const { text } = jobWith(
      'begin left cover off free, does not hide',
      'off 2 M6x20 left bolts into new bag',
      'begin right cover off free, does not hide',
      'off 2 M6x20 right bolts into new bag',
      'end',
      'take 2',
      'fit 1 right bolts',
      'take 1',
    )
    expect(text()).toMatch(/HALF DONE +step 2, right cover, taken up and not done/)
  })

  test('numbers the steps that are ready', () => {
    const { enter, state } = jobWith(
      'begin left cover off free, does not hide',
      'off 2 M6x20 left bolts into new bag',
      'begin right cover off free, does not hide',
      'off 2 M6x20 right bolts into new bag',
      'end',
    )
    enter('1')
    expect(state().build).not.toBeNull()
  })
})

/** The half blocks as pixels, black where there is ink of the dark theme's ground. */
function read(lines: readonly string[]): string | undefined {
  const scale = 4
  const width = [...(lines[0] ?? '')].length
  const height = lines.length * 2
  const pixels = new Uint8ClampedArray(width * scale * height * scale * 4)
  const isLight = (x: number, y: number) => {
    const character = [...(lines[y >> 1] ?? '')][x] ?? ' '
    return character === '█' || character === (y % 2 === 0 ? '▀' : '▄')
  }
  for (let y = 0; y < height * scale; y += 1) {
    for (let x = 0; x < width * scale; x += 1) {
      const value = isLight(Math.floor(x / scale), Math.floor(y / scale)) ? 255 : 0
      pixels.set([value, value, value, 255], (y * width * scale + x) * 4)
    }
  }
  return jsqr.default(pixels, width * scale, height * scale, { inversionAttempts: 'dontInvert' })?.data
}
