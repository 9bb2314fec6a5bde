import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type Measured,
  misplacedMark,
  type Rotation,
  runOnSide,
  type Side,
  sideOfMark,
} from '../../../src/trade/timing/misplaced-mark.ts'
import { type Stage, toothAngles } from '../../../src/trade/timing/teeth.ts'

function angles(...stages: Stage[]) {
  const result = toothAngles(stages)
  if (result.code !== 'tooth-angles') throw new Error(result.code)
  return result.stages
}

const drive = angles({ driver: 24, driven: 48 })
const twoStages = angles({ driver: 24, driven: 36 }, { driver: 30, driven: 40 })

describe('how far a mark is off', () => {
  // Of 24 and 48 teeth one tooth is 15 degrees of the crank: geometry.
  test.each<[string, Measured, number, 'forward' | 'back']>([
    ['1 tooth late', { by: 'teeth', teeth: 1, side: 'late', at: 'cam' }, 1, 'forward'],
    ['2 teeth early', { by: 'teeth', teeth: 2, side: 'early', at: 'crank' }, 2, 'back'],
    ['15 degrees late', { by: 'degrees', degrees: 15, side: 'late', at: 'crank' }, 1, 'forward'],
    ['22.5 cam degrees early', { by: 'degrees', degrees: 22.5, side: 'early', at: 'cam' }, 3, 'back'],
    ['16 pins for 15', { by: 'count', wanted: 15, found: 16, run: 'tight', at: 'cam' }, 1, 'forward'],
    ['13 pins for 15', { by: 'count', wanted: 15, found: 13, run: 'tight', at: 'cam' }, 2, 'back'],
    ['16 slack for 15', { by: 'count', wanted: 15, found: 16, run: 'slack', at: 'cam' }, 1, 'back'],
    ['13 slack for 15', { by: 'count', wanted: 15, found: 13, run: 'slack', at: 'cam' }, 2, 'forward'],
  ])('%s', (_, measured, teeth, move) => {
    expect(misplacedMark(drive, measured)).toEqual({
      code: 'misplaced',
      side: move === 'forward' ? 'late' : 'early',
      crankDegrees: expect.closeTo(teeth * 15, 9),
      camDegrees: expect.closeTo(teeth * 7.5, 9),
      move,
      stages: [{ ...drive[0], teeth: expect.closeTo(teeth, 9), whole: teeth, verdict: 'whole' }],
    })
  })

  test.each([
    [3, 'under-one', 0],
    [3.75, 'under-one', 0],
    [3.76, 'between', 0],
    [7.5, 'between', 0],
    [11.24, 'between', 0],
    [11.25, 'whole', 1],
    [17, 'whole', 1],
    [18.75, 'whole', 1],
    [22.5, 'between', 1],
    [29, 'whole', 2],
  ])('%d degrees of the crank: %s, %d whole', (degrees, verdict, whole) => {
    expect(misplacedMark(drive, { by: 'degrees', degrees, side: 'late', at: 'crank' })).toMatchObject({
      stages: [{ verdict, whole }],
    })
  })

  test('which of two stages it can be', () => {
    const off = (degrees: number) =>
      misplacedMark(twoStages, { by: 'degrees', degrees, side: 'early', at: 'crank' })
    expect(off(15)).toMatchObject({
      stages: [
        { verdict: 'whole', whole: 1 },
        { verdict: 'whole', whole: 1 },
      ],
    })
    expect(off(54)).toMatchObject({ stages: [{ verdict: 'between' }, { verdict: 'whole', whole: 3 }] })
    expect(off(30)).toMatchObject({ stages: [{ verdict: 'whole', whole: 2 }, { verdict: 'between' }] })
  })

  test('teeth are counted at one of two stages', () => {
    const one = (at: 'crank' | 'cam') => misplacedMark(twoStages, { by: 'teeth', teeth: 1, side: 'late', at })
    expect(one('crank')).toMatchObject({ crankDegrees: 15, stages: [{ driver: 24 }] })
    expect(one('cam')).toMatchObject({ crankDegrees: 18, stages: [{ driver: 30 }] })
  })

  test.each<[string, Measured]>([
    ['no degrees', { by: 'degrees', degrees: 0, side: 'late', at: 'crank' }],
    ['no teeth', { by: 'teeth', teeth: 0, side: 'early', at: 'cam' }],
    ['as many as wanted', { by: 'count', wanted: 15, found: 15, run: 'slack', at: 'cam' }],
  ])('in time: %s', (_, measured) => {
    expect(misplacedMark(drive, measured)).toEqual({ code: 'in-time' })
  })

  test.each<[string, Measured]>([
    ['half a turn of the cam', { by: 'degrees', degrees: 180, side: 'early', at: 'cam' }],
    ['nearly', { by: 'degrees', degrees: 357, side: 'late', at: 'crank' }],
    ['all teeth of the crank', { by: 'teeth', teeth: 24, side: 'late', at: 'cam' }],
  ])('the other stroke: %s', (_, measured) => {
    expect(misplacedMark(drive, measured)).toEqual({ code: 'other-stroke' })
  })

  test('more than a turn of the crank', () => {
    expect(misplacedMark(drive, { by: 'degrees', degrees: 400, side: 'late', at: 'crank' })).toEqual({
      code: 'too-far',
      crankDegrees: 400,
    })
  })

  test.each<[Measured, number]>([
    [{ by: 'degrees', degrees: -15, side: 'late', at: 'crank' }, -15],
    [
      { by: 'degrees', degrees: Number.POSITIVE_INFINITY, side: 'late', at: 'crank' },
      Number.POSITIVE_INFINITY,
    ],
    [{ by: 'teeth', teeth: 0.5, side: 'late', at: 'cam' }, 0.5],
    [{ by: 'count', wanted: 15, found: -1, run: 'tight', at: 'cam' }, -1],
  ])('no amount: %j', (measured, amount) => {
    expect(misplacedMark(drive, measured)).toEqual({ code: 'amount', amount })
  })
})

describe('which way', () => {
  test.each([
    ['cam', 'clockwise', 'clockwise', 'early'],
    ['cam', 'anticlockwise', 'clockwise', 'late'],
    ['cam', 'anticlockwise', 'anticlockwise', 'early'],
    ['cam', 'clockwise', 'anticlockwise', 'late'],
    ['crank', 'clockwise', 'clockwise', 'late'],
    ['crank', 'anticlockwise', 'clockwise', 'early'],
    ['crank', 'anticlockwise', 'anticlockwise', 'late'],
    ['crank', 'clockwise', 'anticlockwise', 'early'],
  ] as const)('a mark of the %s that stands %s, the engine runs %s: %s', (at, stands, runs, side) => {
    expect(sideOfMark(at, stands, runs)).toBe(side)
  })

  // The velocity at the right of a wheel that turns clockwise points down, from the cam to the crank below it.
  test.each([
    ['right', 'clockwise', 'tight'],
    ['left', 'clockwise', 'slack'],
    ['right', 'anticlockwise', 'slack'],
    ['left', 'anticlockwise', 'tight'],
  ] as const)('the %s run, the engine runs %s: %s', (seen, runs, run) => {
    expect(runOnSide(seen, runs)).toBe(run)
  })
})

describe('beside a chain that is laid over its sprockets', () => {
  test('however it is measured, the answer brings the mark back', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 8, max: 60 }),
        fc.integer({ min: -7, max: 7 }),
        fc.constantFrom<Rotation>('clockwise', 'anticlockwise'),
        (teeth, ahead, runs) => {
          const laid = layChain({ crank: teeth, camAhead: ahead })
          const measured: Measured[] = [
            { by: 'count', wanted: laid.wanted.tight, found: laid.found.tight, run: 'tight', at: 'cam' },
            { by: 'count', wanted: laid.wanted.slack, found: laid.found.slack, run: 'slack', at: 'cam' },
            { by: 'degrees', at: 'cam', ...seen('cam', laid.camDegrees, runs) },
            { by: 'degrees', at: 'crank', ...seen('crank', laid.crankDegreesWithCamOnMark, runs) },
          ]
          for (const each of measured) {
            const found = misplacedMark(angles({ driver: teeth, driven: 2 * teeth }), each)
            if (found.code !== 'misplaced') {
              expect([ahead, found.code]).toEqual([0, 'in-time'])
              continue
            }
            const whole = found.stages[0]?.whole ?? 0
            expect(ahead + (found.move === 'forward' ? whole : -whole)).toBe(0)
          }
        },
      ),
    )
  })
})

/**
 * A chain as pins on a closed path, numbered the way they travel: the mark of the cam belongs at 0, that of the crank at
 * `crankAt`, and the tight run lies between them. The crank is on its mark, the cam's marked tooth `camAhead` pins
 * further than it belongs. Counted pin by pin, and turned tooth by tooth.
 */
function layChain({ crank, camAhead }: { crank: number; camAhead: number }) {
  const crankAt = 40
  const pins = crankAt + 3 * crank
  const walk = (from: number, to: number) => {
    let at = (from + pins) % pins
    let count = 0
    while (at !== to) {
      at = (at + 1) % pins
      count++
    }
    return count
  }
  const camAt = (camAhead + pins) % pins
  let teethTurned = 0
  while (camAhead + teethTurned !== 0) teethTurned += camAhead > 0 ? -1 : 1
  return {
    wanted: { tight: walk(0, crankAt), slack: walk(crankAt, 0) },
    found: { tight: walk(camAt, crankAt), slack: walk(crankAt, camAt) },
    camDegrees: (camAhead * 360) / (2 * crank),
    crankDegreesWithCamOnMark: (teethTurned * 360) / crank,
  }
}

/** As a person sees it who looks at the drive: by how much, and early or late by the side to which it stands. */
function seen(at: 'cam' | 'crank', degreesAhead: number, runs: Rotation): { degrees: number; side: Side } {
  const other = runs === 'clockwise' ? 'anticlockwise' : 'clockwise'
  const stands = degreesAhead >= 0 ? runs : other
  return { degrees: Math.abs(degreesAhead), side: sideOfMark(at, stands, runs) }
}
