import type { Cases } from '../case.ts'
import { begin, job, open, picture, pictures } from '../commands.ts'

const WRONG_NAME =
  '> Give it a name of at most 120 characters, without a slash or a colon and without a stop in front.'

export const pictureCases = {
  'picture-known': [
    {
      given: [job, open('bag'), pictures(picture('lid.jpg', 1, { container: 1 }))],
      when: pictures(picture('lid-again.jpg', 1)),
      says: [
        'The file lid-again.jpg is in the record already: it is picture g1 (lid.jpg), of bag 1.',
        '> Leave it out.',
      ],
    },
    {
      given: [job, begin('Lid off'), pictures(picture('lid.jpg', 1), picture('bolts.jpg', 2))],
      when: pictures(picture('new.jpg', 3), picture('copy.jpg', 2, { step: 1 })),
      says: [
        'The file copy.jpg is in the record already: it is picture g2 (bolts.jpg), not sorted yet.',
        '> Leave it out.',
      ],
    },
  ],
  'picture-wrong': [
    {
      given: [job],
      when: pictures(picture('../journal', 1)),
      says: ['The file ../journal is no name that a picture can have in the folder of the job.', WRONG_NAME],
    },
    {
      given: [job],
      when: pictures({ ...picture('lid.jpg', 1), sha256: 'abc' }),
      says: [
        'The file lid.jpg came without its right checksum, so it could not be known again.',
        '> Copy it into the job once more.',
      ],
    },
    {
      given: [job],
      when: pictures({ ...picture('lid.jpg', 1), taken: 'last summer' }),
      says: ['The file lid.jpg came with a time that is none.', '> Leave the time out.'],
    },
    {
      given: [job],
      when: pictures(picture('lid.jpg', 1, { step: 0 })),
      says: [
        'The file lid.jpg was put to what no record can have.',
        '> Say a container, a step, or the job as a whole.',
      ],
    },
    {
      given: [job, pictures(picture('lid.jpg', 1))],
      when: pictures(picture('LID.JPG', 2)),
      says: [
        'The file LID.JPG is there twice, by its name or by what it shows.',
        '> Leave one out, or give one another name.',
      ],
    },
  ],
} satisfies Record<string, Cases>
