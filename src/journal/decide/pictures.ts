import type { Command } from '../command.ts'
import { type Belongs, type EntryBodyOf, MOST_PICTURES, type PictureId, pictureFault } from '../entry.ts'
import type { State } from '../state.ts'
import { knownLabel, knownStep, refuse, unknown } from './refuse.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** Pictures enter the record, at most 1000 at once and each only once: what is known by its bytes is refused. */
export function addPictures(state: State, { pictures }: Of<'add-pictures'>): EntryBodyOf<'pictures-added'> {
  const { length } = pictures
  if (length < 1 || length > MOST_PICTURES) refuse({ code: 'count-wrong', count: length })
  const added = pictures.map((picture, index) => {
    const { file, sha256, taken, belongs } = picture
    const id: PictureId = `g${state.dealt.picture + 1 + index}`
    const facts = { id, file, sha256, taken, belongs }
    const why = pictureFault(facts)
    if (why !== null) refuse({ code: 'picture-wrong', file, why })
    if (belongs !== null) checkOwner(state, belongs)
    return facts
  })
  const known = [...state.pictures.values()]
  const idBySum = new Map(known.map(({ sha256, id }) => [sha256, id]))
  // Two names that a disk may take for one would be one picture.
  const names = new Set(known.map(({ file }) => file.toLowerCase()))
  const sums = new Set<string>()
  for (const { file, sha256 } of pictures) {
    const same = idBySum.get(sha256)
    if (same) refuse({ code: 'picture-known', file, picture: same })
    const name = file.toLowerCase()
    if (sums.has(sha256) || names.has(name)) refuse({ code: 'picture-wrong', file, why: 'twice' })
    sums.add(sha256)
    names.add(name)
  }
  return { type: 'pictures-added', pictures: added }
}

/** Says what a picture shows: a container, a step, or the job as a whole. */
export function sortPicture(
  state: State,
  { picture, belongs }: Of<'sort-picture'>,
): EntryBodyOf<'picture-sorted'> {
  if (!state.pictures.has(picture)) unknown('picture', picture)
  if (belongs !== 'none') checkOwner(state, belongs)
  return { type: 'picture-sorted', picture, belongs }
}

/** A label is often in the picture before anything is recorded in its container, and sometimes still when it is void. */
function checkOwner(state: State, belongs: Belongs): void {
  if ('step' in belongs) knownStep(state, belongs.step)
  else if (!state.containers.has(belongs.container)) knownLabel(state, belongs.container)
}
