import type { Move } from '../../ledger/account.ts'
import { placesOf } from '../../ledger/ledger.ts'
import type { PieceId } from '../../ledger/piece.ts'
import { withinReach } from '../../plan/contents.ts'
import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { destination } from './containers.ts'
import { given, knownPiece, lawful, unknown } from './refuse.ts'
import { gather } from './supply.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** Pieces go out of the house, to a shop or on loan, together. */
export function sendOut(state: State, command: Of<'send-out'>): EntryBodyOf<'sent-out'> {
  const { to, why, due, expects, aside = [], job, pieces } = command
  const moves = pieces.flatMap(({ piece, count }): Move[] => {
    const lies = withinReach(state, knownPiece(state, piece))
    const wanted = count ?? lies.reduce((sum, each) => sum + each.count, 0)
    return gather(lies, wanted).map((part) => ({ piece, count: part.count, from: part.place, to: 'out' }))
  })
  const off = aside.flatMap((piece) =>
    placesOf(state.ledger, piece).map(
      ({ place, count }): Move => ({ piece, count, from: place, to: 'bench' }),
    ),
  )
  return {
    type: 'sent-out',
    outing: {
      id: `b${state.dealt.outing + 1}`,
      to: given(to, 'name'),
      why,
      due,
      expects,
      job,
      since: state.clock.today,
      pieces: totals(moves),
      aside,
    },
    moves: lawful(state, [...off.filter(({ from }) => from !== 'bench'), ...moves]),
  }
}

/** Pieces come back, and somebody says what the shop took out. */
export function comeBack(state: State, command: Of<'come-back'>): EntryBodyOf<'came-back'> {
  const outing = state.outings.get(command.outing) ?? unknown('outing', command.outing)
  const { places } = destination(state, command.into, null)
  const asked =
    command.pieces ??
    outing.pieces.filter(({ away }) => away > 0).map(({ piece, away }) => ({ piece, count: away }))
  const moves = asked.map(
    ({ piece, count }): Move => ({ piece, count: count ?? 1, from: 'out', to: places[0] ?? 'bench' }),
  )
  return {
    type: 'came-back',
    outing: outing.id,
    pieces: [],
    openings: [],
    moves: lawful(state, moves),
    tookOut: command.tookOut && { text: command.tookOut.text, pieces: [] },
    result: command.result,
  }
}

function totals(moves: readonly Move[]): { piece: PieceId; count: number }[] {
  const by = new Map<PieceId, number>()
  for (const { piece, count } of moves) by.set(piece, (by.get(piece) ?? 0) + count)
  return [...by].map(([piece, count]) => ({ piece, count }))
}
