import { describe, expect, test } from 'vitest'
import { readLine } from '../../../src/lines/read-line.ts'
import type { Misreading } from '../../../src/lines/reading.ts'
import { misreadingText } from '../../../src/words/misreadings.ts'
import { nothing } from '../../lines/told.ts'

type Fault = Extract<Misreading, { code: 'shims' }>['fault']

/** A line for each fault, what is said then, and what to write. */
const byFault = {
  valve: [
    'shims I1 tight 2.45',
    "'I1 tight 2.45' is no valve with its clearance and its shim.",
    'Write "shims I1 2.45 SHIM".',
  ],
  comma: [
    'shims I1 0,14,2,45',
    "'0,14,2,45' may be decimal commas or several numbers: write points.",
    'Perhaps "shims I1 0.14 2.45".',
  ],
  inches: [
    'shims I1 0.006 0.098',
    "'0.098' is too thin for millimetres: inches are said with their unit.",
    'Perhaps "shims I1 0.006 0.098 in".',
  ],
  'turned-round': [
    'shims I1 2.45 0.14',
    "'I1 2.45 0.14' has the shim where the clearance belongs.",
    'Perhaps "shims I1 0.14 2.45".',
  ],
  'too-large': ['shims I1 14 2.45', "'14' is no clearance of a valve.", 'Write "shims I1 CLEARANCE 2.45".'],
  code: [
    'shims I1 0.14 245 wanted 0.1..0.2',
    "'245' may be a number etched on the shim, but nothing else here says what it stands for.",
    'Perhaps "shims I1 0.14 2.45 wanted 0.1..0.2".',
  ],
  twice: [
    'shims I1 0.14 2.45, I1 0.15 2.40',
    "'I1 0.15 2.40' is there twice.",
    'Perhaps "shims I1 0.14 2.45".',
  ],
  'limit-missing': [
    'shims I1 0.14 2.45 wanted',
    'This is no range: both limits are needed, as the manual gives them.',
    'Write "shims I1 0.14 2.45 wanted LEAST..MOST".',
  ],
  limits: [
    'shims I1 0.14 2.45 wanted 0.17..0.13',
    "'0.17..0.13' has its least and its most the wrong way round.",
    'Perhaps "shims I1 0.14 2.45 wanted 0.13..0.17".',
  ],
  'step-missing': [
    'shims for sale 2.30..3.00',
    "'2.30..3.00' has no step: from what size to what size, and in which steps.",
    'Write "shims for sale 2.30..3.00 step STEP".',
  ],
  step: [
    'shims for sale 2.30..3.00 step 0.03',
    "'2.30..3.00 step 0.03' does not go up in whole steps.",
    'Perhaps "shims for sale 2.30..2.99 step 0.03".',
  ],
  size: ['shims bench thin', "'thin' is no size of a shim.", 'Write "shims bench SIZE".'],
  'too-many': [
    'shims for sale 2.3..3 step 0.0001',
    "'2.3..3 step 0.0001' is more than can be worked out at once.",
    'Write "shims for sale 2.3..3 step STEP".',
  ],
  'no-clearance': [
    'shims bench 2.40',
    'No valve clearance is said or in the record.',
    'Write "shims I1 CLEARANCE SHIM, I2 CLEARANCE SHIM wanted I LEAST..MOST".',
  ],
  'no-fitted': ['shims I1 0.14', 'No shim of a known size at I1.', 'Write "size shim I1 SIZE".'],
  'no-wanted': [
    'shims I1 0.14 2.45, E1 0.2 2.45',
    'No wanted range for I1, E1: the limits are in the manual.',
    'Write "shims I1 0.14 2.45, E1 0.2 2.45 wanted I LEAST..MOST E LEAST..MOST".',
  ],
} satisfies Record<Fault, [line: string, what: string, cure: string]>

describe('why a line about shims is not understood', () => {
  test.each(Object.entries(byFault))('%s: %s', (fault, [line, what, cure]) => {
    const reading = readLine(line, nothing)
    if (reading.kind !== 'misread') throw new Error(`it is understood: ${JSON.stringify(reading)}`)
    expect(reading.misreading).toMatchObject({ code: 'shims', fault })
    expect(misreadingText(nothing, reading.misreading)).toEqual({ what, cure, lines: [] })
  })

  test.each(Object.entries(byFault).filter(([fault]) => !['no-fitted', 'valve'].includes(fault)))(
    '%s: what is proposed is understood',
    (_, [, , cure]) => {
      const proposed = /"(.+)"/.exec(cure)?.[1] ?? ''
      const filled = proposed
        .replaceAll('LEAST', '0.13')
        .replaceAll('MOST', '0.17')
        .replaceAll('CLEARANCE', '0.14')
        .replaceAll('SHIM', '2.45')
        .replaceAll('SIZE', '2.45')
        .replaceAll('STEP', '0.05')
      const reading = readLine(filled, nothing)
      // A range, or all valves, may still be missing; the rest was understood.
      if (reading.kind === 'misread')
        expect(reading.misreading).toMatchObject({ fault: expect.stringMatching(/^no-/) })
      else expect(reading.kind).toBe('ask')
    },
  )
})
