import type { Entry } from './entry.ts'

/** The highest numbers dealt so far in a job, of each kind. */
export interface Dealt {
  piece: number
  step: number
  container: number
  fluid: number
  mark: number
  tightening: number
  loosening: number
  measure: number
  fault: number
  difference: number
  picture: number
  check: number
  order: number
  outing: number
  consumable: number
  trigger: number
  finding: number
  leftOut: number
}

/** Before any number was dealt. */
export function nothingDealt(): Dealt {
  return {
    piece: 0,
    step: 0,
    container: 0,
    fluid: 0,
    mark: 0,
    tightening: 0,
    loosening: 0,
    measure: 0,
    fault: 0,
    difference: 0,
    picture: 0,
    check: 0,
    order: 0,
    outing: 0,
    consumable: 0,
    trigger: 0,
    finding: 0,
    leftOut: 0,
  }
}

/** Nobody deals more of a kind. Far above it numbers are no longer told apart, so one more would be the same again. */
const LAST_NUMBER = 1e9

/**
 * Notes the numbers that an entry dealt. Undone entries count too: their labels may be written on bags
 * already, and a number is never dealt twice. Throws RangeError for a number that nobody deals.
 */
export function noteDealt(dealt: Dealt, entry: Entry): void {
  const note = (kind: keyof Dealt, id: string | number) => {
    const number = typeof id === 'number' ? id : Number(id.slice(1))
    if (number > LAST_NUMBER) throw new RangeError(`${id} is a number that nobody deals`)
    if (number > dealt[kind]) dealt[kind] = number
  }
  if ('openings' in entry) for (const { id } of entry.pieces) note('piece', id)
  if ('began' in entry && typeof entry.began === 'object') note('step', entry.began.no)
  if ('opened' in entry && entry.opened) note('container', entry.opened.no)
  switch (entry.type) {
    case 'strip-began':
    case 'step-added':
      note('step', entry.step.no)
      break
    case 'container-opened':
      note('container', entry.container.no)
      break
    case 'labels-dealt':
      note('container', entry.to)
      break
    case 'pictures-added':
      for (const { id } of entry.pictures) note('picture', id)
      break
    case 'came-off':
      for (const { id } of entry.faults ?? []) note('fault', id)
      break
    case 'drained':
      note('fluid', entry.fluid.id)
      break
    case 'marked':
      note('mark', entry.mark.id)
      break
    case 'tightening-set':
      note('tightening', entry.tightening.id)
      break
    case 'loosening-set':
      note('loosening', entry.loosening.id)
      break
    case 'measured':
      note('measure', entry.measure.id)
      break
    case 'torque-missed':
      note('fault', entry.fault.id)
      break
    case 'counted':
      for (const { difference } of entry.lines) if (difference) note('difference', difference)
      break
    case 'checks-set':
      for (const { id } of entry.checks) note('check', id)
      break
    case 'found-out':
      note('finding', entry.finding.id)
      for (const { id } of entry.checks) note('check', id)
      break
    case 'trigger-set':
      note('trigger', entry.trigger.id)
      break
    case 'order-lined':
      for (const { id } of entry.orders) note('order', id)
      break
    case 'sent-out':
      note('outing', entry.outing.id)
      break
    case 'merged':
      for (const { id } of entry.leftOut) note('leftOut', id)
      break
    case 'consumable-set':
      note('consumable', entry.consumable.id)
      break
    default:
  }
}
