import { entryText } from '../../words/entries.ts'
import { sentence } from '../../words/grammar.ts'
import { differenceName, stepName } from '../../words/names.ts'
import { liesText } from '../../words/pieces.ts'
import { intoName, placeName } from '../../words/places.ts'
import { leftoverLines } from '../../words/told-leftovers.ts'
import type { AsBuilt } from '../as-built.ts'
import type { AidRecord } from '../facts/aids.ts'
import type { CountRecord } from '../facts/counts.ts'
import type { Overridden } from '../facts/standing.ts'
import { type Line, line } from './line.ts'
import { dated, history, numbered, type Telling, withMoves } from './telling.ts'

/** An override, and what ended it. */
export function overrideText(telling: Telling, { entry, ended }: Overridden): Line[] {
  return [
    history(telling, entry),
    ...(ended === null
      ? []
      : [
          dated(
            telling,
            ended,
            `ended by: ${entryText(
              telling.state,
              withMoves(ended, () => false),
            )}`,
            4,
          ),
        ]),
  ]
}

/** A recount; what did not agree, with what explained it. */
export function countText(telling: Telling, { entry, differences }: CountRecord): Line[] {
  const told = differences.map(({ difference, explained }) => {
    if (explained !== null) return history(telling, explained, 4)
    return line(
      `${differenceName(telling.state, difference.id)}: ${difference.settled ?? 'not explained'}`,
      4,
    )
  })
  return [history(telling, entry), ...told]
}

/** A merge, with what of the copy was left out; and how each of that was settled. */
export function mergeText(telling: Telling, merges: AsBuilt['merges']): Line[] {
  return merges.flatMap((entry) => [
    history(telling, entry),
    ...(entry.type === 'merged' ? entry.leftOut : []).map(({ id, at, by, says }) =>
      line(`${id}, ${telling.when(at)}${by === undefined ? '' : ` [${by}]`}: ${says}`, 4),
    ),
  ])
}

/** An aid or a tool, its ways, and where it is. */
export function aidText(telling: Telling, { account, ways }: AidRecord): Line[] {
  const { state } = telling
  const { id, kind, step } = account.piece
  const what = numbered(state, id, account.entered)
  return [
    line(`${what} (${kind}, ${stepName(state, step)}): ${liesText(state, id)}`, 2),
    ...ways.map(({ move: { count, from, to }, entry }) =>
      dated(telling, entry, `${count} from ${placeName(state, from)} ${intoName(state, to)}`, 4),
    ),
  ]
}

/** What is open still: before the first start the trial balance, after it the checks not done. */
export function openText({ state, code }: Telling, { leftovers, checksDue }: AsBuilt): Line[] {
  const checks = checksDue.map(({ step, overrides }) => {
    const due = step.due === undefined ? '' : `, due ${step.due}`
    const passed = overrides.map((reason) => `, overridden: ${reason}`).join('')
    return sentence(`after the first start, ${stepName(state, step.no)}: not done${due}${passed}`)
  })
  return [...leftoverLines(state, leftovers, code), ...checks].map((text) => line(text, 2))
}
