import { describe, expect, test } from 'vitest'
import { labelCode } from '../../../src/label/code.ts'
import { frameRows } from '../../../src/ui/screens/frame.tsx'
import { textOf } from '../../../src/ui/text/line.ts'
import { done, heldErrands, jobWithErrands } from '../support/bench.ts'

/** Two bags of a cover, and a hose whose ends hang on a tag. */
const strip = [
  'begin valve cover off, does not hide',
  'off 8 M6x25 hex 10 valve cover bolts into new bag',
  'off valve cover gasket into new bag',
  'off coolant hose: pump outlet > radiator top into new tag',
  'end',
]

function bench(...lines: string[]) {
  const held = heldErrands()
  const job = jobWithErrands(held.errands, ...strip, ...lines)
  const frame = (size: { width: number; height: number }) => {
    job.desk.resize(size)
    return frameRows(job.desk, size).rows.map(textOf)
  }
  return { ...job, ...held, frame }
}

describe('the label of a container', () => {
  test('has what to write on it beside its symbol, on one screen of 80 by 24', () => {
    const { enter, frame } = bench()
    enter('label 1')
    const rows = frame({ width: 80, height: 24 })
    const written = ['WRITE ON IT', '001 0001 68', '8 VALVE COVER BOLTS M6x25', '> VALVE COVER, STEP 1']
    for (const text of written) expect(rows.some((row) => row.slice(37).startsWith(text))).toBe(true)
    expect(labelCode(1, 1)).toBe('001000168')
    expect(rows.filter((row) => /[█▀▄]/.test(row.slice(0, 34))).length).toBeGreaterThan(10)
    expect(rows.join('\n')).not.toContain(' below')
  })

  test('is printed by its number, and what came of it is said', async () => {
    const { enter, asked, end, answer } = bench()
    enter('label 1', '1')
    expect(asked).toEqual([{ errand: 'print', what: { print: 'containers', containers: [1] }, how: {} }])
    await end(done('drawn: labels of bag 1, 1 label as pdf on a4-24', '    in bag-1.pdf'))
    expect(answer()).toContain('✓ DONE  drawn: labels of bag 1')
    expect(answer()).toContain('· in bag-1.pdf')
  })

  test('offers flags for the hose in it, once for both ends', () => {
    const { enter, asked, text } = bench()
    enter('label 3')
    expect(text().match(/print flags for/g)).toHaveLength(1)
    enter('2')
    expect(asked).toMatchObject([{ errand: 'print', what: { print: 'flags' } }])
  })

  test('leads to its pictures and to what is in it, where there are any', () => {
    const { enter, desk, text } = bench()
    enter('label 1')
    expect(text()).not.toContain('picture')
    desk.session?.send({
      do: 'add-pictures',
      pictures: [{ file: 'lid.jpg', sha256: 'a'.repeat(64), taken: null, belongs: { container: 1 } }],
    })
    expect(text()).toContain(' 5  1 picture')
    enter('5')
    expect(desk.screen).toEqual({ at: 'photos', of: { container: 1 } })
    enter('label 1', '6')
    expect(desk.screen).toEqual({ at: 'scan', text: '1' })
  })

  test('of a void one says so and is not printed', () => {
    const { enter, text, desk } = bench('bag', 'void 4 because torn')
    enter('label 4')
    expect(text()).toContain('VOID')
    expect(desk.page().choice(1)).toBeUndefined()
  })

  test('goes back with Enter', () => {
    const { enter, desk } = bench()
    enter('.2', 'label 1', '')
    expect(desk.screen.at).toBe('lies')
  })
})

describe('large letters', () => {
  test('at 80 by 24: the code large, the short lines under it', () => {
    const { enter, type, frame } = bench()
    enter('label 1')
    type('*')
    const rows = frame({ width: 80, height: 24 })
    expect(rows[4]).toMatch(/^ {3}[ █]{60,}/)
    expect(rows.join('\n')).toContain('8 VALVE COVER BOLTS M6x25')
    expect(rows.join('\n')).toContain('> VALVE COVER, STEP 1')
  })

  test('in a large window: all of it large', () => {
    const { enter, type, frame } = bench()
    enter('label 1')
    type('*')
    const rows = frame({ width: 200, height: 40 })
    expect(rows.join('\n')).not.toContain('VALVE COVER BOLTS')
    expect(rows.filter((row) => row.includes('█')).length).toBeGreaterThanOrEqual(15)
  })

  test('the numbers choose while the letters are large', () => {
    const { enter, type, asked } = bench()
    enter('label 1')
    type('*')
    enter('1')
    expect(asked).toHaveLength(1)
  })
})

describe('other labels', () => {
  test('an unused one is printed once more', () => {
    const { enter, desk, text, asked } = bench()
    desk.session?.send({ do: 'deal-labels', count: 4 })
    enter('label 5')
    expect(text()).toContain('unused: what is put into it opens a bag')
    enter('1')
    expect(asked).toMatchObject([{ what: { print: 'blanks-again', from: 5, to: 5 } }])
  })

  test('the tag of the machine, and the containers of a step', async () => {
    const { enter, asked, end } = bench()
    enter('qr machine', '1')
    await end(done('drawn'))
    enter('qr step 1', '1')
    expect(asked).toMatchObject([
      { what: { print: 'machine' } },
      { what: { print: 'containers-of-step', step: 1 } },
    ])
  })

  test('a number that nothing has', () => {
    const { enter, text, desk } = bench()
    enter('label 77')
    expect(text()).toContain('No label of this job has the number 77')
    enter('')
    expect(desk.screen.at).toBe('now')
  })
})

describe('the words label and labels alone', () => {
  test('mean the bag in hand', () => {
    const { enter, desk, asked } = bench('begin sump off', 'off 6 M6x16 sump bolts into new bag')
    enter('.1', 'label')
    expect(desk.screen).toEqual({ at: 'qr', container: 4, invert: false })
    enter('.1', 'labels')
    expect(asked).toMatchObject([{ what: { print: 'containers', containers: [4] } }])
  })

  test('mean the one on the screen before that', () => {
    const { enter, desk, asked } = bench('begin sump off', 'off 6 M6x16 sump bolts into new bag')
    enter(labelCode(1, 2), 'labels', 'label')
    expect(asked).toMatchObject([{ what: { print: 'containers', containers: [2] } }])
    expect(desk.screen).toEqual({ at: 'qr', container: 2, invert: false })
  })

  test('mean nothing where there is none', () => {
    const { enter, below, asked } = bench()
    enter('labels')
    expect(below()).toContain('NOT UNDERSTOOD')
    expect(asked).toEqual([])
  })

  test('a bag that was just opened leads there by number', () => {
    const { enter, desk, answer, text } = bench()
    enter('.1', 'begin sump off', '6 M6x16 sump bolts into new bag')
    expect(answer()).toContain('write it on bag 4, label 001 0004')
    expect(answer()).toContain('"labels 4" prints it')
    expect(text()).toContain('print it with 8')
    enter('8')
    expect(desk.screen).toEqual({ at: 'qr', container: 4, invert: false })
  })
})
