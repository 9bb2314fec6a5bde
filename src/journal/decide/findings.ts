import type { PieceId } from '../../ledger/piece.ts'
import { openChecks } from '../../plan/judging/judging.ts'
import type { CheckKind, TriggerItem } from '../../plan/judging/judging-facts.ts'
import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { alongWith, checkId, wantedPiece } from './judging.ts'
import { given, knownPiece, refuse, unknown } from './refuse.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** What is to be replaced or checked once something is found: the user's own list. */
export function setTrigger(state: State, { when, items }: Of<'set-trigger'>): EntryBodyOf<'trigger-set'> {
  if (items.length === 0) refuse({ code: 'text-missing', what: 'text' })
  for (const { piece } of items) wantedPiece(state, piece)
  return {
    type: 'trigger-set',
    trigger: { id: `h${state.dealt.trigger + 1}`, when: given(when, 'text'), items },
  }
}

/** A list that is not wanted any more. */
export function dropTrigger(
  state: State,
  { trigger, reason }: Of<'drop-trigger'>,
): EntryBodyOf<'trigger-dropped'> {
  if (!state.triggers.has(trigger)) unknown('trigger', trigger)
  return { type: 'trigger-dropped', trigger, reason: given(reason, 'reason') }
}

/** Something is found: its lists open in the same act. */
export function find(state: State, { text, piece, triggers }: Of<'find'>): EntryBodyOf<'found-out'> {
  if (piece !== undefined) knownPiece(state, piece)
  const items = triggers.flatMap((id) => (state.triggers.get(id) ?? unknown('trigger', id)).items)
  const wanted = (id: PieceId) => knownPiece(state, id).should > 0
  const checks = items
    .filter((item) => item.do === 'check')
    .filter((item) => wanted(item.piece) && !isAsked(state, item))
    .map(
      (
        { piece: of, kind, what },
        index,
      ): { id: `k${number}`; piece: PieceId; kind: CheckKind; what: string[] } => ({
        id: checkId(state, index),
        piece: of,
        kind,
        what,
      }),
    )
  const condemned = items
    .filter(({ do: what, piece: of }) => what === 'replace' && wanted(of))
    .map((item) => item.piece)
  return {
    type: 'found-out',
    finding: {
      id: `y${state.dealt.finding + 1}`,
      text: given(text, 'text'),
      piece,
      step: state.strip ?? state.build,
      triggers,
    },
    checks,
    condemned: [...new Set(condemned.flatMap((of) => [of, ...alongWith(state, of)]))],
  }
}

/** The same check, still open from an earlier finding, is not asked twice. */
function isAsked(state: State, { piece, kind, what }: Extract<TriggerItem, { do: 'check' }>): boolean {
  return openChecks(state, piece).some((check) => check.kind === kind && check.what.join() === what.join())
}
