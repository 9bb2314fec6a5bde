import { labelCode } from '../../../src/label/code.ts'
import type { Hose, Lot, Machine, MatchedSet, StripStep, Thing } from '../machines/machine.ts'
import type { Act } from './act.ts'
import type { Known } from './known.ts'
import { act } from './strip-acts.ts'

/** Number of the job on the labels. */
export const JOB = 1

/** Everything goes back, the last step off first, and the first start is cleared. */
export function buildActs(machine: Machine): Act[] {
  const back = machine.steps.map((_, at) => at).reverse()
  return [
    ...back.flatMap((at) => [...extraBefore(machine, at), ...stepBack(machine, at)]),
    ...toolsBack(machine),
    lastRound(machine),
    act('clear', 0, () => 'clear'),
  ]
}

/** Every bag and tray is tipped out, where the program proposed that. */
export function lastRound(machine: Machine): Act {
  const no = extraNo(machine, machine.extra.length)
  return {
    ...act('round', no, () => `done ${no}: nothing left`),
    isNeedless: ({ roundProposed }) => roundProposed === 0,
  }
}

/** What exists on the way back only, and comes before a step. */
export function extraBefore(machine: Machine, at: number): Act[] {
  return machine.extra.flatMap(({ before }, nth) => {
    const no = extraNo(machine, nth)
    return before === at ? [act('extra', no, () => `done ${no}: as it should be`)] : []
  })
}

/** The number that the record gives to what exists on the way back only: they are added one after the other. */
export function extraNo({ steps }: Machine, nth: number): number {
  return steps.length + nth + 1
}

/** One step of the way back, as one who leaves nothing out does it. */
export function stepBack(machine: Machine, at: number): Act[] {
  const step = machine.steps[at] as StripStep
  const no = at + 1
  const { things } = step
  const each = (back: (thing: Thing, no: number) => Act[]) => things.flatMap((thing) => back(thing, no))
  return [
    // What lies beneath comes out before it is hidden.
    ...(step.hides ? [...each(takesOut), act('look', no, () => `look ${no}`)] : []),
    act('take', no, () => `take ${no}`),
    ...each(putOn),
    ...each(fits),
    ...each(confirms),
    ...each(turns),
    ...(step.hides ? [] : each(takesOut)),
    ...each(fills),
    act('done', no, () => `done ${no}`),
    ...(step.critical ? each(seenAgain) : []),
  ]
}

function putOn(thing: Thing, no: number): Act[] {
  return thing.kind === 'put-on'
    ? [act('put on', no, ({ consumables }) => `applied ${consumables.get(thing)}`, thing)]
    : []
}

function fits(thing: Thing, no: number): Act[] {
  switch (thing.kind) {
    case 'lot':
      return [scans(thing, no), ...lotBack(thing, no)]
    case 'part':
      return [act('fit', no, () => `fit ${thing.name}`, thing)]
    case 'set':
      return [scans(thing, no), ...setBack(thing, no)]
    case 'hose':
      return hoseBack(thing, no)
    default:
      return []
  }
}

/** The bag is scanned before it is opened: does it go on now? */
function scans(thing: Lot | MatchedSet, no: number): Act {
  return act('scan', no, ({ containers }) => labelCode(JOB, containers.get(thing) ?? 0), thing)
}

function lotBack(lot: Lot, no: number): Act[] {
  if (lot.at === null)
    return [act('fit', no, ({ toFit }) => `fit ${toFit.get(lot) ?? lot.count} ${lot.name}`, lot)]
  return lot.at.map((at) => act('fit', no, () => `fit 1 ${lot.name} ${lot.size} at ${at}`, lot, at))
}

function setBack(set: MatchedSet, no: number): Act[] {
  return set.positions.map((at) => act('fit', no, () => `fit ${set.one} ${at} at ${at}`, set, at))
}

function hoseBack(hose: Hose, no: number): Act[] {
  return hose.ends.map((end) => act('fit', no, () => `fit ${hose.name} at ${end}`, hose, end))
}

function confirms(thing: Thing, no: number): Act[] {
  if (thing.kind === 'mark') return [act('confirm', no, (known) => `confirm ${known.mark(thing)}`, thing)]
  if (thing.kind !== 'set') return []
  return thing.marked.map((at) =>
    act('confirm', no, (known) => `confirm ${known.mark(thing, at)}`, thing, at),
  )
}

function turns(thing: Thing, no: number): Act[] {
  if (thing.kind !== 'lot' || thing.passes === null) return []
  const { passes, name, count } = thing
  const each = passes.kinds.flatMap((_, pass) =>
    Array.from(
      { length: count },
      (_, bolt): Act => ({
        doing: 'turn',
        step: no,
        thing,
        pass,
        at: String(bolt),
        say: ({ tightenings }) => {
          const { id, order } = tightenings.get(thing) ?? { id: 't0', order: [] }
          return `turn ${order[bolt]} of ${id}`
        },
      }),
    ),
  )
  return [act('set passes', no, () => `tighten ${name}: ${passes.text}`, thing), ...each]
}

function takesOut(thing: Thing, no: number): Act[] {
  return thing.kind === 'aid' && thing.where !== null
    ? [act('take out', no, () => `take out ${thing.name}`, thing)]
    : []
}

function fills(thing: Thing, no: number): Act[] {
  return thing.kind === 'fluid' ? [act('fill', no, () => `fill ${thing.name} ${thing.litres}`, thing)] : []
}

/** Each line of a critical step once more, by somebody else. */
function seenAgain(thing: Thing, no: number): Act[] {
  const seen = (id: (known: Known) => string, at?: string) =>
    act('see again', no, (known) => `seen ${id(known)}: as it should be`, thing, at)
  switch (thing.kind) {
    case 'lot':
      return [
        seen((known) => known.piece(thing)),
        ...(thing.passes ? [seen(({ tightenings }) => tightenings.get(thing)?.id ?? '', 'passes')] : []),
      ]
    case 'part':
      return [seen((known) => known.piece(thing))]
    case 'set':
      return [
        ...thing.positions.map((at) => seen((known) => known.piece(thing, at), at)),
        ...thing.marked.map((at) => seen((known) => known.mark(thing, at), `mark ${at}`)),
      ]
    case 'hose':
      return thing.ends.map((end) => seen((known) => known.piece(thing, end), end))
    case 'mark':
      return [seen((known) => known.mark(thing), 'mark ')]
    case 'put-on':
      return [seen(({ consumables }) => consumables.get(thing) ?? '')]
    default:
      return []
  }
}

function toolsBack({ steps }: Machine): Act[] {
  return steps.flatMap(({ things }, at) =>
    things.flatMap((thing) =>
      thing.kind === 'aid' && thing.where === null
        ? [act('take out', at + 1, () => `take out ${thing.name}`, thing)]
        : [],
    ),
  )
}
