import { describe, expect, test } from 'vitest'
import { NewerEntry } from '../../../src/journal/upgrades.ts'
import { examine } from '../../../src/storage/damage/examine.ts'
import { fileOf, linesOf } from '../support/journal-bytes.ts'
import { type Note, notes, parseNote } from '../support/notes.ts'

const OURS = fileOf(notes(12))
const THEIRS = fileOf(notes(15, 'b'))
/** Of a job that has less in it. */
const SHORT = fileOf(notes(9, 'c'))
const lines = linesOf(OURS)
const theirs = linesOf(THEIRS)

describe('what is certain is mended to the very bytes', () => {
  const swapped = (one: number, other: number) => {
    const copy = [...lines]
    copy[one - 1] = lines[other - 1] as Buffer
    copy[other - 1] = lines[one - 1] as Buffer
    return Buffer.concat(copy)
  }
  const with_ = (at: number, ...more: Buffer[]) =>
    Buffer.concat([...lines.slice(0, at), ...more, ...lines.slice(at)])
  const text = (words: string) => Buffer.from(words)

  test.each<[string, Buffer, object[]]>([
    ['a line doubled', with_(4, lines[3] as Buffer), [{ kind: 'doubled', line: 5, entry: 4 }]],
    ['the first line doubled', with_(0, lines[0] as Buffer), [{ kind: 'doubled', line: 2, entry: 1 }]],
    ['a line doubled at the end', with_(12, lines[2] as Buffer), [{ kind: 'doubled', line: 13, entry: 3 }]],
    [
      'the whole file doubled',
      Buffer.concat([OURS, OURS]),
      [{ kind: 'doubled', line: 13, last: 24, entry: 1, lastEntry: 12 }],
    ],
    ['neighbours swapped', swapped(5, 6), [{ kind: 'moved', line: 6, entry: 5 }]],
    ['the first two swapped', swapped(1, 2), [{ kind: 'moved', line: 2, entry: 1 }]],
    [
      'a line moved far',
      Buffer.concat([...lines.slice(0, 2), ...lines.slice(3), lines[2] as Buffer]),
      [{ kind: 'moved', line: 12, entry: 3 }],
    ],
    [
      'all lines backwards',
      Buffer.concat([...lines].reverse()),
      [expect.objectContaining({ kind: 'moved' })],
    ],
    ['a line of another journal', with_(7, theirs[7] as Buffer), [{ kind: 'foreign', line: 8, last: 8 }]],
    ['another journal behind it', Buffer.concat([OURS, SHORT]), [{ kind: 'foreign', line: 13, last: 21 }]],
    ['another journal in the middle', with_(6, ...linesOf(SHORT)), [{ kind: 'foreign', line: 7, last: 15 }]],
    [
      'CR LF',
      text(OURS.toString().replaceAll('\n', '\r\n')),
      [{ kind: 'returns', line: 1, last: 12, count: 12 }],
    ],
    ['a byte order mark', Buffer.concat([text('\ufeff'), OURS]), [{ kind: 'mark', line: 1 }]],
    [
      'a mark and CR LF',
      text(`\ufeff${OURS.toString().replaceAll('\n', '\r\n')}`),
      [{ kind: 'mark' }, { kind: 'returns' }],
    ],
    ['blank lines', with_(3, text('\n \t\n')), [{ kind: 'blank', line: 4, last: 5 }]],
    [
      'zeros at the end',
      Buffer.concat([OURS, Buffer.alloc(4096)]),
      [{ kind: 'zeros', line: 13, bytes: 4096 }],
    ],
    ['zeros between lines', with_(3, Buffer.alloc(512)), [{ kind: 'zeros', line: 4, bytes: 512 }]],
    [
      'a torn end and zeros',
      Buffer.concat([OURS, text('0123abcd {"v":1,"n"'), Buffer.alloc(100)]),
      [
        { kind: 'torn', bytes: 19 },
        { kind: 'zeros', bytes: 100 },
      ],
    ],
    [
      'garbage without an end',
      Buffer.concat([OURS, text('what is this')]),
      [{ kind: 'torn', line: 13, bytes: 12 }],
    ],
    ['garbage between lines', with_(3, text('what is this\n')), [{ kind: 'illegible', line: 4 }]],
    ['no feed behind the last line', OURS.subarray(0, -1), [{ kind: 'unended', line: 12, entry: 12 }]],
    [
      'no feed and a CR',
      Buffer.concat([OURS.subarray(0, -1), text('\r')]),
      [{ kind: 'returns' }, { kind: 'unended', entry: 12 }],
    ],
    [
      'several at once',
      Buffer.concat([swapped(2, 3), lines[0] as Buffer, theirs[4] as Buffer, Buffer.alloc(9)]),
      [
        { kind: 'moved', line: 3, entry: 2 },
        { kind: 'doubled', line: 13, entry: 1 },
        { kind: 'foreign', line: 14 },
        { kind: 'zeros', line: 15 },
      ],
    ],
  ])('%s', (_what, bytes, findings) => {
    const found = examine(bytes, looking)
    expect(found.findings.slice(0, findings.length)).toMatchObject(findings)
    expect(found.findings.every(({ isSure }) => isSure)).toBe(true)
    expect(found).toMatchObject({ verdict: 'certain', behind: [] })
    expect(Buffer.from(found.mended).equals(OURS)).toBe(true)
  })
})

describe('what is not certain is named, and what stands before it is kept', () => {
  const without = (...entries: number[]) =>
    Buffer.concat(lines.filter((_, index) => !entries.includes(index + 1)))
  const instead = (entry: number, ...by: Buffer[]) =>
    Buffer.concat([...lines.slice(0, entry - 1), ...by, ...lines.slice(entry)])
  const garbled = (entry: number) => {
    const line = Buffer.from(lines[entry - 1] as Buffer)
    line.fill('?', 9, 14)
    return line
  }
  const reworded = (entry: number) =>
    Buffer.from((lines[entry - 1] as Buffer).toString().replace('cap bolts', 'cap balls'))

  test.each<[string, Buffer, { stands: number; findings: object[]; behind: [number, boolean][] }]>([
    [
      'a missing line',
      without(5),
      {
        stands: 4,
        findings: [{ kind: 'missing', line: 5, entry: 5, lastEntry: 5 }],
        behind: [
          [6, false],
          [7, true],
          [8, true],
          [9, true],
          [10, true],
          [11, true],
          [12, true],
        ],
      },
    ],
    [
      'the first line missing',
      without(1),
      {
        stands: 0,
        findings: [{ kind: 'missing', line: 1, entry: 1, lastEntry: 1 }],
        behind: expect.anything(),
      },
    ],
    [
      'the last but one missing',
      without(11),
      { stands: 10, findings: [{ kind: 'missing', entry: 11, lastEntry: 11 }], behind: [[12, false]] },
    ],
    [
      'lines missing in two places',
      without(5, 6, 9),
      {
        stands: 4,
        findings: [
          { kind: 'missing', line: 5, entry: 5, lastEntry: 6 },
          { kind: 'missing', line: 7, entry: 9, lastEntry: 9 },
        ],
        behind: [
          [7, false],
          [8, true],
          [10, false],
          [11, true],
          [12, true],
        ],
      },
    ],
    [
      'a line garbled: the one behind it is proved by what is left of its checksum',
      instead(5, garbled(5)),
      {
        stands: 4,
        findings: [{ kind: 'illegible', line: 5, entry: 5 }],
        behind: [
          [6, true],
          [7, true],
          [8, true],
          [9, true],
          [10, true],
          [11, true],
          [12, true],
        ],
      },
    ],
    [
      'a word changed in an editor',
      instead(11, reworded(11)),
      {
        stands: 10,
        findings: [{ kind: 'altered', line: 11, entry: 11 }],
        behind: [
          [11, false],
          [12, true],
        ],
      },
    ],
    [
      'the last line garbled',
      instead(12, garbled(12)),
      { stands: 11, findings: [{ kind: 'illegible', line: 12, entry: 12 }], behind: [] },
    ],
    [
      'a line replaced by the same one of another journal',
      instead(5, theirs[4] as Buffer),
      {
        stands: 4,
        findings: [
          { kind: 'foreign', line: 5 },
          { kind: 'missing', line: 6, entry: 5, lastEntry: 5 },
        ],
        behind: [
          [6, false],
          [7, true],
          [8, true],
          [9, true],
          [10, true],
          [11, true],
          [12, true],
        ],
      },
    ],
    [
      'a line replaced by a later one of another journal',
      instead(5, theirs[14] as Buffer),
      {
        stands: 4,
        findings: [
          { kind: 'foreign', line: 5 },
          { kind: 'missing', entry: 5 },
        ],
        behind: expect.anything(),
      },
    ],
    [
      'zeros in the place of two lines',
      instead(5, Buffer.alloc(100)).subarray(0),
      {
        stands: 4,
        findings: [
          { kind: 'zeros', line: 5 },
          { kind: 'missing', entry: 5 },
        ],
        behind: expect.anything(),
      },
    ],
    [
      'a copy that went another way mixed in',
      Buffer.concat([OURS, ...linesOf(fileOf([...notes(8), ...notes(11, 'c').slice(8)])).slice(8)]),
      {
        stands: 12,
        findings: [{ kind: 'other-way', line: 13, last: 15, entry: 9, lastEntry: 11 }],
        behind: [],
      },
    ],
    [
      'a later line of another journal: it could be one of ours, with those between them gone',
      Buffer.concat([...lines.slice(0, 7), theirs[14] as Buffer, ...lines.slice(7)]),
      { stands: 12, findings: [{ kind: 'foreign', line: 8, last: 8, isSure: false }], behind: [[15, false]] },
    ],
    [
      'a longer journal behind it: nobody can say which of them it is',
      Buffer.concat([OURS, THEIRS]),
      {
        stands: 12,
        findings: [{ kind: 'foreign', line: 13, last: 27, isSure: false }],
        behind: expect.anything(),
      },
    ],
    [
      'another journal in front: nobody can say whose file it is',
      Buffer.concat([...theirs.slice(3, 6), OURS]),
      { stands: 12, findings: [{ kind: 'foreign', line: 1, last: 3, isSure: false }], behind: [] },
    ],
  ])('%s', (_what, bytes, { stands, findings, behind }) => {
    const found = examine(bytes, looking)
    expect(found.findings).toMatchObject(findings)
    expect(found.verdict).toBe('lossy')
    expect(found.behind.map(({ n, isProved }) => [n, isProved])).toEqual(behind)
    expect(found.entries).toEqual(notes(stands))
    expect(Buffer.from(found.mended).equals(Buffer.concat(lines.slice(0, stands)))).toBe(true)
  })

  test.each([
    ['nothing but zeros', Buffer.alloc(300)],
    ['a first line that is torn', OURS.subarray(0, 60)],
    ['no line of a journal', Buffer.from('a shopping list\nbolts\n')],
  ])('%s: nothing stands, and that is not put right by emptying the file', (_what, bytes) => {
    const found = examine(bytes, looking)
    expect(found).toMatchObject({ verdict: 'lossy', entries: [] })
    expect(found.findings.length).toBeGreaterThan(0)
  })

  test('one line of another journal in front: the reader takes that for the job, the doctor leaves it open', () => {
    const found = examine(Buffer.concat([theirs[0] as Buffer, OURS]), looking)
    expect(found).toMatchObject({
      verdict: 'lossy',
      findings: [{ kind: 'foreign', line: 2, last: 13, isSure: false }],
      entries: notes(1, 'b'),
    })
    expect(OURS.equals(found.rest)).toBe(true)
  })

  test('nothing of the file is lost between what stands and the rest', () => {
    for (const bytes of [
      without(5),
      instead(5, garbled(5)),
      instead(3, theirs[4] as Buffer),
      OURS.subarray(0, -3),
    ]) {
      const { mended, rest } = examine(bytes, looking)
      const kept = [...linesOf(Buffer.from(mended)), ...linesOf(Buffer.from(rest))].map((line) =>
        line.toString(),
      )
      const had = linesOf(bytes).map((line) => (line.at(-1) === 0x0a ? `${line}` : `${line}\n`))
      expect(kept.sort()).toEqual(had.sort())
    }
  })

  test('an entry that breaks a law, one of an unknown shape and one of a newer program', () => {
    expect(examine(OURS, { ...looking, firstUnlawful: () => 7 })).toMatchObject({
      findings: [{ kind: 'unlawful', line: 7, entry: 7 }],
      verdict: 'lossy',
      entries: notes(6),
      behind: [7, 8, 9, 10, 11, 12].map((n) => ({ n, isProved: true })),
    })
    const odd = fileOf([...notes(3), { ...notes(4)[3], colour: 'red' }, ...notes(5).slice(4)])
    expect(examine(odd, looking)).toMatchObject({
      findings: [{ kind: 'unknown', line: 4, entry: 4 }],
      verdict: 'lossy',
      entries: notes(3),
      behind: [
        { n: 4, entry: null },
        { n: 5, entry: notes(5)[4] },
      ],
    })
    const newer = (raw: unknown) => {
      if ((raw as Note).n === 4) throw new NewerEntry(9)
      return parseNote(raw)
    }
    expect(examine(OURS, { ...looking, parse: newer })).toMatchObject({
      findings: [{ kind: 'newer', line: 4, entry: 4 }],
      verdict: 'newer',
    })
  })
})

describe('with another copy', () => {
  const from = (bytes: Buffer, ...others: Buffer[]) => examine(bytes, { ...looking, others })
  const some = (...entries: number[]) =>
    Buffer.concat(lines.filter((_, index) => entries.includes(index + 1)))

  test.each([
    [
      'what is missing',
      some(1, 2, 3, 7, 8, 9, 10, 11, 12),
      { kind: 'brought', line: 4, entry: 4, lastEntry: 6 },
    ],
    ['the first line', some(2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12), { kind: 'brought', entry: 1 }],
    ['the end', some(1, 2, 3), { kind: 'brought', entry: 4, lastEntry: 12 }],
    ['all of it', Buffer.alloc(0), { kind: 'brought', entry: 1, lastEntry: 12 }],
  ])('%s is taken from it', (_what, bytes, finding) => {
    const found = from(bytes, OURS)
    expect(found.findings).toMatchObject([finding])
    expect(found.verdict).toBe('certain')
    expect(Buffer.from(found.mended).equals(OURS)).toBe(true)
  })

  test('two damaged copies make a whole one, if no line is wrong in both', () => {
    const found = from(some(1, 2, 4, 5, 7, 8, 9, 10, 11), some(3, 6, 8, 12))
    expect(found.verdict).toBe('certain')
    expect(Buffer.from(found.mended).equals(OURS)).toBe(true)
  })

  test('an altered line gives way to the one that was written', () => {
    const bytes = Buffer.from(OURS.toString().replace('7 cap bolts', '9 cap bolts'))
    const found = from(bytes, OURS)
    expect(found.findings).toMatchObject([
      { kind: 'brought', entry: 7 },
      { kind: 'altered', line: 7, entry: 7, isSure: true },
    ])
    expect(Buffer.from(found.mended).equals(OURS)).toBe(true)
  })

  test('a copy that went another way takes nothing of what stands here', () => {
    const copy = fileOf([...notes(4), ...notes(14, 'c').slice(4)])
    expect(from(OURS, copy)).toMatchObject({ verdict: 'sound', findings: [] })
    expect(from(some(1, 2, 3, 4, 6, 7, 8), copy)).toMatchObject({ verdict: 'lossy', entries: notes(4) })
  })

  test.each([
    ['illegible', (line: Buffer) => line.fill('?', 9, 20)],
    ['altered', (line: Buffer) => line.fill('9', line.length - 14, line.length - 12)],
  ])('a last line that is %s gives way to the one with its checksum', (kind, damage) => {
    const copy = Buffer.from(OURS)
    damage(copy.subarray(OURS.length - (lines[11] as Buffer).length))
    const found = from(copy, OURS)
    expect(found.findings).toContainEqual(expect.objectContaining({ kind, entry: 12, isSure: true }))
    expect(found.verdict).toBe('certain')
    expect(Buffer.from(found.mended).equals(OURS)).toBe(true)
  })

  test('another job is of no use', () => {
    const found = from(some(1, 2, 3, 5, 6), THEIRS)
    expect(found).toMatchObject({ verdict: 'lossy', entries: notes(3) })
  })
})

const looking = { parse: parseNote, firstUnlawful: (_: readonly Note[]) => null }
