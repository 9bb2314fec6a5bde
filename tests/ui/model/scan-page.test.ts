import { describe, expect, test } from 'vitest'
import { labelCode } from '../../../src/label/code.ts'
import type { Command } from '../../../src/ui/act.ts'
import { jobWith } from '../support/bench.ts'

/** Three steps: a cover over a pump over a sump, each with a bag of its own. */
const strip = [
  'begin cover off, does not hide',
  'off 4 M6x20 hex 8 cover bolts into new bag',
  'begin pump off, does not hide',
  'off 2 M8x30 hex 10 pump bolts into new bag',
  'off 1 dowel into new bag',
  'begin sump plate off, does not hide',
  'off 6 M5x12 hex 8 plate screws into new bag',
  'end',
]

/** The verdict beside the name of the bag, over its big letters. */
const verdictOf = (rows: string[]) => {
  expect(rows[1]).toMatch(/^ {5}[ █]+$/)
  return / {3}([✓!Xo?+>] [A-Z ]+?) (?: |$)/.exec(rows[0] ?? '')?.[1]
}

describe('a scanned bag', () => {
  test('fits now: taken up and fitted with Enter, one press each', () => {
    const { enter, rows, state, text } = jobWith(...strip)
    enter(labelCode(1, 4))
    expect(verdictOf(rows())).toBe('✓ FITS NOW')
    expect(text()).toContain('For step 3, sump plate')
    expect(text()).toContain('6 × plate screws M5x12 hex 8  goes to sump plate, step 3')
    enter('')
    expect(state().build).toBe(3)
    expect(verdictOf(rows())).toBe('✓ FITS NOW')
    enter('')
    expect(state().ledger.accounts.get('p4')?.at.get('machine')).toBe(6)
    expect(verdictOf(rows())).toBe('o EMPTY')
  })

  test('not yet: with every reason', () => {
    const { enter, rows, text } = jobWith(...strip, 'lost 1 cover bolts because fell into the drain')
    enter('scan 1')
    expect(verdictOf(rows())).toBe('! NOT YET')
    expect(text()).toContain('Step 2, pump, comes before')
    expect(text()).toContain('1 short')
  })

  test('not yet: its home is closed over, and a number opens it', () => {
    const home = ['take 3', 'fit 6 plate screws', 'done', 'take 2', 'fit 2 pump bolts', 'fit dowel', 'done']
    const found = ['count 4 = 1', 'explain d1 plate screws from machine because it was ticked and not fitted']
    const { enter, rows, line, text } = jobWith(...strip, ...home, ...found)
    enter('scan 4')
    expect(verdictOf(rows())).toBe('! NOT YET')
    expect(text()).toContain('For step 3, sump plate, which is closed:')
    expect(text()).toContain('"reopen 3 because ..." opens steps 2 and 3.')
    enter('1')
    expect(line()).toBe('reopen 3 because |')
  })

  test('of another step than the one in hand', () => {
    const { enter, rows, text } = jobWith(...strip, 'take 3')
    enter('scan 2')
    expect(verdictOf(rows())).toBe('X OTHER STEP')
    expect(text()).toContain('It belongs to step 2, pump')
    expect(text()).toContain('In hand: step 3, sump plate')
  })

  test('empty', () => {
    const { enter, rows } = jobWith(...strip, 'bag')
    enter('scan 5')
    expect(verdictOf(rows())).toBe('o EMPTY')
  })

  test('with nothing in it that goes back', () => {
    const { enter, rows, text } = jobWith(
      'begin cover off',
      'off 2 clips into new bag',
      'end',
      'leave off 2 clips because not needed',
    )
    enter('scan 1')
    expect(verdictOf(rows())).toBe('o NOT NEEDED')
    expect(text()).toContain('goes nowhere')
  })

  test('used once: not again, and what goes in', () => {
    const { enter, rows, text, desk } = jobWith(
      'begin cover off',
      'off cover gasket, single-use into new bag',
      'end',
    )
    enter('scan 1')
    expect(verdictOf(rows())).toBe('X NOT AGAIN')
    expect(desk.page().large?.letters).toBe('NOT AGAIN')
    expect(text()).toContain('cover gasket was used once: "new p1" when here')
    enter('new p1', 'scan 1')
    expect(verdictOf(rows())).toBe('X NOT AGAIN')
    expect(text().replace(/\s+/g, ' ')).toContain('p2 goes in, on the bench; "scrap p1" or "spare p1"')
  })

  test('not checked, then not good: in large letters, and a number leads to what it waits for', () => {
    const { enter, rows, desk } = jobWith(
      'begin cover off',
      'off 2 clips into new bag',
      'end',
      'check clips: look for cracks',
    )
    enter('scan 1')
    expect(verdictOf(rows())).toBe('! NOT CHECKED')
    expect(desk.page().large?.letters).toBe('NOT CHECKED')
    enter('1')
    expect(desk.screen).toEqual({ at: 'judge', piece: 'p1' })
    enter('judge clips replace because cracked', 'scan 1')
    expect(verdictOf(rows())).toBe('X NOT GOOD')
    expect(desk.page().large?.letters).toBe('NOT GOOD')
  })

  test('is taken in hand while things come off, and filled', () => {
    const { enter, state, desk } = jobWith(...strip.slice(0, 4))
    enter(labelCode(1, 1))
    expect(desk.page().enter?.says).toContain('take it in hand')
    enter('', '2 clips')
    expect(state().ledger.accounts.get('p3')?.at.get('c1')).toBe(2)
  })
})

describe('a label that is none of this', () => {
  test('unknown: never opened, or opened and taken back', () => {
    const { enter, rows, text } = jobWith(...strip, 'bag', 'undo')
    enter(labelCode(1, 77))
    expect(verdictOf(rows())).toBe('? UNKNOWN')
    expect(text()).toContain('No container 77 was ever opened')
    enter(labelCode(1, 5))
    expect(text()).toContain('was opened and taken back')
  })

  test('void: says why, and leads to what took its place', () => {
    const { enter, rows, text, desk } = jobWith(...strip, 'bag', 'bag', 'void 5 because torn, see 6')
    enter(labelCode(1, 5))
    expect(verdictOf(rows())).toBe('X VOID')
    expect(text()).toContain('torn')
    enter('1')
    expect(desk.screen).toEqual({ at: 'scan', text: '6' })
  })

  test('misread by one digit: the near codes by number', () => {
    const { enter, rows, desk } = jobWith(...strip)
    const code = labelCode(1, 2)
    const slip = `${code.slice(0, 6)}${(Number(code[6]) + 1) % 10}${code.slice(7)}`
    enter(slip)
    expect(verdictOf(rows())).toBe('? MISREAD')
    const no =
      rows()
        .find((row) => row.includes('bag 2'))
        ?.trim()
        .split(' ')[0] ?? ''
    enter(no)
    expect(desk.screen).toEqual({ at: 'scan', text: code })
  })

  test('of a job that is not in this home', () => {
    const { enter, rows, text } = jobWith(...strip)
    enter(labelCode(412, 3))
    expect(verdictOf(rows())).toBe('X OTHER JOB')
    expect(text()).toContain('container 3 of job 412, which is not in this home')
  })
})

describe('a label that is no container', () => {
  const dealt = (...lines: string[]) => {
    const job = jobWith(...lines)
    const send = (command: Command) => job.desk.session?.send(command)
    send({ do: 'deal-labels', count: 24 })
    return { ...job, send }
  }

  test('unused: Enter takes it in hand, and the first piece opens a bag with it', () => {
    const { enter, rows, text, desk, state, answer } = dealt(...strip.slice(0, 2))
    enter(labelCode(1, 14))
    expect(verdictOf(rows())).toBe('+ UNUSED')
    expect(desk.page().large?.letters).toBe('UNUSED 14')
    expect(text()).toContain('nothing has it yet')
    expect(desk.page().enter?.says).toBe('take it in hand: what comes off goes into label 14')
    enter('')
    expect(text()).toContain('In hand: label 14')
    enter('2 clips')
    expect(state().containers.get(14)).toMatchObject({ kind: 'bag' })
    expect(state().ledger.accounts.get('p2')?.at.get('c14')).toBe(2)
    expect(state().hand).toBe(14)
    // It is printed already.
    expect(answer()).not.toContain('write it on')
    expect(text()).not.toContain('Write on it')
  })

  test('unused: its number alone, behind words, and its QR symbol', () => {
    const { enter, desk, type, text, line } = dealt(...strip)
    enter('scan 14')
    expect(text()).toContain('nothing has it yet')
    enter('3')
    expect(desk.screen).toEqual({ at: 'qr', container: 14, invert: false })
    expect(text()).toContain('label 14')
    type('2 washers ')
    type(`${labelCode(1, 15)}\r`)
    expect(desk.screen).toEqual({ at: 'scan', text: labelCode(1, 15) })
    expect(line()).toBe('2 washers |')
  })

  test('unused and void', () => {
    const { enter, rows, text, send } = dealt(...strip)
    send({ do: 'void-labels', from: 10, to: 20, reason: 'sheet lost' })
    enter(labelCode(1, 14))
    expect(verdictOf(rows())).toBe('X VOID')
    expect(text()).toContain('sheet lost')
  })

  test('a step: Enter leads to it', () => {
    const { enter, rows, text, desk } = dealt(...strip)
    enter(labelCode(1, 9002))
    expect(verdictOf(rows())).toBe('> A STEP')
    expect(text()).toContain('is step 2, pump')
    enter('')
    expect(desk.screen).toEqual({ at: 'step', step: 2 })
  })

  test('the machine: Enter leads to where the job stands', () => {
    const { enter, rows, text, desk } = dealt(...strip)
    enter(labelCode(1, 9000))
    expect(verdictOf(rows())).toBe('> THE MACHINE')
    expect(text()).toContain('job 1, blue twin')
    enter('')
    expect(desk.screen).toEqual({ at: 'now' })
    enter('qr machine')
    expect(text()).toContain('the machine')
  })

  test('the machine of another job', () => {
    const { enter, text } = dealt(...strip)
    enter(labelCode(412, 9000))
    expect(text()).toContain('the machine of job 412, which is not in this home')
  })
})
