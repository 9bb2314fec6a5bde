import type { Doing } from '../job/act.ts'
import type { Machine } from '../machines/machine.ts'
import { makeMachine } from '../machines/make-machine.ts'
import { SHAPES } from '../machines/shapes.ts'
import { addKeys, allKeys, type Keys, noKeys } from './kinds.ts'
import { recordLines, workInLines } from './same-record.ts'
import { type Deed, type Phase, WorkAtScreens } from './work-at-screens.ts'

/** What one whole clean job takes at the screens, in plain JSON. */
export interface KeyCount {
  shape: string
  seed: number
  /** Whether all of it was taken, the first start cleared, and the record is the same as by lines. */
  isWhole: boolean
  /** Lines of the record that are not the same as by lines. */
  otherwise: string[]
  /** Pieces that came off and new ones, each counted. */
  pieces: number
  /** Bags and trays that were filled. */
  bags: number
  entries: number
  scans: number
  keys: Keys
  phases: Record<Phase, Keys>
  /** Keys by what they were pressed for. */
  doings: Partial<Record<Doing, number>>
  /** Things done by Enter alone, by a number, by words. */
  ways: { enter: number; number: number; words: number }
  /** Keys that the tool alone asks for. */
  tool: { confirmations: number; overrides: number }
  /** Of each bag on strip-down: keys besides what the thing in it is called, and with that. */
  perBag: { bare: number; all: number }[]
}

/** A machine by a seed: its shape is the seed's place among the shapes. */
export function machineOf(seed: number): Machine {
  return makeMachine(SHAPES[seed % SHAPES.length] as (typeof SHAPES)[number], seed)
}

/** A whole clean job on the machine of a seed, at the screens. */
export function countKeys(seed: number, machine = machineOf(seed)): KeyCount {
  const work = new WorkAtScreens(machine)
  const isTaken = work.run()
  const { deeds } = work
  const { session } = work.typist.terminal
  const otherwise = isTaken ? differences(recordLines(session.state), recordLines(workInLines(machine))) : []
  return {
    shape: machine.shape,
    seed,
    isWhole: isTaken && session.state.cleared && otherwise.length === 0,
    otherwise: isTaken ? otherwise : [`not taken: ${deeds.at(-1)?.line}`],
    pieces: [...session.state.ledger.accounts.values()].reduce((sum, { entered }) => sum + entered, 0),
    bags: session.state.containers.size,
    entries: session.entries().length,
    scans: deeds.filter(({ how }) => how === 'scan').length,
    keys: keysOf(deeds),
    phases: {
      'strip-down': keysOf(deeds, ({ phase }) => phase === 'strip-down'),
      waiting: keysOf(deeds, ({ phase }) => phase === 'waiting'),
      'build-up': keysOf(deeds, ({ phase }) => phase === 'build-up'),
      'last gate': keysOf(deeds, ({ phase }) => phase === 'last gate'),
    },
    doings: byDoing(deeds),
    ways: {
      enter: deeds.filter(({ how }) => how === 'enter').length,
      number: deeds.filter(({ how }) => how === 'number').length,
      words: deeds.filter(({ how }) => how === 'words').length,
    },
    tool: {
      confirmations: allKeys(keysOf(deeds, ({ doing }) => CONFIRMING.has(doing))),
      overrides: allKeys(keysOf(deeds, ({ line }) => line.startsWith('override '))),
    },
    perBag: bagsOf(deeds),
  }
}

/** What the tool asks for and the work itself does not need. */
const CONFIRMING: ReadonlySet<Doing> = new Set([
  'judge',
  'compare',
  'look',
  'take',
  'confirm',
  'done',
  'extra',
  'see again',
  'round',
  'clear',
])

function keysOf(deeds: readonly Deed[], isOne: (deed: Deed) => boolean = () => true): Keys {
  const sum = noKeys()
  for (const deed of deeds) if (isOne(deed)) addKeys(sum, deed.keys)
  return sum
}

function byDoing(deeds: readonly Deed[]): KeyCount['doings'] {
  const sums: KeyCount['doings'] = {}
  for (const { doing, keys } of deeds) sums[doing] = (sums[doing] ?? 0) + allKeys(keys)
  return sums
}

/** A bag is what a lot came off into; a tray is opened first, and then a set comes off into it. */
function bagsOf(deeds: readonly Deed[]): KeyCount['perBag'] {
  const bags = new Map<Deed['thing'], Keys>()
  for (const { phase, doing, thing, keys } of deeds) {
    if (phase !== 'strip-down' || (thing?.kind !== 'lot' && thing?.kind !== 'set')) continue
    if (doing !== 'off' && doing !== 'open') continue
    const sum = bags.get(thing) ?? noKeys()
    addKeys(sum, keys)
    bags.set(thing, sum)
  }
  return [...bags.values()].map((keys) => ({ bare: keys.words + keys.numbers, all: allKeys(keys) }))
}

function differences(here: readonly string[], there: readonly string[]): string[] {
  const [known, wanted] = [new Set(here), new Set(there)]
  return [
    ...here.filter((line) => !wanted.has(line)).map((line) => `at the screens: ${line}`),
    ...there.filter((line) => !known.has(line)).map((line) => `by lines: ${line}`),
  ]
}
