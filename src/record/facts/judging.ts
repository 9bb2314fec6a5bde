import type { Entry, EntryOf, EntryType } from '../../journal/entry.ts'
import type { PictureFacts, State } from '../../journal/state.ts'
import type { PieceId } from '../../ledger/piece.ts'
import type { MeasureFacts } from '../../plan/facts.ts'

/** One thing that was asked of pieces, found, or decided about them, with the ground that was given for it. */
export interface JudgingRecord {
  entry: JudgingEntry
  measure: MeasureFacts | null
  picture: PictureFacts | null
  /** Of a verdict: the pieces about which something else was said since. */
  saidAnew: PieceId[]
}

const JUDGING = [
  'checks-set',
  'checks-done',
  'check-dropped',
  'judged',
  'bound',
  'trigger-set',
  'trigger-dropped',
  'found-out',
] as const satisfies EntryType[]

type JudgingEntry = EntryOf<(typeof JUDGING)[number]>

/** What was found, asked and decided, in its order. */
export function judgingOf(state: State, entries: readonly Entry[]): JudgingRecord[] {
  return entries.filter(isJudging).map((entry) => {
    const measure = 'measure' in entry ? entry.measure : undefined
    const picture = 'picture' in entry ? entry.picture : undefined
    return {
      entry,
      measure: (measure && state.measures.get(measure)) ?? null,
      picture: (picture && state.pictures.get(picture)) ?? null,
      saidAnew: judgedIn(entry).filter((piece) => {
        const standing = state.verdicts.get(piece)
        return standing !== undefined && standing.n !== entry.n
      }),
    }
  })
}

function isJudging(entry: Entry): entry is JudgingEntry {
  return JUDGING.some((type) => type === entry.type)
}

function judgedIn(entry: JudgingEntry): PieceId[] {
  if (entry.type === 'found-out') return entry.condemned
  if (entry.type !== 'judged' || entry.count !== undefined) return []
  return [...entry.of, ...entry.along]
}
