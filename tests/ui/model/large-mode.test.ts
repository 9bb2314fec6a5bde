import { describe, expect, test } from 'vitest'
import { labelCode } from '../../../src/label/code.ts'
import { bigLetters } from '../../../src/ui/controls/big-letters/big-letters.ts'
import { frameRows } from '../../../src/ui/screens/frame.tsx'
import { textOf } from '../../../src/ui/text/line.ts'
import { jobWith, screens, shelfIn } from '../support/bench.ts'
import type { ScreenJob } from '../support/screen-jobs.ts'
import { homeWith } from '../support/told-once.ts'

describe('the next bolt', () => {
  test('with its torque and its pass; after Enter the next one stands there at once', () => {
    const { enter, type, said, frame } = bench('20 Nm, 40 Nm')
    type('*')
    expect(said()).toEqual(['1', '20 N·m', 'pass 1 of 2', '0 of 4 through'])
    expect(frame()).toContain(drawn('1', '20 N·m'))
    enter('')
    expect(said()).toEqual(['2', '20 N·m', 'pass 1 of 2', '1 of 4 through'])
    expect(frame()).toContain(drawn('2', '20 N·m'))
    expect(frame()).toContain('Enter turn fastener 2')
    enter('', '', '')
    expect(said()).toEqual(['1', '40 N·m', 'new pass 2 of 2', '0 of 4 through'])
  })

  test.each([
    ['50 %, 100 % of 40 Nm', 0, ['20 N·m', 'pass 1 of 2', '50 % of 40 Nm']],
    ['40 Nm, 100 deg', 4, ['100 deg', 'new pass 2 of 2', '1 quarter and 10 deg']],
    ['40 Nm, 45 deg', 4, ['45 deg', 'new pass 2 of 2', '0 of 4 through']],
    ['40 Nm, back off, 50 Nm', 5, ['back off fully', 'pass 2 of 3', '1 of 4 through']],
    ['40 Nm, check 40 Nm', 4, ['check 40 N·m', 'new pass 2 of 2', '0 of 4 through']],
    ['snug, 40 Nm', 0, ['snug', 'pass 1 of 2', '0 of 4 through']],
    ['40 Nm, mark', 4, ['mark', 'new pass 2 of 2', '0 of 4 through']],
  ])('of %s, %i turned', (passes, turned, expected) => {
    const { enter, said } = bench(passes)
    enter(...Array<string>(turned).fill(''))
    expect(said().slice(1)).toEqual(expected)
  })

  test('with what the wrench is set to, where that is another figure', () => {
    const { said } = bench('15 lbf·ft', 'wrench t1 handle 16 in adapter 2 in range 5..60 lbf·ft')
    expect(said().slice(1)).toEqual(['15 lbf·ft', 'pass 1 of 1', 'wrench 13.3 lbf·ft, worked out'])
  })

  test('and with what speaks against the wrench', () => {
    const { said } = bench('15 lbf·ft', 'wrench t1 range 10..150 lbf·ft')
    expect(said().slice(1)).toEqual(['15 lbf·ft', 'pass 1 of 1', 'wrench 15 lbf·ft, its lowest fifth'])
  })

  test('in doubt: the two answers by their numbers', () => {
    const { enter, said, type } = benchIn('turning', 'step 1')
    type('*')
    expect(said()).toEqual(['A3', '90 deg', 'pass 3 of 3', 'in doubt: 1 turned, 2 not'])
    // There the numbers mean other things.
    for (const screen of ['.', '.3']) {
      enter(screen)
      expect(said().at(-1)).toBe('in doubt: was it turned?')
    }
    enter('step 1')
    enter('2', 'the mark is where it was')
    expect(said()).toEqual(['A3', '90 deg', 'pass 3 of 3', '1 quarter turn'])
  })

  test('to be eased', () => {
    const { said } = benchIn('easing', '.1')
    expect(said()).toEqual(['A1', 'back off 180 deg', 'pass 1 of 2', '3 of 8 eased'])
  })
})

describe('the next thing', () => {
  test('what is put on, then what is fitted, with where it lies and the time that runs', () => {
    const { enter, said } = benchIn('goingOn', 'step 2', '')
    expect(said()).toEqual(['PUT ON', 'grey sealant on the pump face', 'together within 10 min'])
    enter('')
    expect(said()).toEqual(['1', 'on the bench', '× water pump', '10 min to go'])
    enter('')
    expect(said()).toEqual(['3', 'in bag 2', '× pump bolts M6x25 hex 8', '10 min to go'])
  })

  test('a matched piece: its position and its bag', () => {
    const { enter, said } = seen(
      jobWith(
        'begin caps off',
        'off cam caps I1..I4 into new bag',
        'mark cam cap I1: arrow to the chain',
        'end',
      ),
    )
    enter('take 1')
    expect(said()).toEqual(['I1', 'in bag 1', 'cam cap I1'])
    enter('', '', '', '')
    expect(said()).toEqual(['SEE', 'arrow to the chain', 'on cam cap I1'])
  })

  test('the end of a hose: its place on the machine alone, not as if that lay on the bench', () => {
    const { enter, said } = seen(
      jobWith('begin carburettor off, does not hide', 'off fuel hose: tank > rail', 'end'),
    )
    enter('take 1')
    expect(said()).toEqual(['tank', 'fuel hose end at tank', 'on the bench'])
  })

  test('is the same where the job stands and on the page of what goes back', () => {
    const { enter, said } = benchIn('goingOn', 'step 2', '', '')
    const next = said()
    for (const screen of ['.', '.3']) {
      enter(screen)
      expect(said()).toEqual(next.slice(0, 3))
    }
  })

  test('a step that cannot start says so, and the first reason', () => {
    const { said } = benchIn('waiting', 'step 1')
    expect(said().slice(0, 3)).toEqual(['STEP 1', '! BLOCKED', 'head off'])
    expect(said()[3]).toMatch(/^Cylinder head not checked/)
  })
})

describe('a label', () => {
  test('its code in full on 80 columns as soon as the bag is open', () => {
    const { enter, type, said, frame } = seen(jobWith('begin cover off'))
    enter('.1')
    type('*')
    enter('bag')
    expect(said()).toEqual(['001 0001 68', 'bag 1', 'write this on it'])
    expect(frame()).toContain(drawn('001 0001', '68'))
    enter('4 cover bolts')
    expect(said()).toEqual(['001 0001 68', 'bag 1', 'in hand'])
  })

  test('scanned in large mode: the verdict as large, with its sign and what it means', () => {
    const { enter, type, said, frame } = benchIn('allOff', 'take 4')
    type('*')
    enter(labelCode(1, 2))
    expect(said()).toEqual(['OTHER STEP', 'X OTHER STEP', 'bag 2', 'belongs to step 2'])
    expect(frame()).toContain(drawn('OTHER', 'STEP'))
    expect(frame()).toContain('Enter back')
    enter(labelCode(1, 6))
    expect(said()).toEqual(['FITS NOW', '✓ FITS NOW', 'bag 6', 'for step 4, sump plate'])
  })

  test('scanned in small letters: the verdict in five rows, its sign and word in the title', () => {
    const { enter, frame } = benchIn('waiting', 'move p9 to new bag', 'scan 3')
    expect(frame()).toContain(drawn('NOT COMPARED'))
    expect(frame()).toContain('! NOT COMPARED')
    enter(labelCode(1, 1))
    expect(frame()).toContain(drawn('NOT CHECKED'))
  })
})

describe('the end', () => {
  test('what is left over, then each gate by its number', () => {
    expect(benchIn('waiting', '.4').said()).toEqual(['19 LEFT', 'before the first start'])
    const { enter, said } = benchIn('home', '.4')
    expect(said()).toEqual(['CLEAR', '✓ CLEAR', '1 and Enter: clear it for the first start'])
    enter('1')
    expect(said().at(-1)).toBe('2 and Enter: the machine was started')
  })

  test('what one search found; of several the list', () => {
    const { enter, desk, said } = benchIn('allOff', '.2', 'plate screws')
    expect(said()).toEqual(['bag 6', '6 × plate screws M5x12 hex 8'])
    enter('bolts')
    expect(desk.page().large).toBeNull()
  })

  test('a count that does not agree says by how much', () => {
    const { said } = benchIn('allOff', 'scan 6', '2', '5', '0')
    expect(said()).toEqual(['1 short', 'X DOES NOT AGREE', 'bag 6'])
  })
})

/** A head with its bolts on, in the step in which they are tightened. */
function bench(passes: string, ...more: string[]) {
  const made = jobWith(
    'begin head off, does not hide',
    'off 4 M10x120 E14 head bolts into new bag',
    'end',
    'take 1',
    'fit head bolts',
    `tighten head bolts: ${passes}`,
    ...more,
  )
  made.enter('step 1')
  return seen(made)
}

function benchIn(job: ScreenJob, ...lines: string[]) {
  const made = screens(shelfIn(homeWith(job).home))
  made.enter(...lines)
  return seen(made)
}

/** With the large letters and each part under them, and the rows on 80 by 24. */
function seen<Bench extends ReturnType<typeof screens>>(made: Bench) {
  const { desk } = made
  return {
    ...made,
    said: () => {
      const { large } = desk.page()
      return large ? [large.letters, ...large.under.map((part) => textOf(part).trim())] : []
    },
    frame: () => textIn(frameRows(desk, { width: 80, height: 24 }).rows.map(textOf)),
  }
}

/** Texts as they stand under each other in letters of five rows, however far they are set in. */
function drawn(...texts: string[]): string {
  return textIn(bigLetters(texts, 75, 5 * texts.length + texts.length - 1) ?? [])
}

function textIn(rows: readonly string[]): string {
  return rows.map((row) => row.trim()).join('\n')
}
