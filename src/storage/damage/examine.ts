import { parseJson } from '../files/parse-json.ts'
import { CRC_BYTES, type LinesRead, type Numbered, readLines } from '../journal/line.ts'
import type { Behind, Examination, Finding } from './finding.ts'
import { type Followed, followChain, type Link } from './follow-chain.ts'
import { type LeftOver, nameLeftOver } from './left-over.ts'
import { outOfPlace } from './out-of-place.ts'
import { type CutUp, cutUp } from './pieces.ts'

export interface Looking<E> {
  /** Throws on a shape it does not accept, NewerEntry on one of a later version. */
  parse: (raw: unknown) => E
  /** The number of the first entry that does not follow from those before it; null when all do. */
  firstUnlawful: (entries: readonly E[]) => number | null
  /** The bytes of other copies of the journal, from which lines may be taken. */
  others?: readonly Uint8Array[] | undefined
}

/**
 * Examines the bytes of a journal beyond the first thing that is wrong: names what is, line by line, and works out the
 * bytes of a mended one. It is certain only where every line that is left out is known to be none of its own, and where
 * the result reads without a problem and breaks no law.
 */
export function examine<E extends Numbered>(bytes: Uint8Array, looking: Looking<E>): Examination<E> {
  const { parse, firstUnlawful, others = [] } = looking
  const file = cutUp(bytes)
  const followed = followChain(file, others.map(cutUp), parse)
  const leftOver = nameLeftOver(followed)
  const read = readLines(joined(followed.links.map(({ text }) => text)), parse)
  const lawless = firstUnlawful(read.entries)
  const entries = lawless === null ? read.entries : read.entries.slice(0, lawless - 1)
  const findings = grouped([
    ...ofFile(file),
    ...ofChain(followed.links),
    ...leftOver.findings,
    ...ofReading(read, lawless, followed.links),
  ])
  const verdict = verdictOf(findings, followed.links.length)
  // What another copy has is taken only where that makes the journal whole: it may have gone another way.
  if (verdict === 'lossy' && findings.some(({ kind }) => kind === 'brought'))
    return examine(bytes, { ...looking, others: [] })
  const stands = findings.every(({ isSure }) => isSure) ? followed.links.length : entries.length
  return {
    findings,
    entries,
    behind: behindOf(followed, leftOver, entries.length, parse),
    mended: joined(followed.links.slice(0, stands).map(({ text }) => text)),
    rest: restOf(followed, stands),
    verdict,
  }
}

/** A journal of which nothing stands is never put right by emptying it. */
function verdictOf(findings: readonly Finding[], length: number): Examination<unknown>['verdict'] {
  if (findings.length === 0) return 'sound'
  if (findings.some(({ kind }) => kind === 'newer')) return 'newer'
  return length > 0 && findings.every(({ isSure }) => isSure) ? 'certain' : 'lossy'
}

/** What an editor did to the file as a whole. */
function ofFile({ hasMark, returns: [first, ...more], returns }: CutUp): Finding[] {
  const found: Finding[] = []
  if (hasMark) found.push({ kind: 'mark', line: 1, last: 1, isSure: true })
  if (first !== undefined)
    found.push({
      kind: 'returns',
      line: first,
      last: more.at(-1) ?? first,
      count: returns.length,
      isSure: true,
    })
  return found
}

function ofChain(links: readonly Link[]): Finding[] {
  const found: Finding[] = []
  for (const [index, { how, piece }] of links.entries()) {
    const line = piece?.line ?? index + 1
    if (how !== 'written') found.push({ kind: how, line, last: line, entry: index + 1, isSure: true })
  }
  const own = links.flatMap(({ piece }, index) => (piece ? [{ piece, entry: index + 1 }] : []))
  for (const index of outOfPlace(own.map(({ piece }) => piece.start))) {
    const { piece, entry } = own[index] as (typeof own)[number]
    found.push({ kind: 'moved', line: piece.line, last: piece.line, entry, isSure: true })
  }
  return found
}

/** What the chain cannot show: a line that is as it was written, but that cannot be read, or cannot be. */
function ofReading<E>(
  { entries, problem }: LinesRead<E>,
  lawless: number | null,
  links: readonly Link[],
): Finding[] {
  const at = (entry: number) => {
    const line = links[entry - 1]?.piece?.line ?? entry
    return { line, last: line, entry, isSure: false }
  }
  const found: Finding[] = []
  if (lawless !== null) found.push({ kind: 'unlawful', ...at(lawless) })
  if (problem !== null)
    found.push({ kind: problem.kind === 'newer' ? 'newer' : 'unknown', ...at(entries.length + 1) })
  return found
}

function behindOf<E>(
  { links }: Followed,
  { behind }: LeftOver,
  stands: number,
  parse: (raw: unknown) => E,
): Behind<E>[] {
  const inChain = links.slice(stands).map(({ text, piece }, index) => ({
    line: piece?.line ?? stands + index + 1,
    n: stands + index + 1,
    entry: entryIn(text, parse),
    isProved: true,
  }))
  const left = behind.map(({ piece, facts, isProved }) => ({
    line: piece.line,
    n: facts.n,
    entry: entryIn(piece.text, parse),
    isProved,
  }))
  return [...inChain, ...left]
}

function entryIn<E>(text: Buffer, parse: (raw: unknown) => E): E | null {
  try {
    return parse(parseJson(text.subarray(CRC_BYTES + 1)))
  } catch {
    return null
  }
}

/** What a journal of the first lines does not hold of the file, in its order. */
function restOf({ links, left }: Followed, stands: number): Uint8Array {
  const cut = links.slice(stands).map(({ text, piece }) => ({ text, start: piece?.start ?? 0 }))
  const rest = [...left, ...cut].filter(({ text }) => text.length > 0)
  return joined(rest.sort((one, other) => one.start - other.start).map(({ text }) => text))
}

const LINE_FEED = Buffer.from('\n')

function joined(lines: readonly Uint8Array[]): Buffer {
  return Buffer.concat(lines.flatMap((line) => [line, LINE_FEED]))
}

/** By line, and what is alike on lines that follow each other as one. */
function grouped(findings: readonly Finding[]): Finding[] {
  const groups: Finding[] = []
  for (const finding of [...findings].sort((one, other) => one.line - other.line)) {
    const last = groups.at(-1)
    if (last && goesOn(last, finding)) {
      last.last = finding.last
      if (finding.entry !== undefined) last.lastEntry = finding.entry
      if (finding.bytes !== undefined) last.bytes = (last.bytes ?? 0) + finding.bytes
    } else {
      groups.push({ ...finding })
    }
  }
  return groups
}

function goesOn(group: Finding, { kind, line, entry, isSure }: Finding): boolean {
  const isNext = group.kind === kind && group.isSure === isSure && group.last + 1 === line
  const isNextEntry =
    entry === undefined ? group.entry === undefined : (group.lastEntry ?? group.entry) === entry - 1
  return isNext && kind !== 'missing' && kind !== 'returns' && isNextEntry
}
