import type { PictureFacts, State } from '../../journal/state.ts'
import { allPictures } from '../../session/pictures.ts'

/** What pictures show, and the pictures that show it, in the order in which they were taken. */
export interface PictureGroup {
  of: PictureFacts['belongs']
  pictures: PictureFacts[]
}

/** The pictures of each step, of each container, of the job as a whole, and those not sorted. */
export function pictureGroups(state: State): PictureGroup[] {
  const groups = new Map<string, PictureGroup>()
  for (const picture of allPictures(state)) {
    const key = JSON.stringify(picture.belongs)
    const group = groups.get(key) ?? { of: picture.belongs, pictures: [] }
    groups.set(key, group)
    group.pictures.push(picture)
  }
  return [...groups.values()].sort((a, b) => rank(a.of) - rank(b.of))
}

function rank(of: PictureFacts['belongs']): number {
  if (of === null) return 40_000
  if (of === 'none') return 30_000
  return 'step' in of ? of.step : 10_000 + of.container
}
