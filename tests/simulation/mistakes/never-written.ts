import type { Act } from '../job/act.ts'
import type { Made, MistakeClass } from './classes.ts'
import { ofOmissions } from './shares.ts'

/** What the record never heard of, and that is then not put right either: what no record can see. */
export const NEVER_WRITTEN: readonly MistakeClass[] = [
  neverWritten(
    'fasteners came off and were never recorded',
    ({ doing, thing }) => doing === 'off' && thing?.kind === 'lot',
  ),
  neverWritten(
    'part came off and was never recorded',
    ({ doing, thing }) => doing === 'off' && thing?.kind === 'part',
  ),
  neverWritten(
    'pin, plug or rag put in and never recorded',
    ({ doing, thing }) => doing === 'off' && thing?.kind === 'aid',
  ),
  neverWritten('mark never recorded', ({ doing, thing }) => doing === 'mark' && thing?.kind === 'mark'),
  neverWritten('passes never set, and never turned', ({ doing }) => doing === 'set passes', isTightening),
]

function neverWritten(
  name: string,
  isFirst: (act: Act) => boolean,
  isOfIt: (act: Act) => boolean = () => true,
): MistakeClass {
  return {
    name,
    ...ofOmissions('the rest', 0.05),
    going: 'never written',
    at(acts, place): Made | null {
      const first = acts[place]
      const { thing } = first ?? {}
      if (!first || !thing || !isFirst(first)) return null
      // Of two lengths of one name the other would be found by that name.
      if (thing.kind === 'lot' && thing.at !== null) return null
      return {
        acts: 1,
        says: () => [],
        cure: [],
        subjects: (known) => [...(known.pieces.get(thing)?.values() ?? [])],
        // "Are they tight?"
        askedBy: first.doing === 'set passes' ? ['untightened'] : [],
        silences: (act) => act.thing === thing && isOfIt(act),
      }
    },
  }
}

function isTightening({ doing, at }: Act): boolean {
  return doing === 'set passes' || doing === 'turn' || at === 'passes'
}
