import { CRC_BYTES, FILE_START, type Numbered } from '../journal/line.ts'
import { factsOf, gives } from './line-facts.ts'
import type { CutUp, Piece } from './pieces.ts'
import { isWhole, repairAt } from './repair.ts'

/** One line of the chain as it was found. */
export interface Link {
  /** Checksum, space and entry, without the line feed. */
  text: Buffer
  crc: string
  /** The piece that it was, or the first of those it was made of; null where it comes from another copy. */
  piece: Piece | null
  how: 'written' | 'flipped' | 'unended' | 'brought'
}

/** The chain from the first entry as far as it goes, and what is left over of the file. */
export interface Followed {
  links: readonly Link[]
  left: readonly Piece[]
}

/**
 * Follows the chain of checksums from the start of a journal: to the next piece while that follows, else to what can be
 * found again there, else to whichever line of the file, or of another copy, follows on the last one.
 */
export function followChain<E extends Numbered>(
  file: CutUp,
  others: readonly CutUp[],
  parse: (raw: unknown) => E,
): Followed {
  const walk = new Walk(file, others)
  for (;;) {
    walk.skip()
    const link = walk.asWritten() ?? walk.repaired(parse) ?? walk.elsewhere()
    if (link === null) return { links: walk.links, left: walk.left() }
    walk.links.push(link)
  }
}

class Walk {
  readonly links: Link[] = []
  readonly #bytes: Buffer
  readonly #pieces: Piece[]
  readonly #others: readonly CutUp[]
  readonly #used = new Set<Piece>()
  #at = 0
  readonly #jumps = new Map<number, number>()
  #following: Following | null = null

  constructor({ bytes, pieces }: CutUp, others: readonly CutUp[]) {
    this.#bytes = bytes
    this.#pieces = [...pieces]
    this.#others = others
  }

  get #crc(): string {
    return this.links.at(-1)?.crc ?? FILE_START.crc
  }

  left(): Piece[] {
    return this.#pieces.filter((piece) => !this.#used.has(piece))
  }

  /** On to the next piece that may be a line. */
  skip(): void {
    this.#at = this.#openFrom(this.#at)
  }

  asWritten(): Link | null {
    const piece = this.#pieces[this.#at]
    if (!piece?.hasFeed || !isWhole(piece.text, this.#crc)) return null
    this.#used.add(piece)
    return linkOf(piece.text, piece, 'written')
  }

  repaired<E extends Numbered>(parse: (raw: unknown) => E): Link | null {
    const piece = this.#pieces[this.#at]
    if (!piece) return null
    const next = this.#pieces[this.#at + 1]
    const n = this.links.length + 1
    const found = repairAt({ bytes: this.#bytes, piece, next, previousCrc: this.#crc, n, parse })
    if (found === null) return null
    this.#used.add(piece)
    if (found.used === 2 && next) this.#used.add(next)
    if (found.left !== null) this.#pieces[this.#at] = found.left
    return linkOf(found.text, piece, found.how)
  }

  /** Looked up, not searched: what each line must follow is worked out once, when the first one is not in its place. */
  elsewhere(): Link | null {
    if (this.#others.length === 0 && this.#openFrom(0) === this.#pieces.length) return null
    this.#following ??= new Following(this.#pieces, this.#others)
    const n = this.links.length + 1
    const found = this.#following.on(gives(this.#crc), n, this.#at, this.#used)
    if (found === null) return null
    this.#used.add(found.piece)
    if (found.index === null) return linkOf(found.piece.text, null, 'brought')
    this.#at = found.index + 1
    return linkOf(found.piece.text, found.piece, 'written')
  }

  /** The first piece from there on that may still be a line. What was passed over once is jumped over from then on. */
  #openFrom(place: number): number {
    const passed: number[] = []
    let at = place
    for (let piece = this.#pieces[at]; piece && !isOpen(piece, this.#used); piece = this.#pieces[at]) {
      passed.push(at)
      at = this.#jumps.get(at) ?? at + 1
    }
    for (const each of passed) this.#jumps.set(each, at)
    return at
  }
}

interface Candidate {
  piece: Piece
  n: number
  /** Its place among the pieces of the file; null for one of another copy. */
  index: number | null
}

/** The whole lines of a file and of its copies, by what they follow. */
class Following {
  readonly #candidates = new Map<number, Candidate[]>()

  constructor(own: readonly Piece[], others: readonly CutUp[]) {
    for (const [index, piece] of own.entries()) this.#add(piece, index)
    for (const { pieces } of others) for (const piece of pieces) this.#add(piece, null)
  }

  /** What follows on that: of the file itself before a copy's, and the next one behind a place before those ahead. */
  on(given: number, n: number, place: number, used: ReadonlySet<Piece>): Candidate | null {
    const fitting = (this.#candidates.get(given) ?? []).filter(
      (candidate) => candidate.n === n && !used.has(candidate.piece),
    )
    const own = fitting.filter(({ index }) => index !== null)
    return own.find(({ index }) => (index ?? 0) >= place) ?? own[0] ?? fitting[0] ?? null
  }

  #add(piece: Piece, index: number | null): void {
    const facts = piece.hasFeed && piece.form === 'text' ? factsOf(piece.text) : null
    if (facts === null) return
    const same = this.#candidates.get(facts.follows) ?? []
    // Thousands of copies of one line: one is as good as all of them.
    if (same.length < MOST_ALIKE) same.push({ piece, n: facts.n, index })
    this.#candidates.set(facts.follows, same)
  }
}

const MOST_ALIKE = 100

function isOpen(piece: Piece, used: ReadonlySet<Piece>): boolean {
  return piece.form === 'text' && !used.has(piece)
}

function linkOf(text: Buffer, piece: Piece | null, how: Link['how']): Link {
  return { text, crc: text.toString('latin1', 0, CRC_BYTES), piece, how }
}
