import { describe, expect, test } from 'vitest'
import { worked } from './worked.ts'

const under = 'Worked out, not a specification: the service manual decides.'

test.each([
  [
    'preload M8 8.8 25 Nm friction 0.10..0.16',
    [
      '25 N·m on M8x1.25 clamps with 15 to 22.4 kN, 70 to 105 % of proof.',
      'No pitch was said: M8 is taken with its coarse one.',
      'Friction 0.10 to 0.16, as you gave it.',
      '25 N·m / (0.209 × 8 mm) = 15 kN with friction 0.16',
      '25 N·m / (0.14 × 8 mm) = 22.4 kN with friction 0.10',
      '8.8: proof load 36.6 mm² × 580 MPa = 21.2 kN: 70 to 105 %',
      'With the least friction past what 8.8 bears: dry or oiled decides.',
      under,
    ],
  ],
  [
    'preload 3/8-16 grade 5 30 lbf·ft dry',
    [
      '30 lbf·ft on 3/8-16 clamps with 14.1 to 22.8 kN, 48 to 78 % of proof.',
      'That is 3170 to 5130 lbf.',
      'Friction 0.14 to 0.24, common for dry steel threads.',
      '40.67 N·m / (0.303 × 9.525 mm) = 14.1 kN with friction 0.24',
      '40.67 N·m / (0.187 × 9.525 mm) = 22.8 kN with friction 0.14',
      'grade 5: proof load 50 mm² × 586 MPa = 29.3 kN: 48 to 78 %',
      under,
    ],
  ],
  [
    'preload M6x1 8.8 85 ft-lb friction 0.12',
    [
      '85 lbf·ft on M6x1 clamps with 117 kN, 1003 % of proof.',
      'Friction 0.12, as you gave it.',
      '115.2 N·m / (0.164 × 6 mm) = 117 kN with friction 0.12',
      '8.8: proof load 20.1 mm² × 580 MPa = 11.7 kN: 1003 %',
      'With the most friction, even so past what 8.8 bears: look at the unit.',
      'A slip of the unit? 85 lbf·in (9.6 N·m) or 85 kgf·cm (8.34 N·m) would be usual.',
      under,
    ],
  ],
  ['preload 1/4 NPT 20 Nm', ['1/4 NPT seals on its taper: its torque makes no preload.']],
  ['preload M15 20 Nm', ['M15 has no coarse pitch: write its pitch behind it.']],
])('%s', (line, rows) => expect(worked(line)).toEqual(rows))

describe('what was not said', () => {
  test('is said to be missing, and what is taken in its place is common practice', () => {
    const rows = worked('preload M8 25 Nm')
    expect(rows).toContain('Friction 0.08 to 0.24, oiled to dry, common practice: say dry or oiled.')
    expect(rows).toContain('No class was said; against the common ones:')
    expect(rows.filter((row) => row.includes('proof load')).map((row) => row.split(':')[0])).toEqual([
      '8.8',
      '10.9',
      '12.9',
    ])
  })

  test('a size that the standard leaves out has no proof load', () => {
    expect(worked('preload M42 9.8 300 Nm')).toContain(
      '9.8 says nothing of M42: no proof load to compare with.',
    )
  })

  test('hardly any preload is looked at too', () => {
    expect(worked('preload M12 2 Nm')).toContain('Hardly any of what it bears: look at the unit.')
  })
})

test.each(['preload M8 25 Nm', 'preload 3/8-16 grade 5 30 lbf·ft', 'preload M8x1 10.9 25 Nm dry'])(
  '%s is read without turning the head: at most 80 columns',
  (line) => expect(Math.max(...worked(line).map((row) => row.length))).toBeLessThanOrEqual(80),
)
