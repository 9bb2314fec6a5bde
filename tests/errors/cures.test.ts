import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { decide } from '../../src/journal/decide/decide.ts'
import type { State } from '../../src/journal/state.ts'
import { begin, job, off } from './commands.ts'
import { leftoverCases } from './leftovers.ts'
import { play } from './play.ts'
import { reasonCases } from './reasons.ts'
import { consumableCases } from './refusals/consumables.ts'
import { containerCases } from './refusals/containers.ts'
import { countCases } from './refusals/count.ts'
import { jobCases } from './refusals/job.ts'
import { judgingCases } from './refusals/judging.ts'
import { lawCases } from './refusals/laws.ts'
import { measuringCases } from './refusals/measuring.ts'
import { orderCases } from './refusals/orders.ts'
import { outingCases } from './refusals/outings.ts'
import { pictureCases } from './refusals/pictures.ts'
import { pieceCases } from './refusals/pieces.ts'
import { positionCases } from './refusals/positions.ts'
import { replacingCases } from './refusals/replacing.ts'
import { secondLookCases } from './refusals/second-looks.ts'
import { stepCases } from './refusals/steps.ts'
import { tighteningCases } from './refusals/tightening.ts'
import { quoted, readTyped } from './typed.ts'

const refusalCases = [
  jobCases,
  containerCases,
  pictureCases,
  pieceCases,
  stepCases,
  tighteningCases,
  positionCases,
  measuringCases,
  judgingCases,
  replacingCases,
  countCases,
  orderCases,
  outingCases,
  consumableCases,
  secondLookCases,
  lawCases,
].flatMap((catalogue): Told[] => Object.values(catalogue).flat())
const told = [
  ...refusalCases,
  ...[reasonCases, leftoverCases].flatMap((catalogue): Told[] => Object.values(catalogue).flat()),
]

interface Told {
  given: Command[]
  says: string[]
}

/** What can be lifted, and is not kept from happening anyway. */
const toLift = [...Object.values(reasonCases).flat(), ...Object.values(leftoverCases).flat()].filter(
  (known) => !('unreachable' in known),
)

describe('what a person is told', () => {
  test('to type is understood when it is typed, once the gaps are filled in', () => {
    const notUnderstood = told.flatMap(({ given, says }) => {
      const typed = quoted(says)
      if (typed.length === 0) return []
      const { state } = play(given)
      return typed.filter((words) => !isUnderstood(words, state))
    })
    expect(notUnderstood).toEqual([])
  })

  test('first to do about a reason or a leftover is accepted, or waits for what else is told', () => {
    const refusals = toLift.flatMap(({ given, says }) => {
      const { state } = play(given)
      const [first = ''] = quoted(says)
      // Only the user knows the place.
      if (first.includes('PLACE')) return []
      const reading = readTyped(first, state)
      const commands = reading.kind === 'commands' ? reading.commands : []
      return commands.flatMap((command) => {
        // A second look is somebody else's.
        const decision = decide(state, command, { ...state.clock, by: 'somebody else' })
        if (decision.ok || decision.refusal.code === 'step-blocked') return []
        return [`${first}: ${decision.refusal.code}: ${says[0]}`]
      })
    })
    expect(refusals).toEqual([])
  })

  test('of a refusal is its cause first, and its cure last', () => {
    for (const { says } of refusalCases) {
      expect(says[0]).toMatch(/^[^>\s].*\w.*\.$/)
      expect(says.at(-1)).toMatch(/^> .*\w.*\.$/)
    }
  })

  test('is in sentences without a gap, a shout or a control character', () => {
    for (const { says } of told) {
      expect(says.length).toBeGreaterThan(0)
      for (const line of says) {
        expect(line).toMatch(/^(?: {2}|> )?["A-Z0-9]|^(?: {2})?[a-z]\d+\b/)
        expect(line).toMatch(/\.$/)
        expect(line).not.toMatch(/undefined|null|NaN|\[object|!|\p{C}| {2}\S.* {2}|\.\.$(?<!\.\.\.)/u)
      }
    }
  })
})

const rich = [job, begin('Seat off'), off(8, 'seat bolts')]

function isUnderstood(words: string, state: State): boolean {
  return [state, play(rich).state].some((known) => isUnderstoodIn(words, known))
}

function isUnderstoodIn(words: string, state: State): boolean {
  const reading = readTyped(words, state)
  return ['commands', 'ask', 'errand'].includes(reading.kind)
}
