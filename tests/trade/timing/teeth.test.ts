import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readTeeth } from '../../../src/trade/timing/read-teeth.ts'
import { toothAngles } from '../../../src/trade/timing/teeth.ts'

function stages(text: string) {
  const reading = readTeeth(text)
  if (!reading.understood) throw new Error(`no teeth: ${text}`)
  return reading.value
}

describe('what one tooth is worth', () => {
  // 360 / z, and the four-stroke's two turns of the crank for one of the cam: geometry, worked by hand.
  test.each([
    ['17/34', 21.18, 10.59],
    ['18/36', 20, 10],
    ['20/40', 18, 9],
    ['21/42', 17.143, 8.571],
    ['22/44', 16.364, 8.182],
    ['24/48', 15, 7.5],
  ])('%s: %d degrees of the crank, %d of the cam', (teeth, crank, cam) => {
    const result = toothAngles(stages(teeth))
    expect(result).toMatchObject({
      code: 'tooth-angles',
      stages: [{ crankDegrees: expect.closeTo(crank, 2), camDegrees: expect.closeTo(cam, 2) }],
    })
  })

  // Through an intermediate shaft of 36 and 30 teeth: 24/36 x 30/40 is 1/2. A tooth at the 40 is 9 degrees of the cam.
  test('through an intermediate shaft', () => {
    expect(toothAngles(stages('24/36 30/40'))).toEqual({
      code: 'tooth-angles',
      stages: [
        { driver: 24, driven: 36, crankDegrees: 15, camDegrees: 7.5 },
        { driver: 30, driven: 40, crankDegrees: 18, camDegrees: 9 },
      ],
    })
  })

  test.each([
    ['24/46', { code: 'not-two-to-one', turnsOfCrank: 46 / 24, driven: 48 }],
    ['24/24', { code: 'not-two-to-one', turnsOfCrank: 1, driven: 48 }],
    ['48/24', { code: 'swapped' }],
    ['20/30 24/36', { code: 'not-two-to-one', turnsOfCrank: 2.25, driven: 32 }],
    ['21/40 20/30', { code: 'not-two-to-one', turnsOfCrank: 40 / 14, driven: 21 }],
    ['20/35 25/30', { code: 'not-two-to-one', turnsOfCrank: 2.1, driven: null }],
    ['5/10', { code: 'teeth', teeth: 5 }],
    ['0/48', { code: 'teeth', teeth: 0 }],
    ['200/400', { code: 'teeth', teeth: 400 }],
    ['20/25 20/25 20/25', { code: 'too-many-stages', most: 2 }],
  ])('%s drives no cam of a four-stroke engine', (teeth, fault) => {
    expect(toothAngles(stages(teeth))).toEqual(fault)
  })

  test('half a tooth is none', () => {
    expect(toothAngles([{ driver: 24.5, driven: 49 }])).toEqual({ code: 'teeth', teeth: 24.5 })
    expect(toothAngles([])).toEqual({ code: 'no-stages' })
  })

  test('all teeth of a sprocket are one turn of its shaft, in either stage', () => {
    const teeth = fc.integer({ min: 6, max: 60 })
    fc.assert(
      fc.property(teeth, teeth, (crank, between) => {
        const result = toothAngles([
          { driver: crank, driven: between },
          { driver: between, driven: 2 * crank },
        ])
        if (result.code !== 'tooth-angles') throw new Error(result.code)
        const [first, second] = result.stages
        expect((first?.crankDegrees ?? 0) * crank).toBeCloseTo(360, 9)
        expect((second?.camDegrees ?? 0) * 2 * crank).toBeCloseTo(360, 9)
        // The intermediate shaft turns crank/between as fast as the crank.
        expect((second?.crankDegrees ?? 0) * between).toBeCloseTo((360 * between) / crank, 9)
      }),
    )
  })
})
