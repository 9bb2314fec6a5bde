import { describe, expect, test } from 'vitest'
import { parseEntry } from '../../src/journal/entry.ts'
import { asBuilt } from '../../src/record/as-built.ts'
import { Session } from '../../src/session/session.ts'
import { openJournal } from '../../src/storage/journal/open-journal.ts'
import { writeUnasked } from '../session/support/sessions.ts'
import { temporaryFolder } from '../storage/support/temporary-folder.ts'
import { goOnAsNewer } from '../support/newer.ts'
import { numbered } from '../support/record.ts'
import { factOf, partOf, recordOf, sectionOf, stepOf } from './support/record-of.ts'
import { toldJob } from './support/told-job.ts'

const cover = [
  'begin pump cover off, does not hide',
  'off 4 M6x25 pump cover bolts into new bag bolts',
  'off pump cover into bench',
  'end',
]
const built = ['take 1', 'fit p1', 'fit p2', 'tighten p1: 10 Nm', 'turn', 'turn', 'turn', 'turn', 'done 1']

const home = (rows: readonly string[]) => partOf(stepOf(rows, 1), 'on the machine').map(factOf)

describe('what is on the machine', () => {
  test('came from where it lay, in as many goes as it was fitted', () => {
    const session = toldJob(...cover, 'take 1', 'fit 3 p1', 'move 1 p1 to bench', 'fit 1 p1')
    expect(home(recordOf(session))).toEqual([
      '3 × pump cover bolts M6x25, from bag 1',
      '1 × pump cover bolt M6x25, from the bench',
    ])
  })

  test('is nothing once the step is reopened, and what it was is told there', () => {
    const rows = recordOf(toldJob(...cover, ...built, 'reopen 1 because the gasket was forgotten'))
    expect(home(rows)).toEqual([])
    expect(partOf(stepOf(rows, 1), 'not on the machine')).toEqual([
      '    4 × pump cover bolts M6x25 owed; all of it: on the bench',
      '    1 × pump cover owed; all of it: on the bench',
    ])
    expect(partOf(stepOf(rows, 1), 'tightened').map(factOf)).toContain(
      'no longer counted: 1, 2, 3, 4 in pass 1',
    )
    expect(rows).toContain('step 1, pump cover (to be done again)')
  })

  test('of a set has each position', () => {
    const rows = recordOf(
      toldJob(
        'begin camshafts off, does not hide',
        'off cam caps I1..I2 into new tray 4 slots',
        'end',
        'take 1',
        'fit cam cap I2 at I2',
        'fit cam cap I1 at I1',
      ),
    )
    expect(home(rows)).toEqual(['1 × cam cap I2, from tray 1, slot 2', '1 × cam cap I1, from tray 1, slot 1'])
  })
})

describe('an override', () => {
  const short = [
    ...cover.map((each) => each.replace('4 M6x25', '3 of 4 M6x25')),
    'override start 1 because three will do for a fit',
    'take 1',
    'fit 3 p1',
  ]

  test('stands with its reason in its step and among all overrides', () => {
    const rows = recordOf(toldJob(...short))
    const told = 'overrode the start of step 1, pump cover (pieces short), because three will do for a fit'
    expect(sectionOf(rows, 'OVERRIDES').map(factOf)).toEqual([told])
    expect(partOf(stepOf(rows, 1), 'on the way back').map(factOf)).toContain(told)
  })

  test('that a reopening ended is told with what ended it', () => {
    const rows = recordOf(toldJob(...short, 'reopen 1 because it leaks'))
    expect(sectionOf(rows, 'OVERRIDES').map(factOf)[1]).toBe('ended by: reopened step 1, because it leaks')
  })
})

describe('what was undone', () => {
  test('is left out and counted; put back in force it is told', () => {
    const job = [...cover, 'note: a slip of the pen', 'undo']
    const rows = recordOf(toldJob(...job))
    expect(rows.join('\n')).not.toContain('slip of the pen')
    expect(rows).toContain('Undone: 1 entry, left out here')
    const redone = recordOf(toldJob(...job, 'redo'))
    expect(redone.join('\n')).toContain('slip of the pen')
    expect(redone).toContain('Undone: no entry')
  })
})

describe('labels and pictures', () => {
  const picture = (file: string, belongs: { container: number } | { step: number } | null) => ({
    file,
    sha256: Buffer.from(file).toString('hex').padStart(64, '0').slice(-64),
    taken: null,
    belongs,
  })

  test('pictures are counted for each step, each container and the job, with their files', () => {
    const rows = recordOf(
      toldJob(
        ...cover,
        {
          do: 'add-pictures',
          pictures: [
            picture('a.jpg', { container: 1 }),
            picture('b.jpg', { step: 1 }),
            picture('c.jpg', { container: 1 }),
            picture('d.jpg', null),
            picture('e.jpg', null),
          ],
        },
        'photo g4 to job',
      ),
    )
    expect(sectionOf(rows, 'PICTURES').filter((row) => row !== '')).toEqual([
      '  1 picture of step 1, pump cover: b.jpg',
      '  2 pictures of bag 1 (bolts): a.jpg, c.jpg',
      '  1 picture of the job as a whole: d.jpg',
      '  1 picture not sorted yet: e.jpg',
    ])
  })

  test('a label made void is told with its reason and its successor', () => {
    const rows = recordOf(
      toldJob(...cover, 'bag dry one', 'move p1 to bag 2', 'void bag 1 because oil got at it'),
    )
    const labels = sectionOf(rows, 'CONTAINERS AND LABELS').map(factOf)
    expect(labels.slice(0, 2)).toEqual(['bag 1 (bolts): label code 1, void', 'bag 2 (dry one): label code 2'])
    expect(labels[2]).toMatch(/^label of bag 1 made void.*: oil got at it$/)
  })
})

describe('what is still open', () => {
  test('is the trial balance before the first start', () => {
    const open = sectionOf(recordOf(toldJob(...cover)), 'STILL OPEN').filter((row) => /^ {2}\S/.test(row))
    expect(open.some((row) => row.includes('4 × pump cover bolts M6x25'))).toBe(true)
    expect(asBuilt(toldJob(...cover)).leftovers.length).toBe(open.length)
  })

  test('is, after the first start, the checks not done', () => {
    const started = [...cover, ...built, 'add later check retorque due after 500 km', 'clear', 'started']
    const open = (rows: readonly string[]) => sectionOf(rows, 'STILL OPEN').slice(0, 1)
    expect(open(recordOf(toldJob(...started)))).toEqual([
      '  After the first start, step 2, check retorque: not done, due after 500 km.',
    ])
    expect(open(recordOf(toldJob(...started, 'done 2: none moved', 'close')))).toEqual(['  Nothing.'])
  })
})

test('an empty job has every section, and says that nothing is in it', () => {
  const rows = recordOf(toldJob())
  for (const title of ['CONDITION ON ARRIVAL', 'OVERRIDES', 'RECOUNTS', 'PICTURES', 'STILL OPEN'])
    expect(sectionOf(rows, title)[0]).toMatch(/^ {2}(None|Nothing|There are none)/)
})

test('a journal that breaks off says so, and is told as far as it is good', () => {
  const folder = temporaryFolder()
  const good = toldJob(...cover).entries()
  const n = good.length + 1
  const never = numbered({ type: 'confirmed', mark: 'm9' }, n)
  writeUnasked(folder, [
    ...good,
    never,
    numbered({ type: 'noted', step: null, kind: 'note', text: 'later' }, n + 1),
  ])
  const rows = recordOf(new Session(openJournal(folder, { parse: parseEntry })))
  expect(rows).toContain('The journal is damaged behind that entry: what came later is not in this record.')
  expect(rows.find((row) => row.startsWith('Journal: '))).toContain(`to entry ${good.length},`)
  expect(rows.join('\n')).not.toContain('note: later')
})

test('a journal that a newer program went on with says so, and is told as far as it is known', () => {
  const folder = temporaryFolder()
  const good = toldJob(...cover).entries()
  writeUnasked(folder, good)
  goOnAsNewer(folder)
  const rows = recordOf(new Session(openJournal(folder, { parse: parseEntry })))
  expect(rows.filter((row) => row.includes('what came later is not in this record'))).toEqual([
    'A newer putback wrote the entry behind that one, which this program cannot read: what came later is not in this record.',
  ])
})
