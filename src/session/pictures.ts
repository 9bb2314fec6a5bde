import type { Belongs, PictureId } from '../journal/entry.ts'
import type { PictureFacts, State } from '../journal/state.ts'
import { holdingsIn } from '../ledger/ledger.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { PicturesAbout } from '../lines/reading.ts'

/**
 * The pictures of a container, a step or a piece, in the order in which they were taken, by the clock of the camera;
 * those of an unknown time come last. A piece has those of the container it lies in, and of each that it lay in when
 * the picture was put there; a step has its own and those of its pieces.
 */
export function picturesOf(state: State, about: PicturesAbout): PictureFacts[] {
  if ('container' in about) return chosen(state, (belongs) => isSame(belongs, about))
  if ('piece' in about) return chosen(state, (_, pieces) => pieces.has(about.piece))
  const isOfStep = (id: PieceId) => state.ledger.accounts.get(id)?.piece.step === about.step
  return chosen(state, (belongs, pieces) => isSame(belongs, about) || [...pieces].some(isOfStep))
}

/** Every picture of the job, in the same order. */
export function allPictures(state: State): PictureFacts[] {
  return chosen(state, () => true)
}

/** The pictures that nobody has sorted yet. */
export function unsortedPictures(state: State): PictureFacts[] {
  return chosen(state, (belongs) => belongs === null)
}

type Owner = PictureFacts['belongs']

function chosen(state: State, isMeant: (belongs: Owner, pieces: Set<PieceId>) => boolean): PictureFacts[] {
  return [...state.pictures.values()]
    .filter(({ belongs, pieces }) => isMeant(belongs, new Set([...pieces, ...liesIn(state, belongs)])))
    .sort((a, b) => compare(a.taken ?? LAST, b.taken ?? LAST) || numberOf(a.id) - numberOf(b.id))
}

function liesIn({ ledger }: State, belongs: Owner): PieceId[] {
  if (belongs === null || belongs === 'none' || !('container' in belongs)) return []
  return holdingsIn(ledger, belongs.container).map(({ piece }) => piece)
}

function isSame(belongs: Owner, about: Belongs): boolean {
  if (belongs === null || belongs === 'none') return false
  if ('container' in about) return 'container' in belongs && belongs.container === about.container
  return 'step' in belongs && belongs.step === about.step
}

/** Behind every date. */
const LAST = '~'

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}

function numberOf(id: PictureId): number {
  return Number(id.slice(1))
}
