import type { PicturesAbout } from '../../lines/reading.ts'
import { allPictures, picturesOf, unsortedPictures } from '../../session/pictures.ts'
import type { Session } from '../../session/session.ts'
import { counted, isAre } from '../../words/grammar.ts'
import { stepName } from '../../words/names.ts'
import { ownerName } from '../../words/pictures.ts'
import { pieceName } from '../../words/pieces.ts'
import { containerName, placeName } from '../../words/places.ts'

type State = Session['state']

/** The pictures of a container, a step or a piece, or all of them; null where there is no such container or step. */
export function photosAnswer(
  { state }: Session,
  about: PicturesAbout | null,
): { text: string[]; answer: unknown } | null {
  if (about !== null && !isKnown(state, about)) return null
  const pictures = about === null ? allPictures(state) : picturesOf(state, about)
  const of = about === null ? 'in this job' : `of ${aboutName(state, about)}`
  const lines = pictures.map(
    ({ id, file, taken, belongs }) =>
      `  ${id}  ${taken === null ? 'no time' : takenText(taken)}  ${file}: ${ownerName(state, belongs)}`,
  )
  const head = `${pictures.length === 0 ? 'No picture' : counted(pictures.length, 'picture')} ${of}`
  return {
    text: [lines.length === 0 ? `${head}.` : `${head}:`, ...lines, ...unsortedLine(state)],
    answer: { pictures, unsorted: unsortedPictures(state).map(({ id }) => id) },
  }
}

/** `3 pictures: photos bag 5`, on a line where there are any. */
export function picturesLine(state: State, about: PicturesAbout): string[] {
  const { length } = picturesOf(state, about)
  return length === 0 ? [] : [`${counted(length, 'picture')}: photos ${typedAbout(state, about)}`]
}

function isKnown(state: State, about: PicturesAbout): boolean {
  if ('container' in about) return state.containers.has(about.container) || state.blanks.has(about.container)
  return 'step' in about ? state.steps.has(about.step) : state.ledger.accounts.has(about.piece)
}

function aboutName(state: State, about: PicturesAbout): string {
  if ('container' in about) return containerName(state, about.container)
  return 'step' in about ? stepName(state, about.step) : pieceName(state, about.piece)
}

function typedAbout(state: State, about: PicturesAbout): string {
  if ('container' in about) return placeName(state, `c${about.container}`)
  return 'step' in about ? `step ${about.step}` : about.piece
}

/** The clock of the camera, to the minute: `2026-05-02 14:03`. */
function takenText(taken: string): string {
  return taken.slice(0, 16).replace('T', ' ')
}

function unsortedLine(state: State): string[] {
  const unsorted = unsortedPictures(state)
  const [first] = unsorted
  if (!first) return []
  const { length } = unsorted
  return [
    `${counted(length, 'picture')} ${isAre(length)} not sorted yet: photo ${first.id} to bag N, to step N, or to job`,
  ]
}
