import type { Entry, EntryOf } from '../../src/journal/entry.ts'

/** One line of the shopping slip, as it would be written and struck out by hand. */
interface SlipLine {
  id: string
  name: string
  count: number
  ordered: boolean
  arrived: number
  /** Of those that came: laid aside as wrong, and sent back. */
  wrong: number
  back: number
  struckOut: boolean
  partNo: string | undefined
}

/** The shopping slip: the part of the naive model that tells how each order stands. */
export class NaiveShopping {
  readonly lines: SlipLine[] = []
  /** What is written on the wall about buying a piece. */
  readonly known = new Map<string, string>()
  /** What came by a line and is laid beside an old one: how many there are, and whether they are wrong. */
  readonly #laid = new Map<string, { line: SlipLine; count: number; isWrong: boolean }>()

  read(entry: Entry): void {
    switch (entry.type) {
      case 'order-lined':
        for (const { id, name, count, ordered, partNo } of entry.orders) {
          if (this.lines.some((line) => line.id === id)) throw new Error(`${id} is on the slip twice`)
          const fresh = { arrived: 0, wrong: 0, back: 0, struckOut: false }
          this.lines.push({ id, name, count, ordered, partNo, ...fresh })
        }
        return
      case 'order-changed': {
        const line = this.#line(entry.order)
        line.ordered ||= entry.ordered === true
        line.count = entry.count ?? line.count
        line.partNo = entry.partNo ?? line.partNo
        line.struckOut ||= entry.cancelled !== undefined
        return
      }
      case 'order-returned': {
        const line = this.#line(entry.order)
        line.back += entry.count
        line.wrong = Math.max(0, line.wrong - entry.count)
        return
      }
      case 'supplied':
        this.#arrive(entry)
        return
      case 'compared':
        this.#say(entry.piece, entry.verdict === 'wrong')
        return
      case 'judged':
        if (entry.verdict !== 'fit-again' || entry.count !== undefined) return
        for (const piece of [...entry.of, ...entry.along]) this.#say(piece, false)
        return
      case 'part-noted':
        if (entry.partNo !== undefined) this.known.set(entry.piece, entry.partNo)
        return
      default:
    }
  }

  /** Each line of the slip, and the numbers on the wall. */
  slip(): string[] {
    return [
      ...this.lines.map(
        ({ id, name, count, ordered, arrived, wrong, back, struckOut, partNo }) =>
          `${id} ${count} ${name} ${partNo}: ${ordered ? 'ordered' : 'wanted'}, ${arrived} came, ${wrong} wrong, ${back} back${struckOut ? ', struck out' : ''}`,
      ),
      ...[...this.known].map(([piece, partNo]) => `${piece} is ${partNo}`),
    ]
  }

  #arrive({ order, compare = [], openings }: EntryOf<'supplied'>): void {
    for (const { piece, count } of openings) {
      const laid = this.#laid.get(piece)
      if (laid) laid.count += count
    }
    if (!order) return
    const line = this.#line(order.id)
    line.arrived += order.count
    for (const { piece } of compare) {
      const count = openings
        .filter((opening) => opening.piece === piece)
        .reduce((sum, one) => sum + one.count, 0)
      this.#laid.set(piece, { line, count, isWrong: false })
    }
  }

  /** What came is found to be wrong, or not to be wrong after all. */
  #say(piece: string, isWrong: boolean): void {
    const laid = this.#laid.get(piece)
    if (!laid || laid.isWrong === isWrong) return
    laid.isWrong = isWrong
    laid.line.wrong = Math.max(0, laid.line.wrong + (isWrong ? laid.count : -laid.count))
  }

  #line(id: string): SlipLine {
    const line = this.lines.find((each) => each.id === id)
    if (!line) throw new Error(`${id} is on no slip`)
    return line
  }
}
