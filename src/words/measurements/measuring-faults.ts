import type { Misreading } from '../../lines/reading.ts'
import { say } from '../cures.ts'
import { type Told, told } from '../told.ts'

type MeasuringMisreading = Extract<Misreading, { code: 'measuring' }>

/** Why a measurement was not understood, and how it could have been written. */
export function measuringFaultText({ fault, part, nearest, form }: MeasuringMisreading): Told {
  const what = `${part === '' ? '' : `'${part}' `}${FAULTS[fault]}`
  return told(what, nearest === null ? `write ${say(form)}` : `perhaps ${say(nearest)}`)
}

const FAULTS: Record<MeasuringMisreading['fault'], string> = {
  empty: 'nothing was read',
  what: 'is nothing that is measured here',
  grid: 'is no grid of two rows and columns or more, and 200 points at most',
  number: 'is no reading',
  comma: 'may be decimal commas or several numbers: part them by spaces',
  unit: 'has no unit: are they millimetres or inches?',
  label: 'has no reading behind it',
  twice: 'is there twice',
  'too-many': 'is more than 200 readings',
  count: 'are not as many readings as there are places',
  'bare-limit': 'may be the most or the least: say which',
  limits: 'is no limit',
  'turned-round': 'has its least and its most the wrong way round',
  'dual-units':
    'is not the same in both units: a misprint or a slip, so look at the manual and type one of them',
  resolution: 'does not say what the instrument reads to',
}
