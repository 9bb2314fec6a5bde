import { describe, expect, test } from 'vitest'
import { Gates } from '../../src/plan/gates.ts'
import { reasonText } from '../../src/words/reasons.ts'
import { codesOf } from './codes.ts'
import { play } from './play.ts'
import { type ReasonCase, reasonCases, type UnreachableReason } from './reasons.ts'

const rows = Object.entries(reasonCases).flatMap(([code, cases]) =>
  cases.map((each: ReasonCase | UnreachableReason) => [code, each.says.at(0) ?? '', each] as const),
)

describe('every reason that a gate gives, in words', () => {
  test('the catalogue has each code once, and no other', () => {
    expect(Object.keys(reasonCases).sort()).toEqual(
      [
        ...codesOf('src/plan/reasons.ts', 'Reason'),
        ...codesOf('src/plan/judging/judging.ts', 'JudgingReason'),
        ...codesOf('src/plan/waiting/waiting-reasons.ts', 'WaitingReason'),
      ].sort(),
    )
  })

  test.each(rows)('%s: %s', (code, _says, known) => {
    const { state } = play(known.given)
    const reasons = 'reason' in known ? [known.reason] : new Gates(state)[known.gate](known.step)
    expect(reasons.map((reason) => reason.code)).toContain(code)
    expect(reasons.map((reason) => reasonText(state, reason))).toEqual(known.says)
  })
})
