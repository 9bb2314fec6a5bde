import type { Command } from '../journal/command.ts'
import type { Belongs } from '../journal/entry.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { OrderId } from '../plan/waiting/waiting-facts.ts'
import type { BagLine } from '../trade/bag-line/bag-item.ts'
import type { DateFault } from '../trade/calendar/date-said.ts'
import type { DurationFault } from '../trade/calendar/duration-said.ts'
import type { AmountFault } from '../trade/convert/read-amount.ts'
import type { MeasuringFault } from '../trade/measuring/reading/measuring-fault.ts'
import type { LayoutFault } from '../trade/position-layout/read-layout.ts'
import type { PriceFault } from '../trade/price.ts'
import type { ShimFault } from '../trade/shims/shim-fault.ts'
import type { Lacking } from '../trade/shims/whole-valves.ts'
import type { PassesFault } from '../trade/tightening-passes/read-passes.ts'
import type { Errand } from './errand.ts'
import type { Found } from './read-found.ts'
import type { Sum } from './sum.ts'

type NotUnderstood = Extract<BagLine, { understood: false }>
type Understood = Extract<BagLine, { understood: true }>

/** What a written line means. */
export type Reading =
  /** One or more commands, to be sent one after the other. `bag` is the bag line they came from, if one did. */
  | { kind: 'commands'; commands: Command[]; bag: Understood | null }
  | { kind: 'ask'; ask: Ask }
  /** What goes beyond the record, and takes its time. */
  | { kind: 'errand'; errand: Errand }
  /** Several pieces answer to the words: one of them is to be chosen, and the line goes on with `p12` in its place. */
  | { kind: 'which-piece'; words: string; pieces: PieceId[]; again: (piece: PieceId) => string }
  | { kind: 'misread'; misreading: Misreading }

/** A question about the record: it writes nothing. */
export type Ask =
  | { ask: 'card' }
  | { ask: 'scan'; text: string }
  | { ask: 'back' }
  | { ask: 'step'; step: number }
  | { ask: 'where'; words: string }
  | { ask: 'left' }
  /** Where something that turned up may belong. */
  | { ask: 'found'; found: Found }
  | { ask: 'log'; last: number | null }
  /** `container`: a number as in a label code, that of an unused label, the machine or a step too. */
  | { ask: 'qr'; container: number }
  /** Pictures of a container, a step or a piece; all where `of` is null. */
  | { ask: 'photos'; of: PicturesAbout | null }
  /** What to write on a bag with a marker. */
  | { ask: 'label'; container: number }
  | { ask: 'proposals' }
  /** What to buy, and how what was ordered stands. */
  | { ask: 'shopping' }
  /** When the machine is together at the earliest, and what can be done meanwhile. */
  | { ask: 'finish' }
  /** All that is judged and awaited: what is late, to be checked, out, ordered and missing. */
  | { ask: 'due' }
  /** What is to be checked, and what was decided about pieces. */
  | { ask: 'checks' }
  /** What a new piece is held beside the old one for; every piece for which that is due where none is named. */
  | { ask: 'compare'; piece: PieceId | null }
  | { ask: 'sum'; sum: Sum }
  /** The drawing of the pattern that a piece is of. */
  | { ask: 'layout'; piece: PieceId }
  /** The as-built record: the whole job as text. */
  | { ask: 'help'; about: string | null }

/** Whose pictures are asked for. */
export type PicturesAbout = Belongs | { piece: PieceId }

/** Why a line was not understood: the part that was not, and the nearest form that is. */
export type Misreading =
  | { code: 'empty' }
  /** Longer than a line may be: what is past the limit, in characters, would be lost. */
  | { code: 'too-long'; limit: number }
  | { code: 'unknown-word'; part: string; nearest: string | null }
  /** `what` is missing, in the words of the form: `TITLE`, `PIECE`, `N`. */
  | { code: 'missing'; verb: string; what: string; form: string }
  | { code: 'not-a-number'; verb: string; part: string; form: string }
  /** Any other part that the verb cannot take, such as a volume without a unit; `nearest` would be understood. */
  | { code: 'not-understood'; verb: string; part: string; nearest: string | null; form: string }
  /** An amount that is none, or none of the kind that is asked for; `nearest` would be understood. */
  | { code: 'amount'; fault: AmountFault; verb: string; part: string; nearest: string | null; form: string }
  /** The passes of a tightening or a loosening are none. `nearest`: the line as it would be understood, with no figure that was not typed. */
  /** `before`: the words in front of the layout. */
  | { code: 'layout'; fault: LayoutFault; before: string }
  | { code: 'passes'; fault: PassesFault; part: string; nearest: string | null; form: string }
  /** What is said about a measurement; `nearest`: the line as it would be understood, where nothing is made up. */
  | { code: 'measuring'; fault: MeasuringFault; part: string; nearest: string | null; form: string }
  /** What is said about shims; `nearest`: the line, or the part of it, as it would be understood. */
  | { code: 'shims'; fault: ShimFault | `no-${Lacking['lacks']}`; part: string; nearest: string }
  | { code: 'no-such-piece'; part: string; near: PieceId[] }
  | { code: 'no-such-place'; part: string; form: string }
  | { code: 'no-such-fluid'; part: string; known: string[] }
  /** `count`: how many proposals there are. */
  | { code: 'no-such-proposal'; part: string; count: number }
  /** No line of that number in the list of what to buy; `count`: how many there are. */
  | { code: 'no-such-want'; part: string; count: number }
  /** `open`: the lines of which something is still to come. */
  | { code: 'no-such-order'; part: string; open: OrderId[] }
  | { code: 'reason-missing'; verb: string; form: string }
  /** Several things in one line that are said one by one; `nearest`: the line for the first. */
  | { code: 'one-each'; verb: string; parts: string[]; nearest: string }
  /** `nearest`: the line as it would be understood. */
  | { code: 'date'; fault: DateFault; part: string; nearest: string }
  /** The calendar has no such day; `year` is null where none was said. */
  | { code: 'no-such-day'; part: string; month: number; year: number | null; lastDay: number }
  /** A date, a duration or a price with two meanings; `ways`: the line with each of them. */
  | { code: 'two-ways'; part: string; ways: readonly [string, string] }
  | { code: 'duration'; fault: DurationFault; part: string; nearest: string | null; form: string }
  | { code: 'price'; fault: PriceFault; part: string; nearest: string }
  | { code: 'bag-line'; bag: NotUnderstood }
