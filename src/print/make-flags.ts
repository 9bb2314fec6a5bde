import type { PieceId } from '../ledger/piece.ts'
import { containerOf } from '../ledger/place.ts'
import { codeOf } from '../session/scan.ts'
import type { Session } from '../session/session.ts'
import type { Entry } from '../session/stored-entry.ts'
import { endsOfConnection, flagLabels } from '../words/label-text/flag-labels.ts'
import { pieceName } from '../words/pieces.ts'
import type { Choice } from './choose-print.ts'
import { jobPart, type Made, madeLabels, type NotMade, notMade, type Recorded } from './made.ts'
import { sendFor } from './send-for.ts'

/**
 * A flag for each end of a connection. What lies loose is hung on a tag of its own by it: a flag without a number
 * could not be scanned.
 */
export function makeFlags(session: Session, piece: PieceId, choice: Choice): Made | NotMade {
  const { state } = session
  const ends = endsOfConnection(state, piece)
  const account = state.ledger.accounts.get(piece)
  if (account?.piece.kind !== 'connection')
    return notMade({ code: 'no-connection', name: pieceName(state, piece) })
  const places = ends.flatMap((id) => [...(state.ledger.accounts.get(id)?.at.keys() ?? [])])
  const container = places.map(containerOf).find((no) => no !== null) ?? null
  if (container !== null) return flagsWith(session, ends, container, choice)
  const loose = ends.filter((id) => state.ledger.accounts.get(id)?.at.has('bench'))
  if (loose.length === 0) return notMade({ code: 'at-home', name: pieceName(state, piece) })
  // The layout is tried before anything is recorded.
  const trial = flagsWith(session, ends, 1, choice)
  if (!trial.ok) return trial
  const hung = hangOnTag(session, loose, account.piece.name)
  if (!hung.ok) return hung
  return flagsWith(session, ends, hung.tag, choice, { entries: hung.entries })
}

function hangOnTag(
  session: Session,
  [first, ...others]: readonly PieceId[],
  name: string,
): { ok: true; tag: number; entries: Entry[] } | NotMade {
  if (first === undefined) throw new Error('nothing to hang on a tag')
  const opened = sendFor(session, [
    { do: 'move', piece: first, into: { kind: 'new', container: 'tag', name } },
  ])
  if (!opened.ok) return opened
  const tag = session.state.dealt.container
  const rest = sendFor(
    session,
    others.map((piece) => ({ do: 'move', piece, into: { kind: 'container', no: tag } })),
  )
  return rest.ok ? { ok: true, tag, entries: [...opened.entries, ...rest.entries] } : rest
}

function flagsWith(
  { state }: Session,
  ends: readonly PieceId[],
  no: number,
  choice: Choice,
  recorded: Recorded = {},
): Made | NotMade {
  const flags = flagLabels(state, ends, codeOf(state, no))
  const [{ what = 'connection' } = {}] = flags
  return madeLabels(flags, choice, {
    title: `flags of ${what}`,
    name: `${jobPart(state.job.no)}-flags-${no}`,
    ...recorded,
  })
}
