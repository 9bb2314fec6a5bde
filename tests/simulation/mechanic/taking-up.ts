import type { NextTurn } from '../../../src/plan/tightening.ts'
import type { Card, Todo } from '../../../src/session/views.ts'
import type { Act } from '../job/act.ts'
import type { Known } from '../job/known.ts'
import type { Bench } from './bench.ts'

/**
 * Goes on with a tightening that broke off, by what the program names as next and nothing else, until that is the bolt of the
 * act. A bolt in doubt is answered as it is. Answers whether the bolt of the act was turned before work broke off.
 */
export function goOn(
  bench: Bench,
  known: Known,
  { doing, step, thing, pass, at }: Act,
  wasTurned: boolean,
): boolean {
  const tightening = thing && known.tightenings.get(thing)
  if (doing !== 'turn' || !tightening) return false
  const { id, order } = tightening
  for (let turns = 0; turns <= order.length; turns += 1) {
    const next = nextOn(bench, id, step)
    const isInPass = pass === undefined || next?.pass === pass
    if (next === undefined || (isInPass && next.fastener === order[Number(at)] && !next.suspect)) return false
    if (next.suspect) {
      bench.say(`turned ${id} ${wasTurned ? 'yes' : 'no'} because the paint mark shows it`)
      if (wasTurned) return true
    } else bench.say(`turn ${next.fastener} of ${id}`)
  }
  return false
}

/** What the card names of a tightening: among what is half done, or as the next thing of all; else what the page of its step names. */
function nextOn(bench: Bench, id: string, step: number): NextTurn | undefined {
  const result = bench.say('card')
  if (!result.ok) return undefined
  const { halfway, next } = result.answer as Card
  const half = halfway.find(({ tightening }) => tightening.id === id)
  const todo = next.kind === 'todo' && next.todo.kind === 'turn' ? next.todo : undefined
  if (half ?? todo?.tightening.id === id) return half?.next ?? todo?.next
  const page = bench.say(`step ${step}`)
  const all = page.ok ? (page.answer as { todo: Todo[] }).todo : []
  return all.flatMap((each) => (each.kind === 'turn' && each.tightening.id === id ? [each.next] : []))[0]
}
