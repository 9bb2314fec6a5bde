import { describe, expect, test } from 'vitest'
import { Gates } from '../../src/plan/gates.ts'
import { leftovers } from '../../src/plan/leftovers.ts'
import { leftoverText } from '../../src/words/leftovers.ts'
import { leftoverLines } from '../../src/words/told-leftovers.ts'
import { codesOf } from './codes.ts'
import { type LeftoverCase, leftoverCases, type UnreachableLeftover } from './leftovers.ts'
import { codeOf, play } from './play.ts'

const rows = Object.entries(leftoverCases).flatMap(([code, cases]) =>
  cases.map((each: LeftoverCase | UnreachableLeftover) => [code, each.says.at(0) ?? '', each] as const),
)

describe('everything that can be left over before the first start, in words', () => {
  test('the catalogue has each code once, and no other', () => {
    expect(Object.keys(leftoverCases).sort()).toEqual(
      [
        ...codesOf('src/plan/leftovers.ts', 'Leftover'),
        ...codesOf('src/plan/judging/judging.ts', 'JudgingReason'),
        ...codesOf('src/plan/waiting/waiting-reasons.ts', 'WaitingReason'),
      ].sort(),
    )
  })

  test.each(rows)('%s: %s', (code, _says, known) => {
    const { state } = play(known.given)
    const all = 'leftover' in known ? [known.leftover] : leftovers(new Gates(state))
    const told = all
      .filter((leftover) => leftover.code === code)
      .flatMap((leftover) => [
        ...leftoverLines(state, [leftover], codeOf(state)),
        `> ${leftoverText(state, leftover, codeOf(state)).cure}`,
      ])
    expect(told).toEqual(known.says)
  })
})
