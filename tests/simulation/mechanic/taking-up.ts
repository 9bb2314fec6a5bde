import type { TighteningId } from '../../../src/plan/facts.ts'
import type { NextTurn } from '../../../src/plan/tightening.ts'
import type { Card } from '../../../src/session/views.ts'
import type { Act } from '../job/act.ts'
import type { Known } from '../job/known.ts'
import type { Bench } from './bench.ts'

/**
 * Goes on with a tightening that broke off, by what the card names as next and nothing else, until that is the bolt of the
 * act. A bolt in doubt is answered as it is. Answers whether the bolt of the act was turned before work broke off.
 */
export function goOn(
  bench: Bench,
  known: Known,
  { doing, thing, pass, at }: Act,
  wasTurned: boolean,
): boolean {
  const tightening = thing && known.tightenings.get(thing)
  if (doing !== 'turn' || !tightening) return false
  const { id, order } = tightening
  for (let turns = 0; turns <= order.length; turns += 1) {
    const next = nextOn(bench, id)
    if (next === undefined || (next.pass === pass && next.fastener === order[Number(at)] && !next.suspect))
      return false
    if (next.suspect) {
      bench.say(`turned ${id} ${wasTurned ? 'yes' : 'no'} because the paint mark shows it`)
      if (wasTurned) return true
    } else bench.say(`turn ${next.fastener} of ${id}`)
  }
  return false
}

/** What the card names of a tightening: among what is half done, or as the next thing of all. */
function nextOn(bench: Bench, id: string): NextTurn | undefined {
  const result = bench.say('card')
  if (!result.ok) return undefined
  const { halfway, next } = result.answer as Card
  const half = halfway.find(({ tightening }) => tightening.id === (id as TighteningId))
  const todo = next.kind === 'todo' && next.todo.kind === 'turn' ? next.todo : undefined
  return half?.next ?? (todo?.tightening.id === id ? todo.next : undefined)
}
