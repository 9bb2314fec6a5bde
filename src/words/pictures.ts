import type { Belongs, PictureId } from '../journal/entry.ts'
import type { State } from '../journal/state.ts'
import { stepName } from './names.ts'
import { containerName } from './places.ts'

/** A picture by its id and its file: `picture g3 (20260502-140311.jpg)`. */
export function pictureName(state: State, id: PictureId): string {
  const picture = state.pictures.get(id)
  return picture ? `picture ${id} (${picture.file})` : `picture ${id}`
}

/** What a picture shows: `of bag 5`, `of step 4, valve cover`, `of the job as a whole`, `not sorted yet`. */
export function ownerName(state: State, belongs: Belongs | 'none' | null): string {
  if (belongs === null) return 'not sorted yet'
  if (belongs === 'none') return 'of the job as a whole'
  return `of ${'step' in belongs ? stepName(state, belongs.step) : containerName(state, belongs.container)}`
}
