import type { UnitSystem } from '../quantity.ts'
import type { BagFault, BagLine } from './bag-item.ts'
import { type Fault, isFault } from './outcome.ts'
import { readSegment } from './read-segment.ts'

export type { BagItem, BagLine, PieceItem } from './bag-item.ts'

export interface BagLineOptions {
  /** Decides what a bare `qt` or `gal` is: the US measure for `us`, and not understood for `metric`. */
  units: UnitSystem
}

/** A form of each kind of line, for when nothing nearer to the words typed is understood. */
const examples: Record<BagFault, string> = {
  empty: '8 M6x25 hex 10 valve cover bolts',
  count: '8 M6x25 hex 10 valve cover bolts',
  thread: '8 M6x25 hex 10 valve cover bolts',
  class: '8 M6x25 8.8 hex 10 valve cover bolts',
  drive: '8 M6x25 hex 10 valve cover bolts',
  positions: 'cam caps I1..I4',
  volume: 'coolant out 2.1 L',
  torque: '8 M6x25 hex 10 valve cover bolts',
  minutes: 'took 25 min',
  ends: 'fuel hose: tank > rail',
  where: 'rag > inlet port 1',
  text: 'note: gasket stuck',
  kind: '8 M6x25 hex 10 valve cover bolts',
}

/**
 * Reads one line as a mechanic writes it on a bag: `8 M6x25 hex 10 valve cover bolts`, `7 of 8 cover screws`,
 * `cam caps I1..I4`, `head gasket, new`, `fuel hose: tank > rail`, `rag > inlet port 1`, `coolant out 2.1 L`,
 * `mark I3: arrow to chain`, `note: ...`, `took 25 min`; several items with `;` between them.
 * @param line plain text without control characters, with digits 0-9
 */
export function readBagLine(line: string, options: BagLineOptions): BagLine {
  const segments = segmentsOf(line)
  const outcomes = segments.map((segment) => readSegment(segment, options.units))
  const first = outcomes.find(isFault)
  if (outcomes.length === 0) return { understood: false, code: 'empty', part: '', nearest: examples.empty }
  if (!first) {
    return { understood: true, items: outcomes.flatMap((outcome) => (isFault(outcome) ? [] : outcome.items)) }
  }
  const nearest = outcomes.map((outcome, i) =>
    isFault(outcome) ? nearestForm(outcome, options.units) : (segments[i] ?? ''),
  )
  return { understood: false, code: first.code, part: first.part, nearest: nearest.join('; ') }
}

function nearestForm({ code, nearest }: Fault, units: UnitSystem): string {
  const isUnderstood = (form: string) =>
    segmentsOf(form).every((segment) => !isFault(readSegment(segment, units)))
  return nearest.find((form) => segmentsOf(form).length > 0 && isUnderstood(form)) ?? examples[code]
}

function segmentsOf(line: string): string[] {
  return line
    .split(';')
    .map((segment) => segment.replace(/\s+/gu, ' ').trim())
    .filter((segment) => segment !== '')
}
