import { expect, test } from 'vitest'
import { torqueUnitIn } from '../../../src/trade/convert/torque-unit-in.ts'

test.each([
  ['22 Nm', 'N·m'],
  ['50 % of 30 lbf·ft', 'lbf·ft'],
  ['90 in-lb', 'lbf·in'],
  ['18 ft lb', 'lbf·ft'],
  ['18 lb ft clockwise', 'lbf·ft'],
  ['40 Nm (30 lbf·ft)', 'N·m'],
  ['37..43 kgf·cm', 'kgf·cm'],
  ['check 2.2 kgf·m', 'kgf·m'],
  ['handle 400 mm adapter 50 mm range 10..150 lbf·ft', 'lbf·ft'],
  ['handle 400 mm adapter 50 mm', undefined],
  ['90 deg', undefined],
  ['snug', undefined],
])('%s', (typed, name) => {
  expect(torqueUnitIn(typed)?.name).toBe(name)
})
