import { expect, test } from 'vitest'
import { workOutTiming } from '../../../src/trade/timing/work-out.ts'

const drive = [{ driver: 24, driven: 48 }]

test('teeth alone', () => {
  expect(workOutTiming({ stages: drive, off: null, pins: null })).toMatchObject({
    angles: { code: 'tooth-angles', stages: [{ crankDegrees: 15 }] },
    misplaced: null,
    turnsUntilMarksMeet: null,
  })
})

test('a mark that is off, and the marked links of its chain', () => {
  const off = { measured: { by: 'teeth', teeth: 1, side: 'late', at: 'cam' } as const }
  expect(workOutTiming({ stages: drive, off, pins: 126 })).toMatchObject({
    misplaced: { code: 'misplaced', crankDegrees: 15 },
    turnsUntilMarksMeet: 42,
  })
})

test('nothing is said of a mark where the teeth drive no cam', () => {
  const off = { measured: { by: 'teeth', teeth: 1, side: 'late', at: 'cam' } as const }
  expect(workOutTiming({ stages: [{ driver: 24, driven: 47 }], off, pins: 126 })).toMatchObject({
    angles: { code: 'not-two-to-one' },
    misplaced: null,
    turnsUntilMarksMeet: null,
  })
})
