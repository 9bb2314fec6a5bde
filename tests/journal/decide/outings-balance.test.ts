import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { decide } from '../../../src/journal/decide/decide.ts'
import type { Entry } from '../../../src/journal/entry.ts'
import { fold, foldOn } from '../../../src/journal/fold.ts'
import type { State } from '../../../src/journal/state.ts'
import { auditLedger } from '../../../src/ledger/laws.ts'
import { balance } from '../../../src/ledger/ledger.ts'
import type { PieceId } from '../../../src/ledger/piece.ts'
import { at, endStrip, off, strip } from '../../support/commands.ts'
import { given, stateText } from '../../support/journal.ts'
import { numbered } from '../../support/record.ts'

const piece = fc.constantFrom<PieceId>('p1', 'p2', 'p3', 'p4', 'p5')
const outing = fc.constantFrom<`b${number}`>('b1', 'b2', 'b3')
const count = fc.option(fc.integer({ min: 1, max: 5 }), { nil: undefined })
const some = fc.array(fc.record({ piece, count }), { minLength: 1, maxLength: 3 })
const item = fc.record({
  name: fc.constantFrom('plugs', 'pins', 'studs'),
  count: fc.integer({ min: 1, max: 3 }),
  back: fc.boolean(),
})

const command: fc.Arbitrary<Command> = fc.oneof(
  some.map((pieces): Command => ({ do: 'send-out', to: 'Miller', pieces })),
  fc
    .record({ outing, pieces: fc.option(some, { nil: undefined }) })
    .map((back): Command => ({ do: 'come-back', into: at('bench'), ...back })),
  fc.record({ outing, items: fc.array(item, { maxLength: 3 }) }).map(
    ({ outing: of, items }): Command => ({
      do: 'come-back',
      outing: of,
      pieces: [],
      into: at('bench'),
      tookOut: { text: 'as said', items },
    }),
  ),
  // As pieces went and came before anybody said to whom.
  fc.record({ piece, count }).map((move): Command => ({ do: 'move', ...move, into: at('out') })),
  fc
    .record({ piece, count, to: fc.constantFrom('bench', 'scrap' as const) })
    .map(({ to, ...move }): Command => ({ do: 'move', ...move, from: 'out', into: at(to) })),
  fc.constant<Command>({ do: 'undo' }),
)

const start = given(
  strip('Seat off'),
  off(1, 'rocker', { kind: 'part', into: at('bench') }),
  off(5, 'seat bolts'),
  endStrip,
  { do: 'carry', on: 'p1', items: [{ kind: 'part', name: 'plugs', count: 4 }] },
)

test('whatever goes out and comes back, no more is away than is out, and nothing comes from nowhere', () => {
  const kinds = new Set<string>()
  fc.assert(
    fc.property(fc.array(command, { minLength: 1, maxLength: 14 }), (commands) => {
      let entries: Entry[] = [...start.entries]
      let state = fold(entries)
      for (const each of commands) {
        const decision = decide(state, each)
        if (!decision.ok) continue
        const entry = numbered(decision.body, state.seq + 1)
        entries = [...entries, entry]
        state = foldOn(state, entries, [entry])
        kinds.add(entry.type)
        expect(auditLedger(state.ledger)).toEqual([])
        expect(awayBeyondOut(state)).toEqual([])
      }
      expect(stateText(fold(entries))).toBe(stateText(state))
    }),
    { seed: 4711, numRuns: 400 },
  )
  expect([...kinds].sort()).toEqual(['came-back', 'moved', 'sent-out', 'undone'])
})

/** Pieces of which more is away by the outings than the ledger has out. */
function awayBeyondOut(state: State): PieceId[] {
  const away = new Map<PieceId, number>()
  for (const { pieces } of state.outings.values()) {
    for (const each of pieces) {
      expect(each.away).toBeGreaterThanOrEqual(0)
      expect(each.away).toBeLessThanOrEqual(each.count)
      away.set(each.piece, (away.get(each.piece) ?? 0) + each.away)
    }
  }
  return [...away].filter(([id, number]) => number > balance(state.ledger, id, 'out')).map(([id]) => id)
}
