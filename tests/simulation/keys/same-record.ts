import type { State } from '../../../src/journal/state.ts'
import { placesOf } from '../../../src/ledger/ledger.ts'
import type { Act } from '../job/act.ts'
import { buildActs } from '../job/build-acts.ts'
import { Known } from '../job/known.ts'
import { stripActs } from '../job/strip-acts.ts'
import { waitActs } from '../job/wait-acts.ts'
import type { Machine } from '../machines/machine.ts'
import { Bench } from '../mechanic/bench.ts'

/** The same job said line by line on the command line. Throws where a line is not taken. */
export function workInLines(machine: Machine): State {
  const bench = new Bench(machine.shape)
  const known = new Known()
  const say = (act: Act) => {
    if (act.isNeedless?.(known)) return
    const hands = act.doing === 'see again' ? 'Boris' : 'Anna'
    if (bench.by !== hands) bench.reopen(hands)
    const result = bench.say(act.say(known))
    if (!result.ok) throw new Error(`${act.say(known)}: ${result.told.what}`)
    known.learn(act, result.entries ?? [])
    if (act.doing === 'ask' && !act.thing) known.hear(result.answer)
  }
  for (const act of [...stripActs(machine), ...waitActs(machine), ...buildActs(machine)]) say(act)
  return bench.session.state
}

/** What a record says of the machine, line by line: each piece with its places, what was done, and whether it is cleared. */
export function recordLines(state: State): string[] {
  const { ledger, marks, tightenings, fluids, checks, steps, consumables, containers } = state
  return [
    ...[...ledger.accounts.values()].map(({ piece, home, should }) => {
      const at = placesOf(ledger, piece.id)
        .map(({ place, count }) => `${count} ${place}`)
        .sort()
      return `${piece.id} ${piece.name} ${piece.size ?? ''}, ${should} belong at ${JSON.stringify(home)}: ${at.join(', ')}`
    }),
    ...[...marks.values()].map(({ id, text, confirmed }) => `${id} ${text}: ${confirmed}`),
    // They get their numbers in the order in which they are set.
    ...[...tightenings.values()].map(
      ({ piece, passes, done }) =>
        `${piece}: ${passes.map(({ typed }) => typed).join(', ')}, ${done.map(({ size }) => size)}`,
    ),
    ...[...fluids.values()].map(({ id, name, filledLitres }) => `${id} ${name}: ${filledLitres}`),
    ...[...checks.values()].map(({ id, piece, done }) => `${id} ${piece}: ${done !== null}`),
    ...[...consumables.values()].map(({ id, applied }) => `${id}: ${applied !== null}`),
    ...[...containers.values()].map(({ no, kind, slots }) => `${kind} ${no}, ${slots ?? ''}`),
    ...[...steps.values()].map(({ no, built, after }) => `step ${no} ${after}: ${built}`),
    ...[...state.secondLooks].map(
      ([step, looks]) =>
        `step ${step} seen: ${looks
          .filter(({ line }) => !line.startsWith('t'))
          .map(({ line }) => line)
          .sort()}`,
    ),
    `cleared: ${state.cleared}`,
  ].sort()
}
