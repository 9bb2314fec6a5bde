import { describe, expect, test } from 'vitest'
import type { RefusalCode } from '../../src/journal/refusal.ts'
import type { Violation } from '../../src/ledger/laws.ts'
import type { Cases } from './case.ts'
import { codesOf } from './codes.ts'
import { play, refused, says } from './play.ts'
import { consumableCases } from './refusals/consumables.ts'
import { containerCases } from './refusals/containers.ts'
import { countCases } from './refusals/count.ts'
import { jobCases } from './refusals/job.ts'
import { judgingCases } from './refusals/judging.ts'
import { lawCases } from './refusals/laws.ts'
import { measuringCases } from './refusals/measuring.ts'
import { orderCases } from './refusals/orders.ts'
import { outingCases, stillRefused } from './refusals/outings.ts'
import { pictureCases } from './refusals/pictures.ts'
import { pieceCases } from './refusals/pieces.ts'
import { positionCases } from './refusals/positions.ts'
import { refusedHere, replacingCases } from './refusals/replacing.ts'
import { secondLookCases } from './refusals/second-looks.ts'
import { stepCases } from './refusals/steps.ts'
import { tighteningCases } from './refusals/tightening.ts'

const byCode = {
  ...jobCases,
  ...containerCases,
  ...pictureCases,
  ...pieceCases,
  ...stepCases,
  ...tighteningCases,
  ...positionCases,
  ...measuringCases,
  ...judgingCases,
  ...replacingCases,
  ...countCases,
  ...orderCases,
  ...outingCases,
  ...consumableCases,
  ...secondLookCases,
} satisfies Record<Exclude<RefusalCode, 'law'>, Cases>

const byLaw = lawCases satisfies Record<Violation['law'], Cases>

describe('every refusal, from the command that meets it to the words', () => {
  test('the catalogue has each code once, and no other', () => {
    expect(Object.keys(byCode).concat('law').sort()).toEqual(codesOf('src/journal/refusal.ts', 'Refusal'))
  })

  test.each(rows(byCode))('%s: %s', (code, _story, known) => {
    const { state } = play(known.given, 'and' in known ? known.and : undefined)
    const refusal = 'when' in known ? refused(state, known.when) : known.refusal
    expect(refusal.code).toBe(code)
    expect(says(state, refusal)).toEqual(known.says)
  })
})

test.each(stillRefused)('what is on the machine does not go out: $says.0', ({ given, when, says: words }) => {
  const { state } = play(given)
  expect(says(state, refused(state, when))).toEqual(words)
})

test.each(refusedHere)('of an old piece and a new one: $says.0', ({ given, when, says: words }) => {
  const { state } = play(given)
  expect(says(state, refused(state, when))).toEqual(words)
})

describe('every law of the ledger, from the command that would break it to the words', () => {
  test('the catalogue has each law once, and no other', () => {
    expect(Object.keys(byLaw).sort()).toEqual(codesOf('src/ledger/laws.ts', 'Violation', 'law'))
  })

  test.each(rows(byLaw))('%s: %s', (law, _story, known) => {
    const { state } = play(known.given, 'and' in known ? known.and : undefined)
    const refusal = 'when' in known ? refused(state, known.when) : known.refusal
    expect(refusal).toMatchObject({ code: 'law', violation: { law } })
    expect(says(state, refusal)).toEqual(known.says)
  })
})

function rows(cases: Record<string, Cases>) {
  return Object.entries(cases).flatMap(([code, stories]) =>
    stories.map((story) => [code, story.says[0] ?? '', story] as const),
  )
}
