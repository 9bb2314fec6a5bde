import type { Misreading } from '../lines/reading.ts'
import { say } from './cures.ts'
import { type Told, told } from './told.ts'

type PassMisreading = Extract<Misreading, { code: 'passes' }>

/** Why the passes of a tightening were not understood, and how they could have been written. */
export function passFaultText({ fault, part, nearest, form }: PassMisreading): Told {
  const what = fault === 'too-many' || part === '' ? FAULTS[fault] : `'${part}' ${FAULTS[fault]}`
  return told(what, nearest === null ? `write ${say(form)}` : `perhaps ${say(nearest)}`)
}

const FAULTS: Record<PassMisreading['fault'], string> = {
  empty: 'no pass is written',
  form: 'is no pass that is understood',
  torque: 'is no torque: more than zero, at most 3000 Nm, without a comma for thousands',
  angle: 'is no angle to turn by: more than zero, at most two turns',
  range: 'is no tolerance and no range: the lower end comes first, and both ends have one unit',
  pair: 'gives two figures that are not the same: one of them is misprinted or mistyped',
  percent: 'is no percentage of a torque: more than zero, at most 100 %',
  'percent-torque': 'has no torque that it is a percentage of',
  'percent-falling': 'is less than the percentage before it',
  'too-many': 'these are more than 20 passes',
  'witness-early': 'is drawn when everything is turned: it is the last pass',
  'nothing-to-back-off': 'comes before anything is tightened',
  'backed-off-twice': 'follows on backing off fully: nothing is left to back off',
  again: 'repeats the passes before a backing off, which stands right before it, all of them',
}
