import { expect, test } from 'vitest'
import { parseEntry } from '../../src/journal/entry.ts'
import type { Concern, Finding } from '../../src/session/health.ts'
import { behindText } from '../../src/words/doctor/behind-text.ts'
import { concernsText } from '../../src/words/doctor/concerns-text.ts'
import { foundText, mendedText } from '../../src/words/doctor/doctor-text.ts'
import { findingText } from '../../src/words/doctor/findings-text.ts'
import { off, strip } from '../support/commands.ts'
import { openJob, record } from '../support/record.ts'

const one = { line: 5, last: 5, isSure: true }

test.each<[Finding, string]>([
  [{ kind: 'flipped', ...one, entry: 5 }, 'line 5: one bit of entry 5 is wrong, and which one is known'],
  [{ kind: 'unended', ...one, entry: 5 }, 'line 5: entry 5 is whole, only the end of its line is gone'],
  [{ kind: 'torn', ...one, bytes: 1 }, 'line 5: 1 byte without the end of a line, no whole entry'],
  [{ kind: 'zeros', ...one, bytes: 512 }, 'line 5: 512 bytes of zeros, as a loss of power leaves them'],
  [{ kind: 'returns', ...one, count: 12 }, '12 lines end in CR LF: an editor saved the file'],
  [{ kind: 'mark', ...one }, 'line 5: a byte order mark stands before it: an editor saved the file'],
  [{ kind: 'blank', ...one, last: 7 }, 'lines 5 to 7: empty'],
  [
    { kind: 'doubled', ...one, last: 6, entry: 3, lastEntry: 4 },
    'lines 5 to 6: entries 3 to 4 a second time',
  ],
  [{ kind: 'moved', ...one, entry: 9 }, 'line 5: entry 9, which belongs elsewhere in the file'],
  [{ kind: 'foreign', ...one }, 'line 5: of another journal: the record is whole without it'],
  [{ kind: 'foreign', ...one, isSure: false }, 'line 5: of another journal, as it seems'],
  [
    { kind: 'other-way', ...one, entry: 5, isSure: false },
    'line 5: entry 5 told otherwise: a copy of the job that went another way',
  ],
  [{ kind: 'altered', ...one, entry: 5, isSure: false }, 'line 5: entry 5 is not what was written'],
  [{ kind: 'altered', ...one, entry: 5 }, 'line 5: entry 5 is not what was written, the copy has it'],
  [{ kind: 'illegible', ...one, entry: 5, isSure: false }, 'line 5: entry 5 cannot be read'],
  [{ kind: 'illegible', ...one, isSure: false }, 'line 5: cannot be read as an entry'],
  [{ kind: 'illegible', ...one }, 'line 5: no entry, and the record is whole without it'],
  [{ kind: 'missing', ...one, entry: 5, lastEntry: 8 }, 'before line 5: entries 5 to 8 missing'],
  [{ kind: 'brought', ...one, entry: 5 }, 'entry 5: whole in another file'],
  [{ kind: 'unknown', ...one, entry: 5 }, 'line 5: entry 5 tells nothing that any putback writes'],
  [
    { kind: 'unlawful', ...one, entry: 5 },
    'line 5: entry 5 tells what cannot be, such as a piece that is in two places',
  ],
  [{ kind: 'newer', ...one, entry: 5 }, 'line 5: entry 5 was written by a newer putback'],
])('%j', (finding, says) => {
  expect(findingText(finding)).toBe(says)
})

const lock = {
  kind: 'lock',
  path: 'j/journal.lock',
  pid: 41,
  host: 'bench',
  since: '2030-01-01T08:00:00.000Z',
} as const

test.each<[Concern, string]>([
  [
    { kind: 'picture-missing', path: 'j/photos/a.jpg' },
    'the picture j/photos/a.jpg is not there: "photos import FOLDER" with the same picture puts it back',
  ],
  [
    { kind: 'picture-changed', path: 'j/photos/a.jpg' },
    'the picture j/photos/a.jpg is not the one recorded: move it away, then "photos import FOLDER" puts that back',
  ],
  [
    { kind: 'link', path: 'j/photos' },
    'j/photos is a link, and nothing is read through it: put the file itself there',
  ],
  [
    { kind: 'open-to-others', path: 'j' },
    `other users of this machine may look at j: "chmod go-rwx 'j'" keeps them out`,
  ],
  [
    { kind: 'draft', path: 'j/a.tmp' },
    'j/a.tmp was left by a program that was stopped while it wrote: it can be deleted',
  ],
  [
    { kind: 'set-aside', path: 'j/journal.torn-1', bytes: 5 },
    'j/journal.torn-1 holds 5 bytes, set aside: delete it when nothing in it is missed',
  ],
  [{ ...lock, holder: 'living' }, 'process 41 is writing in the job since 2030-01-01 08:00 UTC'],
  [
    { ...lock, holder: 'dead' },
    'j/journal.lock was left by process 41, which is gone: the next one that records lifts it',
  ],
  [
    { ...lock, holder: 'elsewhere' },
    'process 41 on bench has the job since 2030-01-01 08:00 UTC: if nothing records there any more, delete j/journal.lock',
  ],
  [
    { ...lock, pid: null, host: null, since: null, holder: 'unnamed' },
    'j/journal.lock names nobody: after ten seconds the next one that records lifts it',
  ],
])('%j', (concern, says) => {
  expect(concernsText([concern])).toEqual([says])
})

test('many of a kind are not told one by one', () => {
  const missing = Array.from(
    { length: 14 },
    (_, at): Concern => ({ kind: 'picture-missing', path: `${at}.jpg` }),
  )
  expect(concernsText(missing)).toHaveLength(11)
  expect(concernsText(missing).at(-1)).toBe('and 4 more like that')
})

test('every entry of a job can be told without what stands before it', () => {
  const { entries } = record([openJob, strip('cylinder head off')])
  const when = (at: string) => at.slice(0, 16)
  expect(
    entries.map((entry) =>
      behindText({ line: 1, n: entry.n, entry: parseEntry(entry), isProved: true }, when),
    ),
  ).toEqual([
    '   1  2030-01-01T08:00  opened: blue twin, the blue twin, top end',
    '   2  2030-01-01T08:00  strip began: cylinder head off',
  ])
  expect(behindText({ line: 3, n: 3, entry: null, isProved: false }, when)).toBe(
    '   3? not known to this program',
  )
})

/** The last entry of a job in which something came off into a new bag. */
const cameOff = parseEntry(record([openJob, strip('cylinder head off'), off(2, 'bolts')]).entries.at(-1))

test('where it went is told by what stands on the container', () => {
  expect(behindText({ line: 3, n: 3, entry: cameOff, isProved: true }, () => 'then')).toMatch(
    /, 2 p1 to container 1$/,
  )
})

const telling = { path: 'journal.log', ask: (words: string) => words, when: () => 'then' }
const NOTHING = new Uint8Array()
const around = { concerns: [], copies: [] }
const behind = [{ line: 3, n: 3, entry: cameOff, isProved: true }]

test('what a newer program wrote is not to be said again', () => {
  const finding: Finding = { kind: 'newer', line: 2, last: 2, entry: 2, isSure: true }
  const found = {
    findings: [finding],
    entries: [],
    behind,
    verdict: 'newer' as const,
    mended: NOTHING,
    rest: NOTHING,
  }
  expect(foundText(found, around, telling)).toEqual(['line 2: entry 2 was written by a newer putback'])
})

test('what was cut off opened bags that have their numbers on them', () => {
  const found = {
    findings: [],
    entries: [],
    behind,
    verdict: 'lossy' as const,
    mended: NOTHING,
    rest: NOTHING,
  }
  const cut = { done: true as const, found, copy: 'before', rest: 'cut' }
  expect(mendedText(cut, telling).at(-1)).toMatch(/^bags that were opened in it have their numbers on them/)
  const nothingOpened = { ...cut, found: { ...found, behind: [] } }
  expect(mendedText(nothingOpened, telling).at(-1)).toBe('what was cut off: cut')
})
