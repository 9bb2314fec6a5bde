import type { Into } from '../journal/command.ts'
import type { State } from '../journal/state.ts'
import type { Account } from '../ledger/account.ts'
import type { PieceId } from '../ledger/piece.ts'
import { containerOf, inContainer, type Place } from '../ledger/place.ts'
import type { AmountFault } from '../trade/convert/read-amount.ts'
import { readWhole } from '../trade/number.ts'
import type { NotUnderstood } from '../trade/reading.ts'
import type { PassesFault } from '../trade/tightening-passes/read-passes.ts'
import { findPieces, findPiecesEver, nearPieces, type Prefer } from './find-piece.ts'
import { readContainer, readPlace } from './read-place.ts'
import { misread, Stopped } from './stopped.ts'

/** What a verb reads: the words after it, taken away from either end until nothing is left. */
export class Line {
  readonly whole: string
  readonly verb: string
  /** The form shown when something is missing. */
  readonly form: string
  readonly state: State
  rest: string
  /** Whether pieces that were replaced are meant as well as those in use. */
  everToo = false

  constructor(
    whole: string,
    { verb, rest, form, state }: { verb: string; rest: string; form: string; state: State },
  ) {
    this.whole = whole
    this.verb = verb
    this.form = form
    this.state = state
    this.rest = rest
  }

  /** Takes away what a pattern finds, and answers its groups; null when it finds nothing. */
  take(pattern: RegExp): string[] | null {
    const match = pattern.exec(this.rest)
    if (!match) return null
    const after = this.rest.slice(match.index + match[0].length)
    this.rest = `${this.rest.slice(0, match.index)} ${after}`.replace(/\s+/g, ' ').trim()
    return match.slice(1).map((group) => group ?? '')
  }

  /** The rest, all of it, which may not be empty. */
  takeRest(what: string): string {
    const text = this.rest
    if (text === '') this.missing(what)
    this.rest = ''
    return text
  }

  /** Nothing may be left over: what is not understood is never passed over. */
  end(): void {
    if (this.rest !== '') this.notUnderstood(this.rest)
  }

  reason(): string {
    return this.reasonIfAny() ?? misread({ code: 'reason-missing', verb: this.verb, form: this.form })
  }

  reasonIfAny(): string | undefined {
    const [reason] = this.take(/(?:^|,? )because(?: (.*))?$/i) ?? []
    if (reason === '') misread({ code: 'reason-missing', verb: this.verb, form: this.form })
    return reason
  }

  /** Step numbers: `3`, `3,4`, `3 and 4`. */
  numbers(text: string): number[] {
    const parts = text.split(/(?:,|\band\b|\s)+/i).filter((part) => part !== '')
    return parts.map((part) => this.number(part))
  }

  number(text: string): number {
    const number = /^(?:steps? )?(\d{1,9})$/i.exec(text.trim())?.[1]
    if (number === undefined)
      misread({ code: 'not-a-number', verb: this.verb, part: text.trim(), form: this.form })
    return Number(number)
  }

  /** The number at the start, which may not be missing. */
  takeNumber(what = 'N'): number {
    if (this.rest === '') this.missing(what)
    const [number = ''] = this.take(/^(?:step )?(\S+?)(?=[:,]? |[:,]?$)/i) ?? []
    return this.number(number)
  }

  place(text: string): Into {
    return (
      readPlace(text, this.state) ?? misread({ code: 'no-such-place', part: text.trim(), form: this.form })
    )
  }

  /** A container by its number, code or name; a place that is none, as the spares, has no number. */
  container(text: string): number {
    const no = readContainer(text, this.state)
    if (no !== null) return no
    if (readPlace(text, this.state)) this.notUnderstood(text.trim())
    return misread({ code: 'no-such-place', part: text.trim(), form: this.form })
  }

  /** Takes a place away behind one of some words, when what follows is a place. */
  placeAfter(words: string): Into | undefined {
    const pattern = new RegExp(`(?:^| )(?:${words}) (?!.* (?:${words}) )(.+)$`, 'i')
    const found = pattern.exec(this.rest)?.[1]
    const place = found === undefined ? null : readPlace(found, this.state)
    if (!place) return undefined
    this.take(pattern)
    return place
  }

  /** The one piece that words name. Where several answer, the line ends with the question which. */
  piece(words: string, ...prefer: Prefer[]): PieceId {
    const pieces = this.pieces(words, ...prefer)
    return pieces.length === 1 ? (pieces[0] as PieceId) : this.which(words, pieces)
  }

  /** All pieces that answer to words; at least one. */
  pieces(words: string, ...prefer: Prefer[]): PieceId[] {
    if (words.trim() === '') this.missing('PIECE')
    const pieces = this.#find(words, prefer)
    if (pieces.length === 0) {
      misread({ code: 'no-such-piece', part: words.trim(), near: nearPieces(words, this.state) })
    }
    return pieces
  }

  which(words: string, pieces: PieceId[], again = (id: PieceId) => this.replaced(words, id)): never {
    throw new Stopped({ kind: 'which-piece', words: words.trim(), pieces, again })
  }

  /** The rest as a number and a piece: `4 head bolts`, `head bolts 4`, `head bolts`, `10 mm dowel`. */
  countAndPiece(...prefer: Prefer[]): { count: number | undefined; words: string; pieces: PieceId[] } {
    const words = this.takeRest('PIECE')
    const { count, name } = this.#splitCount(words, prefer)
    return { count, words: name, pieces: this.pieces(name, ...prefer) }
  }

  countAndOnePiece(...prefer: Prefer[]): { count: number | undefined; piece: PieceId } {
    const { count, words, pieces } = this.countAndPiece(...prefer)
    return { count, piece: pieces.length === 1 ? (pieces[0] as PieceId) : this.which(words, pieces) }
  }

  /** Where a piece lies, named by a place: within a tray, the slot that holds it. */
  placeOf(piece: PieceId, into: Into): Place {
    if (into.kind === 'place') return into.place
    if (into.kind !== 'container') this.notUnderstood(into.kind === 'hand' ? 'hand' : 'new')
    if (into.slot !== undefined) return inContainer(into.no, into.slot)
    const there = [...(this.account(piece)?.at.keys() ?? [])].filter(
      (place) => containerOf(place) === into.no,
    )
    return there.length === 1 ? (there[0] as Place) : inContainer(into.no)
  }

  account(piece: PieceId): Account | undefined {
    return this.state.ledger.accounts.get(piece)
  }

  /** The line once more, with an id in place of the words. */
  replaced(words: string, id: PieceId): string {
    const from = this.whole.toLowerCase().indexOf(words.trim().toLowerCase(), this.verb.length)
    if (from < 0) return `${this.verb} ${id}`
    return `${this.whole.slice(0, from)}${id}${this.whole.slice(from + words.trim().length)}`
  }

  /** An amount is not understood. `nearest`: the whole line with the nearest amount that is, if it needs no figure that was not typed. */
  notAnAmount({ code, part }: NotUnderstood<AmountFault>, nearest: string | null): never {
    misread({ code: 'amount', fault: code, verb: this.verb, part, nearest, form: this.form })
  }

  /** Passes are not understood. `nearest`: the line as it would be, if that needs no figure that was not typed. */
  notPasses({ code, part }: NotUnderstood<PassesFault>, nearest: string | null): never {
    misread({ code: 'passes', fault: code, part, nearest, form: this.form })
  }

  missing(what: string): never {
    misread({ code: 'missing', verb: this.verb, what, form: this.form })
  }

  notUnderstood(part: string, nearest: string | null = null): never {
    misread({ code: 'not-understood', verb: this.verb, part, nearest, form: this.form })
  }

  // A number in front is a count, unless only with it do the words name a piece, or its name begins with that
  // number (`10 mm socket`); one behind is a count only where the words alone name none, for it may be a position.
  #splitCount(words: string, prefer: Prefer[]): { count: number | undefined; name: string } {
    const [, first, after = ''] = /^(\S+) (.+)$/.exec(words) ?? []
    const front = first === undefined ? undefined : readWhole(first)
    if (this.#find(words, prefer).some((id) => this.account(id)?.piece.name.startsWith(`${first} `))) {
      return { count: undefined, name: words }
    }
    if (front !== undefined && this.#find(after, prefer).length > 0) return { count: front, name: after }
    if (this.#find(words, prefer).length > 0) return { count: undefined, name: words }
    // `for 12` says what it costs, and not how many there are.
    const [, before = '', number] = /^(.+)(?<! (?:for|at|of|to|from)) (\d{1,4})$/i.exec(words) ?? []
    if (number !== undefined && this.#find(before, prefer).length > 0) {
      return { count: Number(number), name: before }
    }
    return { count: undefined, name: words }
  }

  #find(words: string, prefer: Prefer[]): PieceId[] {
    const find = this.everToo ? findPiecesEver : findPieces
    return find(words, this.state, ...prefer)
  }
}
