import { expect, test } from 'vitest'
import { worked } from './worked.ts'

test('the worked example of a textbook, with its arithmetic', () => {
  expect(worked('stretch 10000 lbf over 5 in area 0.46 in2 modulus 30e6 psi')).toEqual([
    '10000 lbf over 5 in of 0.46 in2 stretches it by 0.09203 mm (0.003623 in).',
    '44.482 kN × 127 mm / (206.8 kN/mm² × 296.8 mm²) = 0.09203 mm',
    'It holds while the bolt is elastic: not for one tightened to yield.',
    'Worked out, not a specification: the service manual decides.',
  ])
})

test('of a thread, of steel', () => {
  expect(worked('stretch 20 kN over 90 mm M10')).toEqual([
    '20 kN over 90 mm of M10 stretches it by 0.1514 mm (0.005961 in).',
    '20 kN × 90 mm / (205 kN/mm² × 57.99 mm²) = 0.1514 mm',
    '57.99 mm² is the stress area of its thread; a shank that is thicker stretches less.',
    '205 kN/mm²: steel, common practice. Write modulus and its value for another.',
    'It holds while the bolt is elastic: not for one tightened to yield.',
    'Worked out, not a specification: the service manual decides.',
  ])
})
