import { describe, expect, test } from 'vitest'
import { notBackedUpText } from '../../src/words/backup.ts'
import type { Trouble } from '../../src/words/storage-troubles.ts'
import { shown } from '../errors/play.ts'

const JOURNAL = '/jobs/blue-twin/journal.log'

describe('why no back-up was made', () => {
  test.each<[string, Trouble, string[]]>([
    [
      'where it was to be, the folder that was named is said, and not the draft in it',
      { kind: 'unreadable', path: '/media/stick/.putback-garage-12-1.tmp', code: 'EROFS' },
      [
        'Nothing can be written in /media/stick: the disk can only be read.',
        '  No back-up was made, and the job is as it was.',
        '> Name another folder with "backup to FOLDER", or put that right, then say it again.',
      ],
    ],
    [
      'in the job, the file that cannot be read',
      { kind: 'unreadable', path: JOURNAL, code: 'EACCES' },
      [
        `The file ${JOURNAL} cannot be read or written: this user may not read or write there.`,
        '  No back-up was made, and the job is as it was.',
        '> Give this user the right to read and write in that folder, then say it again.',
      ],
    ],
  ])('%s', (_, trouble, lines) => {
    expect(shown(notBackedUpText(trouble, '/media/stick'))).toEqual(lines)
  })
})
