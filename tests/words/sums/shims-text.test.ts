import { describe, expect, test } from 'vitest'
import { readLine } from '../../../src/lines/read-line.ts'
import { workOut } from '../../../src/session/work-out.ts'
import { sumText } from '../../../src/words/sum-text.ts'
import { told } from '../../lines/told.ts'
import { worked } from './worked.ts'

const found = 'E1 0.26, E2 0.21, E3 0.31, E4 0.28 wanted E 0.22..0.28'

describe('which shim goes where, in words', () => {
  test('with the lines that record it', () => {
    const state = told(
      'begin buckets and shims out',
      'off shims E1..E4 into bench',
      'size shims: E1 2.50, E2 2.50, E3 2.50, E4 2.475',
    )
    const reading = readLine(`shims ${found} for sale 2.30..3.00 step 0.025`, state)
    if (reading.kind !== 'ask' || reading.ask.ask !== 'sum') throw new Error(JSON.stringify(reading))
    expect(sumText(state, workOut(state, reading.ask.sum))).toEqual([
      '2 of 4 out of range: 3 valves to touch, buy 1 × 2.55.',
      '',
      '  valve  found       fitted  wanted      take           will be',
      '  E1     0.26        2.50    0.22..0.28  keep           0.26',
      '  E2     0.21 tight  2.50    0.22..0.28  2.475 from E4  0.235',
      '  E3     0.31 wide   2.50    0.22..0.28  2.55 new       0.26',
      '  E4     0.28        2.475   0.22..0.28  2.50 from E2   0.255',
      '',
      'Needed = fitted + found - middle of what is wanted:',
      '  E2: 2.50 + 0.21 - 0.25 = 2.46; 2.43 to 2.49 will do',
      '  E3: 2.50 + 0.31 - 0.25 = 2.56; 2.53 to 2.59 will do',
      '  E4: 2.475 + 0.28 - 0.25 = 2.505; 2.475 to 2.535 will do',
      '',
      'E2 and E4 exchange their shims.',
      'E3 takes a new 2.55.',
      'The 2.50 out of E3 is left over.',
      '',
      'To record it, write:',
      '  swap shims E2 E4 because 2.475 gives E2 0.235 mm and 2.50 gives E4 0.255 mm',
      '  new shim E3 size 2.55',
      '  spare p3 because another size takes its place',
      '',
      'Worked out, not a specification: the service manual decides.',
      'Measure again when it is done.',
    ])
  })

  test('where nothing is to be done', () => {
    expect(worked('shims I1 0.14 2.45, I2 0.15 2.40 wanted 0.13..0.17')).toEqual([
      'All 2 within their range: no shim moves.',
      '',
      '  valve  found  fitted  wanted      take  will be',
      '  I1     0.14   2.45    0.13..0.17  keep  0.14',
      '  I2     0.15   2.40    0.13..0.17  keep  0.15',
      '',
      'Worked out, not a specification: the service manual decides.',
    ])
  })

  test('where there is none, why, and what would come nearest', () => {
    const rows = worked(
      'shims I1 0 2.50, I2 0.30 3.30, I3 0.06 2.50, I4 0.27 2.55 wanted 0.18..0.22 for sale 2.50..3.30 step 0.4',
    )
    expect(rows[0]).toBe('4 of 4 out of range: no shim moves; no shim for I1, I2, I3 and I4.')
    expect(rows.filter((row) => /^I\d/.test(row))).toEqual([
      'I1 has no clearance, so what it needs is not known: fit a thinner shim and measure again.',
      // 3.30 + 0.30 - 0.20 = 3.40, above the thickest.
      'I2 needs 3.38 to 3.42, thicker than any to be had: 3.30 would leave 0.30.',
      'I3 needs 2.34 to 2.38, thinner than any to be had: 2.50 would leave 0.06.',
      'I4 needs 2.60 to 2.64, between two sizes to be had: 2.55 would leave 0.27.',
    ])
    expect(rows.some((row) => row.startsWith('  I1     0.00 tight'))).toBe(true)
  })

  test('what would do is needed elsewhere', () => {
    expect(worked('shims A1 0.2 2.40, A2 0.2 2.40 wanted 0.08..0.12 bench 2.50')).toContainEqual(
      expect.stringMatching(
        /^A[12] needs 2\.48 to 2\.52, and what would do is needed at other valves: 2\.50 would leave 0\.10\.$/,
      ),
    )
  })

  test('a circle, a chain, the bench, and one that waits', () => {
    const workOf = (line: string) => worked(line).filter((row) => /takes|waits|exchange/.test(row))
    expect(workOf('shims 1 0.2 2.4, 2 0.2 2.5, 3 0.05 2.6 wanted 1 2 0.08..0.12 3 0.2..0.3')).toEqual([
      '1, 2 and 3: each takes the shim of the next, 3 that of 1.',
    ])
    expect(workOf('shims A1 0.2 2.4, A2 0.2 2.5 wanted 0.08..0.12 bench 2.6')).toEqual([
      'A1 takes the shim of A2, A2 takes the 2.60 from the bench.',
    ])
    expect(workOf('shims A1 0.2 2.4, A2 0.2 2.5 wanted 0.08..0.12')).toEqual([
      'A1 takes the shim of A2, A2 waits for one.',
    ])
  })

  test('a size that is not for sale is asked about', () => {
    expect(worked('shims I1 0.15 2.46 wanted 0.13..0.17 for sale 2.40..2.50 step 0.05 bench 2.55')).toEqual(
      expect.arrayContaining([
        '2.46 at I1 is not in the list for sale (next: 2.45 and 2.50): worn, or read wrongly?',
        '2.55 on the bench is not in the list for sale (next: 2.50): worn, or read wrongly?',
      ]),
    )
  })

  test('inches stay inches', () => {
    const rows = worked('shims E2 0.013 0.100 wanted 0.008..0.011 for sale 0.090..0.110 step 0.001 in inches')
    expect(rows[0]).toBe('1 of 1 out of range: 1 valve to touch, buy 1 × 0.103.')
    expect(rows).toContain('  E2: 0.100 + 0.013 - 0.0095 = 0.1035; 0.102 to 0.105 will do')
  })

  test('shims that are on the machine come off first', () => {
    const state = told(
      'begin shims out',
      'off shims E1..E4 into bench',
      'size shims: E1 2.50, E2 2.50, E3 2.50, E4 2.475',
      'end',
      'take 1',
      'fit shim E2',
    )
    const reading = readLine(`shims ${found} for sale 2.55`, state)
    if (reading.kind !== 'ask' || reading.ask.ask !== 'sum') throw new Error(JSON.stringify(reading))
    expect(sumText(state, workOut(state, reading.ask.sum))).toContain(
      'To record it, once the shims are off again, write:',
    )
  })

  test('rows of sixteen valves fit a terminal of 80 columns', () => {
    const valves = Array.from({ length: 16 }, (_, at) => `E${at + 1} 0.31 2.50`).join(', ')
    for (const row of worked(`shims ${valves} wanted 0.22..0.28 for sale 2.30..3.00 step 0.025`)) {
      expect(row.length).toBeLessThanOrEqual(80)
    }
  })
})
