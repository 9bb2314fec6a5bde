import type { TighteningFacts } from '../../plan/facts.ts'
import { joined } from '../../words/grammar.ts'
import { fastenerName, passName, tighteningName } from '../../words/names.ts'
import type { Turn, Turns } from '../facts/turns.ts'
import { type Line, line } from './line.ts'
import { dated, history, type Telling } from './telling.ts'

/** A tightening: its passes as typed, which fasteners were turned when, and where it was broken off. */
export function tighteningText(telling: Telling, facts: TighteningFacts, turns: Turns | null): Line[] {
  const { state } = telling
  const { id, order, orderBy, passes, suspect, condition, because } = facts
  const passLines = passes.flatMap((_, pass) => {
    const done = (turns?.turns ?? []).filter((turn) => turn.pass === pass)
    const open = order.filter((fastener) => !done.some((turn) => turn.fastener === fastener))
    return [
      line(passName(facts, pass), 6),
      ...runs(telling, done).map(({ entry, fasteners }) => dated(telling, entry, fasteners.join(', '), 8)),
      ...(open.length > 0 ? [line(`not turned: ${open.join(', ')}`, 8)] : []),
    ]
  })
  return [
    line(`tightening ${tighteningName(state, id)}`, 4),
    ...(turns === null ? [] : [dated(telling, turns.set, `set, in the order ${order.join(', ')}`, 6)]),
    ...(orderBy === undefined || orderBy === 'manual' ? [] : [line(`order by the rule "${orderBy}"`, 6)]),
    line(`threads: ${condition ?? 'not said whether dry or oiled'}`, 6),
    ...(because === undefined ? [] : [line(`values kept because ${because}`, 6)]),
    ...passLines,
    ...upsets(telling, facts, turns),
    ...(suspect === null ? [] : [line(`${fastenerName(suspect.fastener)} is still in doubt`, 6)]),
  ]
}

/** Fasteners turned one after the other in the same minute by the same person. */
function runs(telling: Telling, turns: readonly Turn[]): { entry: Turn['entry']; fasteners: string[] }[] {
  const found: { entry: Turn['entry']; fasteners: string[] }[] = []
  for (const { entry, fastener } of turns) {
    const last = found.at(-1)
    const isSame =
      last?.entry.by === entry.by && telling.when(last?.entry.at ?? '') === telling.when(entry.at)
    if (last && isSame) last.fasteners.push(fastener)
    else found.push({ entry, fasteners: [fastener] })
  }
  return found
}

/** What was taken back, what was in doubt and how that was settled, in its order. */
function upsets(telling: Telling, { passes }: TighteningFacts, turns: Turns | null): Line[] {
  if (turns === null) return []
  const takenBack = turns.takenBack.map(({ entry, turns: gone }) => {
    const through = passes.flatMap((_, pass) => {
      const names = gone.filter((turn) => turn.pass === pass).map(({ fastener }) => fastener)
      return names.length > 0 ? [`${names.join(', ')} in pass ${pass + 1}`] : []
    })
    return { entry, text: `no longer counted: ${joined(through)}` }
  })
  const suspects = turns.suspects.map(({ entry, pass, fastener }) => ({
    entry,
    text: `in doubt, perhaps turned already: ${fastenerName(fastener)} in pass ${pass + 1}`,
  }))
  const told = [...takenBack, ...suspects].map(({ entry, text }) => ({
    entry,
    to: dated(telling, entry, text, 6),
  }))
  const acts = turns.acts.map((entry) => ({ entry, to: history(telling, entry, 6) }))
  return [...told, ...acts].sort((a, b) => a.entry.n - b.entry.n).map(({ to }) => to)
}
