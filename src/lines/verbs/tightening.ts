import type { TighteningId } from '../../plan/facts.ts'
import { readPositions } from '../../trade/positions.ts'
import { readPasses } from '../../trade/tightening-pass.ts'
import type { Line } from '../line.ts'
import type { Verb } from '../verb.ts'

export const tighteningVerbs: readonly Verb[] = [
  {
    words: ['tighten'],
    topic: 'tightening',
    forms: ['tighten PIECE: 20 Nm, 40 Nm, 90 deg [order 3,1,2]'],
    says: "Sets the passes of a tightening, as the machine's service manual gives them, and the order of the fasteners.",
    examples: [
      'tighten head bolts: 20 Nm, 40 Nm, 90 deg order 3,1,2,4,5,6,7,8',
      'tighten valve cover bolts: 10 Nm',
    ],
    read(line) {
      const order = line.take(/,? (?:in )?order:? (.+)$/i)?.[0]
      const [words = '', typed = ''] = line.take(/^([^:]*?) ?: ?(.*)$/) ?? []
      if (words === '') line.missing(line.rest === '' ? 'PIECE' : ': PASSES')
      if (typed === '') line.missing('PASSES')
      const passes = readPasses(typed)
      if (!passes.understood)
        return line.notUnderstood(
          passes.part || typed,
          isOfTheirs(passes.nearest, typed) ? `tighten ${words}: ${passes.nearest}` : null,
        )
      return {
        do: 'set-tightening',
        piece: fasteners(line, words),
        passes: passes.value,
        order: order === undefined ? undefined : positions(line, order),
      }
    },
  },
  {
    words: ['turn'],
    topic: 'tightening',
    forms: ['turn [FASTENER] [of t1]'],
    says: 'One fastener is through its pass: the next in order; named, it is checked against the order.',
    examples: ['turn', 'turn 3', 'turn 3 of t1'],
    read(line) {
      const id = line.take(/(?:^| )of t(\d{1,9})$/i)?.[0] ?? line.take(/^t(\d{1,9})$/i)?.[0]
      const tightening: TighteningId | undefined = id === undefined ? undefined : `t${Number(id)}`
      const fastener = line.rest === '' ? undefined : line.takeRest('FASTENER')
      return { do: 'tighten', tightening, fastener: fastener && asWritten(line, fastener, tightening) }
    },
  },
  {
    words: ['turned'],
    topic: 'tightening',
    forms: ['turned t1 yes|no because REASON'],
    says: 'Settles whether a fastener was turned through its angle before an interruption.',
    examples: [
      'turned t1 yes because the paint mark has moved',
      'turned t1 no because the paint marks are in line',
    ],
    read(line) {
      const reason = line.reason()
      const tightening = takeId(line)
      const [yes] =
        line.take(/^(?:(yes)|no)$/i) ??
        (line.rest === ''
          ? line.missing('yes or no')
          : line.notUnderstood(line.rest, `turned ${tightening} yes because ...`))
      return { do: 'settle-angle', tightening, turned: yes !== '', reason }
    },
  },
  {
    words: ['slacken'],
    topic: 'tightening',
    forms: ['slacken t1 because REASON'],
    says: 'All fasteners of a tightening are backed off: every pass is to be done again.',
    examples: ['slacken t1 because a bolt turned without gaining torque'],
    read(line) {
      const reason = line.reason()
      const tightening = takeId(line)
      line.end()
      return { do: 'slacken', tightening, reason }
    },
  },
]

/** One piece of a matched set stands for all: they are tightened together. */
function fasteners(line: Line, words: string) {
  const pieces = line.pieces(words, ({ should }) => should > 0)
  const sets = new Set(pieces.map((id) => line.account(id)?.piece.set))
  const [first] = pieces
  const isOneSet = sets.size === 1 && !sets.has(undefined)
  return first !== undefined && (pieces.length === 1 || isOneSet) ? first : line.which(words, pieces)
}

function positions(line: Line, text: string): string[] {
  const read = readPositions(text)
  return read.understood ? read.value : line.notUnderstood(read.part || text, read.nearest)
}

/** The name of a fastener as the tightening has it, whatever the case it was typed in. */
function asWritten(line: Line, fastener: string, id: TighteningId | undefined): string {
  const { tightenings, build } = line.state
  const orders = [...tightenings.values()].filter((each) => (id ? each.id === id : each.step === build))
  const names = orders.flatMap(({ order }) => order)
  return names.find((name) => name.toLowerCase() === fastener.toLowerCase()) ?? fastener
}

function takeId(line: Line): TighteningId {
  const [number] =
    line.take(/^t(\d{1,9})(?= |$)/i) ??
    (line.rest === '' ? line.missing('t1') : line.notUnderstood(line.rest, null))
  return `t${Number(number)}`
}

/** Whether a nearest reading has only figures that were written: a torque is never proposed. */
function isOfTheirs(nearest: string | null, typed: string): boolean {
  const figures = (text: string): string[] => text.match(/\d+(?:[.,]\d+)?/g) ?? []
  const written = figures(typed)
  return nearest !== null && figures(nearest).every((figure) => written.includes(figure))
}
