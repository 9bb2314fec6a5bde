import type { LooseningFacts, TighteningFacts } from '../../plan/facts.ts'
import type { Tightening } from '../../plan/tightening.ts'
import { joined } from '../../words/grammar.ts'
import { fastenerName, looseningName, passName, tighteningName } from '../../words/names.ts'
import { passDone } from '../../words/pass-work.ts'
import type { Turn, Turns } from '../facts/turns.ts'
import { type Line, line } from './line.ts'
import { dated, history, type Telling } from './telling.ts'

/** A tightening: its passes as typed, which fasteners were turned when, and where it was broken off. */
export function tighteningText(telling: Telling, facts: TighteningFacts, turns: Turns | null): Line[] {
  const { state } = telling
  const { id, order, orderBy, suspect, condition, because } = facts
  const passLines = passesText(telling, facts, turns)
  return [
    line(`tightening ${tighteningName(state, id)}`, 4),
    ...(turns === null ? [] : [dated(telling, turns.set, `set, in the order ${order.join(', ')}`, 6)]),
    ...(orderBy === undefined || orderBy === 'manual' ? [] : [line(`order by the rule ${orderBy}`, 6)]),
    line(`threads: ${condition ?? 'not said whether dry or oiled'}`, 6),
    ...(because === undefined ? [] : [line(`values kept because ${because}`, 6)]),
    ...passLines,
    ...upsets(telling, facts, turns),
    ...(suspect === null ? [] : [line(`${fastenerName(suspect.fastener)} is still in doubt`, 6)]),
  ]
}

/** Easing in steps before anything came off. */
export function looseningText(telling: Telling, facts: LooseningFacts, turns: Turns | null): Line[] {
  const name = `${looseningName(telling.state, facts.id)}`
  return [
    ...(turns === null
      ? [line(name, 4)]
      : [dated(telling, turns.set, `${name}, in the order ${facts.order.join(', ')}`, 4)]),
    ...passesText(telling, facts, turns),
  ]
}

/** Each pass with the fasteners that are through it, and when. */
function passesText(telling: Telling, facts: Tightening, turns: Turns | null): Line[] {
  return facts.passes.flatMap((pass, index) => {
    const done = (turns?.turns ?? []).filter((turn) => turn.pass === index)
    const open = facts.order.filter((fastener) => !done.some((turn) => turn.fastener === fastener))
    return [
      line(passName(facts, index), 6),
      ...runs(telling, done).map(({ entry, fasteners }) => dated(telling, entry, fasteners.join(', '), 8)),
      ...(open.length > 0 ? [line(`not ${passDone(pass)}: ${open.join(', ')}`, 8)] : []),
    ]
  })
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
