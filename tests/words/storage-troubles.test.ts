import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { NotRecorded } from '../../src/storage/journal/not-recorded.ts'
import { type Trouble, troubleText } from '../../src/words/storage-troubles.ts'
import { shown } from '../errors/play.ts'

const path = 'jobs/blue-twin/journal.log'

const told: [Trouble, string[]][] = [
  [
    { kind: 'set-aside', path: 'jobs/blue-twin/journal.torn-1', bytes: 212 },
    [
      'The last line of the journal had no end, 212 bytes set aside in jobs/blue-twin/journal.torn-1.',
      '  Every entry before it stands.',
      '> Look at the last entry: what was done after it is not recorded, so say it again.',
    ],
  ],
  [
    { kind: 'damaged', path, line: 41, why: 'checksum' },
    [
      'Line 41 of jobs/blue-twin/journal.log is damaged: its checksum does not agree.',
      '  The 40 entries before it can be read, nothing can be recorded.',
      '> "putback doctor blue-twin" says what can be saved, and in the open job "doctor"; until then leave the file as it is.',
    ],
  ],
  [
    { kind: 'damaged', path, line: 41, why: 'shape', job: 17 },
    [
      'Line 41 of jobs/blue-twin/journal.log is damaged: it tells nothing that any putback writes.',
      '  The 40 entries before it can be read, nothing can be recorded.',
      '> "putback doctor 17" says what can be saved, and in the open job "doctor"; until then leave the file as it is.',
    ],
  ],
  [
    { kind: 'damaged', path, line: 1, why: 'checksum' },
    [
      'Line 1 of jobs/blue-twin/journal.log is damaged: its checksum does not agree.',
      '  Nothing of the job can be shown or recorded until then.',
      '> "putback doctor blue-twin" says what can be saved, and in the open job "doctor"; until then leave the file as it is.',
    ],
  ],
  [
    { kind: 'empty', path },
    [
      'The file jobs/blue-twin/journal.log has no entry in it: the job was made and never opened, or something emptied the file.',
      '> If it had entries, "putback doctor blue-twin from PATH" takes them from a copy or a back-up; else make the job again.',
    ],
  ],
  [
    { kind: 'newer', path, line: 41, version: 5, known: 2 },
    [
      'Entry 41 was written by a newer putback (version 5 of the record, this program knows 2): the job is shown as it stood before that entry.',
      '  Nothing can be recorded here.',
      '  File: jobs/blue-twin/journal.log.',
      '> Get the newest putback and open the job with that; the file is as it should be, so leave it as it is.',
    ],
  ],
  [
    { kind: 'newer', path, line: 1, version: 3, known: 2 },
    [
      'Entry 1 was written by a newer putback (version 3 of the record, this program knows 2): nothing of the job can be shown here.',
      '  Nothing can be recorded here.',
      '  File: jobs/blue-twin/journal.log.',
      '> Get the newest putback and open the job with that; the file is as it should be, so leave it as it is.',
    ],
  ],
  [
    { kind: 'replaced', path },
    [
      'The file jobs/blue-twin/journal.log was replaced or cut while it was open.',
      '  What was read before is shown, nothing can be recorded.',
      '> Close the job and open it again; if a copy was put there by mistake, put the right file back first, or ask "putback doctor blue-twin".',
    ],
  ],
  [{ kind: 'asked', path }, ['The job was opened only to look at.', '> Open it again to record something.']],
  [
    {
      kind: 'lock-held',
      path: 'jobs/blue-twin/journal.lock',
      pid: 4121,
      host: 'garage',
      since: '2026-05-02T14:03:20.511Z',
      elsewhere: false,
    },
    [
      'Not recorded: process 4121 on garage has the job since 2026-05-02 14:03 UTC.',
      '  Everything recorded before still stands.',
      '> Close the other window, or wait, then say it again; if process 4121 is no putback, delete jobs/blue-twin/journal.lock.',
    ],
  ],
  [
    {
      kind: 'lock-held',
      path: 'jobs/blue-twin/journal.lock',
      pid: 4121,
      host: 'garage',
      since: '2026-05-02T14:03:20.511Z',
      by: 'Ida',
      elsewhere: false,
    },
    [
      'Not recorded: Ida, in process 4121 on garage, has the job since 2026-05-02 14:03 UTC.',
      '  Everything recorded before still stands.',
      '> Close the other window, or wait, then say it again; if process 4121 is no putback, delete jobs/blue-twin/journal.lock.',
    ],
  ],
  [
    {
      kind: 'lock-held',
      path: 'jobs/blue-twin/journal.lock',
      pid: 77,
      host: 'office',
      since: '2026-05-02T14:03:20.511Z',
      elsewhere: true,
    },
    [
      'Not recorded: process 77 on office has the job since 2026-05-02 14:03 UTC.',
      '  Everything recorded before still stands.',
      '> Say it again when it is free; if nothing records there any more, delete jobs/blue-twin/journal.lock.',
    ],
  ],
  [
    {
      kind: 'lock-held',
      path: 'jobs/blue-twin/journal.lock',
      pid: null,
      host: null,
      since: null,
      elsewhere: false,
    },
    [
      'Not recorded: another program has the job.',
      '  Everything recorded before still stands.',
      '> Say it again when it is free; if nothing records there any more, delete jobs/blue-twin/journal.lock.',
    ],
  ],
  [
    { kind: 'not-recorded', path, code: 'ENOSPC', takenBack: true },
    [
      'Not recorded: the disk is full.',
      '  Everything recorded before still stands.',
      '  File: jobs/blue-twin/journal.log.',
      '> Make room on the disk, then say it again.',
    ],
  ],
  [
    { kind: 'not-recorded', path, code: 'EIO', takenBack: false },
    [
      'Not recorded: the disk reports an error.',
      '  Everything recorded before still stands; of this one a part may be left in the file.',
      '  File: jobs/blue-twin/journal.log.',
      '> Copy the job folder to another disk before anything else, and go on there; look at the last entry before saying it again.',
    ],
  ],
  [
    { kind: 'not-recorded', path, code: 'EWEIRD', takenBack: true },
    [
      'Not recorded: the system says EWEIRD.',
      '  Everything recorded before still stands.',
      '  File: jobs/blue-twin/journal.log.',
      '> Check the disk and the job folder, then say it again.',
    ],
  ],
  [
    { kind: 'unreadable', path, code: 'EACCES' },
    [
      'The file jobs/blue-twin/journal.log cannot be read or written: this user may not read or write there.',
      '> Give this user the right to read and write in that folder, then say it again.',
    ],
  ],
]

describe('what keeps the record from being written or read', () => {
  test.each(told)('%j', (trouble, says) => {
    expect(shown(troubleText(trouble))).toEqual(says)
  })

  test.each(['ENOSPC', 'EDQUOT', 'EROFS', 'EACCES', 'EPERM', 'EIO', 'ENOENT', 'EMFILE', 'EBUSY'])(
    '%s is said in words, not by its code, with "not recorded" first',
    (code) => {
      const { what } = troubleText({ kind: 'not-recorded', ...new NotRecorded(code, path) })
      expect(what).toMatch(/^Not recorded: /)
      expect(what).not.toContain(code)
    },
  )

  test('every reason of the storage itself is said in words', () => {
    const source = readFileSync('src/storage/journal/not-recorded.ts', 'utf8')
    const [, union = ''] = /export type NotRecordedCode =\n((?: {2}\|.*\n)+)/.exec(source) ?? []
    const codes = [...union.matchAll(/'([a-z-]+)'/g)].map(([, code = '']) => code)
    expect(codes.length).toBeGreaterThan(5)
    for (const code of codes) {
      const { what } = troubleText({ kind: 'not-recorded', path, code, takenBack: true })
      expect(what, code).toMatch(/^Not recorded: /)
      expect(what, code).not.toContain('the system says')
    }
  })

  test('every kind of damage that the storage finds is said in words', () => {
    const [, why = ''] =
      /why: ((?:'[a-z-]+'(?: \| )?)+)/.exec(readFileSync('src/storage/journal/line.ts', 'utf8')) ?? []
    const kinds = [...why.matchAll(/[a-z-]+/g)].map(([kind]) => kind)
    expect(kinds.length).toBeGreaterThan(4)
    const said = kinds.map((kind) => troubleText({ kind: 'damaged', path, line: 2, why: kind }).what)
    expect(said.filter((text, at) => text.endsWith(`: ${kinds[at]}.`))).toEqual([])
    expect(said.every((text) => text.startsWith('Line 2 of '))).toBe(true)
  })
})
