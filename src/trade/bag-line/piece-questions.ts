import { driveFits } from '../drive-fit.ts'
import type { Thread } from '../thread.ts'
import { pitchesOf, unifiedSeries } from '../thread-series.ts'
import type { PieceItem, Question } from './bag-item.ts'
import { isPlural, singleUseNoun } from './nouns.ts'

const largeCount = 200

/** What the line itself says beside the piece. */
export interface LineFacts {
  /** The line has a count or positions. */
  isCounted: boolean
  /** The line says `7 of 8`. */
  isFoundOf: boolean
  /** The line says that it is fitted again. */
  isReused: boolean
  doubtfulDrive: string | undefined
}

/** What to ask about a piece that was understood. */
export function askAbout(piece: Omit<PieceItem, 'questions'>, line: LineFacts): Question[] {
  return [
    ...askPitch(piece.thread),
    ...askDrive(piece, line.doubtfulDrive),
    ...askSingleUse(piece, line.isReused),
    ...askCount(piece, line),
  ]
}

function askPitch(thread: Thread | undefined): Question[] {
  if (!thread || thread.system === 'npt') return []
  if (thread.pitchAssumed) return [{ code: 'pitch-assumed', thread }]
  const standardMm = standardPitches(thread)
  const isStandard = standardMm.some((pitch) => Math.abs(pitch - (thread.pitchMm ?? pitch)) < 1e-9)
  return isStandard ? [] : [{ code: 'pitch-not-standard', thread, standardMm }]
}

function standardPitches(thread: Thread): number[] {
  if (thread.system === 'metric') return pitchesOf(thread.diameterMm)
  const { coarse, fine } = unifiedSeries.get(thread.size) ?? {}
  return [coarse, fine].flatMap((perInch) => (perInch === undefined ? [] : [25.4 / perInch]))
}

function askDrive(piece: Pick<PieceItem, 'thread' | 'drive'>, doubtfulDrive: string | undefined): Question[] {
  if (doubtfulDrive !== undefined) return [{ code: 'drive-or-position', typed: doubtfulDrive }]
  if (!piece.thread || !piece.drive) return []
  const { question } = driveFits(piece.thread, piece.drive)
  return question ? [question] : []
}

function askSingleUse(
  piece: Pick<PieceItem, 'name' | 'washers' | 'singleUse'>,
  isReused: boolean,
): Question[] {
  if (piece.singleUse || isReused) return []
  const noun = singleUseNoun(piece.name) ?? singleUseNoun(piece.washers ?? '')
  return noun === undefined ? [] : [{ code: 'usually-single-use', noun }]
}

function askCount(piece: Omit<PieceItem, 'questions'>, line: LineFacts): Question[] {
  const { should, missing, missingAt = [], broken, positions } = piece
  const questions: Question[] = []
  if (should > largeCount) questions.push({ code: 'count-large', count: should })
  if (!line.isCounted && isPlural(withoutNumbers(piece.name)))
    questions.push({ code: 'count-assumed', count: should })
  if (line.isFoundOf && broken > 0 && broken === missing) {
    questions.push({ code: 'broken-or-missing', broken, missing })
  }
  if (positions && missing > missingAt.length && missing < should) {
    questions.push({ code: 'which-missing', missing, positions })
  }
  return questions
}

/** The name without numbers at its end, which may have been meant as a count: `cover bolts 3`. */
function withoutNumbers(name: string): string {
  return name.replace(/(?:[ ,]+(?:\d{1,3}|[x×]\d{1,3}|and|no\.?|#\d{1,3}))+$/iu, '')
}
