import { FILE_START } from '../journal/line.ts'
import type { Finding } from './finding.ts'
import type { Followed, Link } from './follow-chain.ts'
import { factsOf, givenBy, gives, type LineFacts } from './line-facts.ts'
import type { Piece } from './pieces.ts'

/** A line that the chain did not reach, and that can be read by itself. */
export interface Legible {
  piece: Piece
  facts: LineFacts
  /** Whether the line before it stands in the file too, as far as its checksum goes: then this one is as it was written. */
  isProved: boolean
}

/** What is left over of a file, named: and the lines behind the damage, which are neither here nor there. */
export interface LeftOver {
  findings: Finding[]
  behind: Legible[]
}

/** Names what is left over of a file when its chain was followed as far as it goes. */
export function nameLeftOver(followed: Followed): LeftOver {
  if (followed.left.length === 0) return { findings: [], behind: [] }
  const known = knownOf(followed)
  const findings: Finding[] = []
  const beyond: (Legible | Piece)[] = []
  for (const piece of followed.left) {
    const named = nameOf(piece, known)
    if ('kind' in named) findings.push(named)
    else beyond.push(named)
  }
  const behind = nameBeyond(beyond, known)
  return { findings: [...findings, ...behind.findings], behind: behind.behind }
}

interface Known {
  /** How many entries the chain has. */
  length: number
  /** Where its last line stands in the file. */
  end: number
  /** Which entry gives that to the next; 0 for the start of the file. */
  entryGiving: ReadonlyMap<number, number>
  entryOfText: ReadonlyMap<string, number>
  brought: ReadonlySet<number>
  /** The last entry that stands in the file itself: it proves all before it, wherever they come from. */
  lastOwn: number
  facts: ReadonlyMap<Piece, LineFacts>
  leftGiving: ReadonlyMap<number, Piece>
  leftFollows: ReadonlySet<number>
  /** False where the file begins with a line that is not in the chain, or most of it is not: then nobody can say whose it is. */
  isOurs: boolean
  /** What was found out by `rootOf`. */
  roots: Map<Piece, LineFacts>
}

function knownOf({ links, left }: Followed): Known {
  const entryOfText = new Map(links.map(({ text }, index) => [textOf(text), index + 1]))
  const starts = links.flatMap(({ piece }) => piece?.start ?? [])
  const facts = new Map<Piece, LineFacts>()
  const leftGiving = new Map<number, Piece>()
  for (const piece of left) {
    const said = piece.form === 'text' ? factsOf(piece.text) : null
    if (said !== null) facts.set(piece, said)
    const given = givenBy(piece.text)
    if (given !== null) leftGiving.set(given, piece)
  }
  const first = left.find((piece) => facts.has(piece))
  const strangers = [...facts.keys()].filter(({ text }) => !entryOfText.has(textOf(text))).length
  return {
    length: links.length,
    end: starts.reduce((most, start) => Math.max(most, start), -1),
    entryGiving: new Map([[gives(FILE_START.crc), 0], ...links.map(givenByEntry)]),
    entryOfText,
    brought: new Set(links.flatMap(({ how }, index) => (how === 'brought' ? index + 1 : []))),
    lastOwn: links.reduce((last, { piece }, index) => (piece ? index + 1 : last), 0),
    facts,
    leftGiving,
    roots: new Map(),
    leftFollows: new Set([...facts.values()].map(({ follows }) => follows)),
    isOurs:
      first === undefined ||
      (strangers < links.length &&
        (entryOfText.has(textOf(first.text)) || starts.some((start) => start < first.start))),
  }
}

function givenByEntry({ crc }: Link, index: number): [number, number] {
  return [gives(crc), index + 1]
}

/** What a piece is for sure; else the line that it is by itself, or the piece where it is none. */
function nameOf(piece: Piece, known: Known): Finding | Legible | Piece {
  const at = { line: piece.line, last: piece.last }
  if (piece.form === 'zeros') return { kind: 'zeros', ...at, bytes: piece.text.length, isSure: true }
  if (piece.form === 'blank') return { kind: 'blank', ...at, isSure: true }
  const twin = known.entryOfText.get(textOf(piece.text))
  if (twin !== undefined) return { kind: 'doubled', ...at, entry: twin, isSure: true }
  const facts = known.facts.get(piece)
  const isWithin = piece.start < known.end
  const replaced = replacedBy(piece, known)
  if (!facts) {
    if (replaced !== undefined) return { kind: 'illegible', ...at, entry: replaced, isSure: true }
    if (piece.isOpenEnd) return { kind: 'torn', ...at, bytes: piece.text.length, isSure: true }
    // The chain holds without it, before and behind: it took the place of nothing.
    return isWithin ? { kind: 'illegible', ...at, isSure: true } : piece
  }
  const root = rootOf(piece, known)
  const fork = known.entryGiving.get(root.follows)
  if (fork !== undefined && fork > 0 && root.n === fork + 1)
    return { kind: 'other-way', ...at, entry: facts.n, isSure: false }
  // With a number past the end it may be of another journal, or out of its place with those between them gone.
  if (root.n > known.length) return { piece, facts, isProved: known.leftGiving.has(facts.follows) }
  if (known.brought.has(facts.n)) {
    // Behind the last line of the file itself a copy may have gone another way.
    const isSure = replaced !== undefined || facts.n < known.lastOwn
    return { kind: 'altered', ...at, entry: facts.n, isSure }
  }
  return { kind: 'foreign', ...at, isSure: known.isOurs }
}

/** The entry from another copy that a piece was once, as the checksum that it still has says. */
function replacedBy(piece: Piece, { entryGiving, brought }: Known): number | undefined {
  const given = givenBy(piece.text)
  const entry = given === null ? undefined : entryGiving.get(given)
  return entry !== undefined && brought.has(entry) ? entry : undefined
}

/** The first of the lines that lead to this one, among those left over. Each line is gone over once. */
function rootOf(piece: Piece, { facts, leftGiving, roots }: Known): LineFacts {
  const way = new Set<Piece>()
  let at = piece
  let root = roots.get(at)
  while (root === undefined) {
    way.add(at)
    const said = facts.get(at) as LineFacts
    const before = leftGiving.get(said.follows)
    if (!before || !facts.has(before) || way.has(before)) root = said
    else {
      at = before
      root = roots.get(at)
    }
  }
  for (const each of way) roots.set(each, root)
  return root
}

/** Names what stands behind the place where the chain broke, in the order of the file. */
function nameBeyond(beyond: readonly (Legible | Piece)[], known: Known): LeftOver {
  const naming = new NamingBeyond(known)
  const legible = beyond.filter(isLegible)
  let passed = 0
  for (const each of beyond) {
    if (isLegible(each)) {
      passed += 1
      naming.addLegible(each, legible[passed])
    } else naming.addIllegible(each)
  }
  return naming.named()
}

function isLegible(each: Legible | Piece): each is Legible {
  return 'facts' in each
}

class NamingBeyond {
  readonly #known: Known
  readonly #findings: Finding[] = []
  readonly #behind: Legible[] = []
  /** The number that the next line would have, if none were missing. */
  #expected: number
  /** Lines that may be the entries up to the next legible one. */
  #illegible: Piece[] = []

  constructor(known: Known) {
    this.#known = known
    this.#expected = known.length + 1
  }

  addIllegible(piece: Piece): void {
    this.#illegible.push(piece)
  }

  addLegible(each: Legible, next: Legible | undefined): void {
    const { facts, piece, isProved } = each
    const at = { line: piece.line, last: piece.line, isSure: false }
    const isAlone = isStray(each, next, this.#expected, this.#known)
    if (isAlone || piece.start < this.#known.end) {
      this.#findings.push({ kind: 'foreign', ...at })
      if (!isAlone) this.#behind.push(each)
      return
    }
    const gap = facts.n - this.#expected
    if (gap > this.#illegible.length)
      this.#findings.push({ kind: 'missing', ...at, entry: this.#expected, lastEntry: facts.n - 1 })
    if (gap === 0 && !isProved) this.#findings.push({ kind: 'altered', ...at, entry: facts.n })
    this.#nameIllegible(gap)
    this.#behind.push(each)
    this.#expected = facts.n + 1
  }

  named(): LeftOver {
    this.#nameIllegible(this.#illegible.length)
    return { findings: this.#findings, behind: this.#behind }
  }

  /** They are the entries of a gap only where there are as many of them. */
  #nameIllegible(gap: number): void {
    for (const [index, { line }] of this.#illegible.entries()) {
      const entry = gap === this.#illegible.length ? { entry: this.#expected + index } : {}
      this.#findings.push({ kind: 'illegible', line, last: line, ...entry, isSure: false })
    }
    this.#illegible = []
  }
}

/** Linked with no line of the file, and with a number that does not fit between those beside it. */
function isStray(
  { facts, isProved }: Legible,
  next: Legible | undefined,
  expected: number,
  { leftFollows }: Known,
): boolean {
  if (isProved || leftFollows.has(facts.gives)) return false
  // The next number would follow on it, if it were the one that was written.
  return facts.n < expected || (next !== undefined && next.facts.n <= facts.n + 1)
}

function textOf(text: Buffer): string {
  return text.toString('latin1')
}
