import type { PicturesAbout } from '../../lines/reading.ts'
import { picturesOf } from '../../session/pictures.ts'
import { counted } from '../../words/grammar.ts'
import type { Screen } from '../navigation.ts'
import { type Choice, goTo } from '../page.ts'
import { perVersion, type Scene } from './scene.ts'

/** The page of all pictures of the job. */
export const ALL_PICTURES: Screen = { at: 'photos', of: null }

/** The way to the pictures of something; null where there are none. */
export function picturesChoice({ session }: Scene, of: PicturesAbout): Choice | null {
  const { length } = perVersion(session, `pictures ${JSON.stringify(of)}`, () =>
    picturesOf(session.state, of),
  )
  return length === 0 ? null : goTo(counted(length, 'picture'), { at: 'photos', of })
}
