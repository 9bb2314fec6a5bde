import { afterEach, describe, expect, test } from 'vitest'
import { buildWithSwitches } from './build-with-switches.ts'
import { type GateSwitch, OFF, withSwitches } from './gate-switch.ts'

const gate: GateSwitch = { gate: 'even', file: 'x.ts', find: 'n % 2 !== 0', becomes: 'false' }
const source = 'if (n % 2 !== 0) return "odd"; return "even"'

describe('a gate in a source', () => {
  afterEach(() => Reflect.deleteProperty(globalThis, OFF))

  test.each([
    { off: [], told: 'odd' },
    { off: ['another'], told: 'odd' },
    { off: ['even'], told: 'even' },
  ])('with $off off: $told', ({ off, told }) => {
    Object.assign(globalThis, { [OFF]: new Set(off) })
    expect(new Function('n', withSwitches(source, [gate]))(3)).toBe(told)
  })

  test('an expression that stands there more than once is told by what is around it', () => {
    const twice = 'const a = f(x); const b = f(x)'
    const within = 'b = f(x)'
    expect(withSwitches(twice, [{ ...gate, find: 'f(x)', within, becomes: '0' }])).toBe(
      `const a = f(x); const b = (globalThis.${OFF}.has("even") ? (0) : (f(x)))`,
    )
  })

  test.each([
    ['not there', { find: 'n % 3' }],
    ['there twice', { find: 'return' }],
    ['not in what is around it', { within: 'return "odd"' }],
    ['twice in what is around it', { find: 'e', within: 'return "even"' }],
  ])('%s, it is refused', (_, change) => {
    expect(() => withSwitches(source, [{ ...gate, ...change }])).toThrow(
      "'even' should stand in src/x.ts once",
    )
  })
})

describe('a program with switches', () => {
  const program = 'tests/simulation/gates-off/programs/run-without-gates.ts'

  test('is not built with a gate that is not in its place', async () => {
    await expect(buildWithSwitches(program, [{ ...gate, file: 'plan/gates.ts' }])).rejects.toThrow(
      "'even' should stand in src/plan/gates.ts once",
    )
  })

  test('nor with one in a file that it does not have', async () => {
    await expect(buildWithSwitches(program, [{ ...gate, file: 'plan/none.ts' }])).rejects.toThrow(
      'no part of the program',
    )
  })
})
