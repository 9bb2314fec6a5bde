import { ownerName, pictureName } from '../pictures.ts'
import { told } from '../told.ts'
import type { RefusalOf, Tellers } from './tellers.ts'

/** What concerns pictures. */
export const pictureRefusals: Tellers<'picture-known' | 'picture-wrong'> = {
  'picture-known': (state, { file, picture }) =>
    told(
      `${named(file)} is in the record already: it is ${pictureName(state, picture)}, ${ownerName(state, state.pictures.get(picture)?.belongs ?? null)}`,
      'leave it out',
    ),
  'picture-wrong': (_, { file, why }) => told(`${named(file)} ${WRONG[why].what}`, WRONG[why].cure),
}

/** A name that no picture can have may hold anything. */
function named(file: string): string {
  return `the file ${file.replace(/\p{C}/gu, '?').slice(0, 80)}`
}

const WRONG: Record<RefusalOf<'picture-wrong'>['why'], { what: string; cure: string }> = {
  file: {
    what: 'is no name that a picture can have in the folder of the job',
    cure: 'give it a name of at most 120 characters, without a slash or a colon and without a stop in front',
  },
  sha256: {
    what: 'came without its right checksum, so it could not be known again',
    cure: 'copy it into the job once more',
  },
  taken: { what: 'came with a time that is none', cure: 'leave the time out' },
  belongs: {
    what: 'was put to what no record can have',
    cure: 'say a container, a step, or the job as a whole',
  },
  twice: {
    what: 'is there twice, by its name or by what it shows',
    cure: 'leave one out, or give one another name',
  },
}
