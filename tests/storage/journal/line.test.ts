import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { ENTRY_VERSION } from '../../../src/journal/entry.ts'
import { FILE_START, MAX_LINE_BYTES, readLines, writeLine } from '../../../src/storage/journal/line.ts'
import { type Note, note, notes, parseFirstNote, parseNote } from '../support/notes.ts'

describe('one line', () => {
  test('is its checksum, a space, the entry and a line feed', () => {
    const { text, crc } = writeLine('00000000', note(1))
    expect(text).toBe(`${crc} ${JSON.stringify(note(1))}\n`)
    expect(crc).toMatch(/^[0-9a-f]{8}$/)
  })

  // The reference is computed bit by bit from the polynomial of IEEE 802.3 (clause 3.2.9, frame check sequence).
  // 'cbf43926' for '123456789' is the check value that catalogues of CRC algorithms give, here from memory.
  test('has the CRC-32 of the checksum before and the entry', () => {
    expect(bitwiseCrc32('123456789')).toBe('cbf43926')
    const first = writeLine('00000000', note(1))
    const second = writeLine(first.crc, note(2, 'Öldruckschalter, 1 Dichtring — “blue twin”'))
    expect(first.crc).toBe(bitwiseCrc32(`00000000${JSON.stringify(note(1))}`))
    expect(second.crc).toBe(bitwiseCrc32(first.crc + second.text.slice(9, -1)))
  })

  test('of more than 1 MiB is refused, of just 1 MiB is not', () => {
    const frame = writeLine('00000000', note(1, '')).text.length
    const longest = note(1, 'x'.repeat(MAX_LINE_BYTES - frame))
    const { text } = writeLine('00000000', longest)
    expect(text).toHaveLength(MAX_LINE_BYTES)
    expect(readLines(Buffer.from(text), parseNote)).toMatchObject({ entries: [longest], problem: null })
    expect(() => writeLine('00000000', note(1, `${longest.text}x`))).toThrow(RangeError)
    expect(readLines(lined(JSON.stringify(note(1, `${longest.text}x`))), parseNote).problem).toMatchObject({
      kind: 'damaged',
      line: 1,
      why: 'too-long',
    })
  })

  test('needs an entry', () => {
    expect(() => writeLine('00000000', undefined)).toThrow(TypeError)
  })
})

describe('reading', () => {
  test('gives back any text, and frozen', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'binary' }), { maxLength: 8 }), (texts) => {
        const written = texts.map((text, index) => note(index + 1, text))
        const { entries, problem } = readLines(fileOf(written), parseNote)
        expect(entries).toEqual(written)
        expect(problem).toBeNull()
      }),
    )
    const [entry] = readLines(fileOf(notes(1)), parseNote).entries
    expect(() => Object.assign(entry ?? {}, { text: 'other' })).toThrow(TypeError)
  })

  test('nothing is an empty journal', () => {
    expect(readLines(Buffer.alloc(0), parseNote)).toEqual({
      entries: [],
      goodBytes: 0,
      lastCrc: '00000000',
      end: FILE_START,
      problem: null,
    })
  })

  test('goes on from where it stopped', () => {
    const file = fileOf(notes(5))
    const first = readLines(file.subarray(0, file.length - 1), parseNote)
    expect(first.entries).toEqual(notes(4))
    expect(first.problem).toMatchObject({ kind: 'torn', line: 5, byteOffset: first.goodBytes })
    const rest = readLines(file.subarray(first.goodBytes), parseNote, first.end)
    expect(rest).toMatchObject({ entries: [note(5)], problem: null, end: { line: 5, byte: file.length } })
  })

  test('every way to cut a file off leaves whole lines and a torn one', () => {
    const written = notes(4)
    const file = fileOf(written)
    for (let length = 0; length < file.length; length += 1) {
      const whole = file.subarray(0, length).toString().split('\n').length - 1
      const { entries, goodBytes, problem } = readLines(file.subarray(0, length), parseNote)
      expect(entries).toEqual(written.slice(0, whole))
      expect(problem).toEqual(
        length === goodBytes
          ? null
          : { kind: 'torn', line: whole + 1, byteOffset: goodBytes, bytes: length - goodBytes },
      )
    }
  })
})

describe('damage', () => {
  test('every flipped bit of a file of 20 lines is found, in its line', () => {
    const written = notes(20)
    const file = fileOf(written)
    let line = 1
    for (let byte = 0; byte < file.length; byte += 1) {
      for (let bit = 0; bit < 8; bit += 1) {
        const flipped = Buffer.from(file)
        flipped[byte] = (file[byte] ?? 0) ^ (1 << bit)
        const { entries, problem } = readLines(flipped, parseNote)
        // Only without the last line feed it looks like a line that was never finished.
        const kind = byte === file.length - 1 ? 'torn' : 'damaged'
        if (problem?.kind !== kind || problem.line !== line || entries.length !== line - 1)
          expect.fail(`bit ${bit} of byte ${byte}: ${JSON.stringify(problem)}`)
      }
      if (file[byte] === 0x0a) line += 1
    }
    expect(line).toBe(21)
  })

  test('whatever is done to a file, what is read is a start of what was written', () => {
    const written = notes(12)
    const file = fileOf(written)
    const place = fc.nat({ max: file.length })
    fc.assert(
      fc.property(place, place, fc.uint8Array({ maxLength: 200 }), (from, to, put) => {
        const changed = Buffer.concat([file.subarray(0, from), put, file.subarray(to)])
        const { entries, goodBytes, problem } = readLines(changed, parseNote)
        expect(entries).toEqual(written.slice(0, entries.length))
        expect(changed.subarray(0, goodBytes)).toEqual(file.subarray(0, goodBytes))
        if (!changed.equals(file.subarray(0, goodBytes))) expect(problem).not.toBeNull()
      }),
      { numRuns: 2000 },
    )
  })

  const lines = fileOf(notes(8))
    .toString()
    .split(/(?<=\n)/)
  const others = fileOf(notes(8, 'b'))
    .toString()
    .split(/(?<=\n)/)
  test.each([
    { what: 'a line dropped', file: lines.toSpliced(3, 1), line: 4, why: 'chain' },
    { what: 'the first line dropped', file: lines.slice(1), line: 1, why: 'chain' },
    { what: 'a line doubled', file: lines.toSpliced(3, 0, lines[3] ?? ''), line: 5, why: 'chain' },
    {
      what: 'two lines swapped',
      file: lines.toSpliced(3, 2, lines[4] ?? '', lines[3] ?? ''),
      line: 4,
      why: 'chain',
    },
    {
      what: 'the last line moved to the front',
      file: [lines[7] ?? '', ...lines.slice(0, 7)],
      line: 1,
      why: 'chain',
    },
    {
      what: 'one line of another journal',
      file: lines.toSpliced(3, 1, others[3] ?? ''),
      line: 4,
      why: 'checksum',
    },
    {
      what: 'the rest of another journal',
      file: [...lines.slice(0, 5), ...others.slice(5)],
      line: 6,
      why: 'checksum',
    },
    { what: 'two journals one after the other', file: [...lines, ...others], line: 9, why: 'chain' },
    { what: 'an empty line', file: lines.toSpliced(3, 0, '\n'), line: 4, why: 'checksum' },
    {
      what: 'line ends of another system',
      file: lines.map((line) => line.replace('\n', '\r\n')),
      line: 1,
      why: 'checksum',
    },
    {
      what: 'the last line changed, its end in place',
      file: lines.with(7, lines[7]?.replace('slot', 'slat') ?? ''),
      line: 8,
      why: 'checksum',
    },
    {
      what: 'zeros behind the last line, and an end',
      file: [...lines, '\0\0\0\n'],
      line: 9,
      why: 'checksum',
    },
  ])('$what is named as line $line', ({ file, line, why }) => {
    const { entries, problem, goodBytes } = readLines(Buffer.from(file.join('')), parseNote)
    expect(problem).toMatchObject({ kind: 'damaged', line, why, byteOffset: goodBytes })
    expect(entries).toEqual(notes(8).slice(0, line - 1))
  })

  test('a right checksum does not make a line right', () => {
    expect(readLines(lined('{"n":1'), parseNote).problem).toMatchObject({ line: 1, why: 'json' })
    expect(readLines(lined('{"n":1}'), parseNote).problem).toMatchObject({
      line: 1,
      why: 'shape',
      cause: new TypeError('a note needs its numbers'),
    })
    expect(readLines(lined(JSON.stringify(note(2))), parseNote).problem).toMatchObject({
      line: 1,
      why: 'sequence',
    })
  })

  test('an entry of a newer program, whole and in its place, is named with its version; what is before it is good', () => {
    const lines = chained([note(1), note(2), { ...note(3), v: 3 }, note(4)])
    const read = readLines(Buffer.from(lines.join('')), parseFirstNote)
    const byteOffset = lines.slice(0, 2).join('').length
    expect(read.entries).toEqual(notes(2))
    expect(read.problem).toEqual({ kind: 'newer', line: 3, byteOffset, version: 3, known: ENTRY_VERSION })
    // What is not as it was written is damage, whoever wrote it.
    const flipped = lines.with(2, lines[2]?.replace('slot', 'slat') ?? '')
    expect(readLines(Buffer.from(flipped.join('')), parseFirstNote).problem).toMatchObject({
      why: 'checksum',
      line: 3,
    })
    const moved = [lines[0], lines[2], lines[3]]
    expect(readLines(Buffer.from(moved.join('')), parseFirstNote).problem).toMatchObject({
      why: 'chain',
      line: 2,
    })
  })

  test.each([
    '{"n":1,"id":"a","__proto__":{"cleared":true}}',
    '{"n":1,"id":"a","piece":[{"__proto__":null}]}',
    String.raw`{"n":1,"id":"a","\u005f_proto\u005F_":{"cleared":true}}`,
  ])('a key that would change the nature of an object: %s', (json) => {
    const lenient = (raw: unknown) => raw as Note
    expect(readLines(lined(json), lenient).problem).toMatchObject({ line: 1, why: 'json' })
    expect(readLines(lined('{"n":1,"id":"a","text":"__proto__"}'), lenient).problem).toBeNull()
  })

  test('the text shown is short and holds nothing that a terminal would obey', () => {
    const { problem } = readLines(Buffer.from(`\x1b[2J\x07\u202e${'é'.repeat(300)}\n`), parseNote)
    const shown = problem?.kind === 'damaged' ? problem.text : ''
    expect(shown).toMatch(/^�\[2J��é+$/)
    expect(shown).toHaveLength(120)
  })
})

function fileOf(entries: Note[]): Buffer {
  let crc = '00000000'
  const texts = entries.map((entry) => {
    const line = writeLine(crc, entry)
    crc = line.crc
    return line.text
  })
  return Buffer.from(texts.join(''))
}

/** One line with a right checksum, whatever its content. */
function chained(entries: readonly Note[]): string[] {
  let crc = FILE_START.crc
  return entries.map((entry) => {
    const line = writeLine(crc, entry)
    crc = line.crc
    return line.text
  })
}

function lined(json: string): Buffer {
  return Buffer.from(`${bitwiseCrc32(`00000000${json}`)} ${json}\n`)
}

function bitwiseCrc32(text: string): string {
  let crc = 0xffffffff
  for (const byte of Buffer.from(text)) {
    crc ^= byte
    for (let bit = 0; bit < 8; bit += 1) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1
  }
  return (~crc >>> 0).toString(16).padStart(8, '0')
}
