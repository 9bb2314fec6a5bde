import type { Misreading } from '../../lines/reading.ts'
import type { ShimFault } from '../../trade/shims/shim-fault.ts'
import { say } from '../cures.ts'
import { type Told, told } from '../told.ts'

type ShimMisreading = Extract<Misreading, { code: 'shims' }>

/** Why a line about shims was not understood, and how it could have been written. */
export function shimFaultText({ fault, part, nearest }: ShimMisreading): Told {
  const cure = GAP.test(nearest) ? 'write' : 'perhaps'
  return told(whatText(fault, part), `${cure} ${say(nearest)}`)
}

/** Capitals stand for the user's own figures: none is made up. */
const GAP = /\b(?:VALVE|CLEARANCE|SHIM|SIZE|STEP|LEAST|MOST)\b/

function whatText(fault: ShimMisreading['fault'], part: string): string {
  switch (fault) {
    case 'no-clearance':
      return 'no valve clearance is said or in the record'
    case 'no-fitted':
      return `no shim of a known size at ${part}`
    case 'no-wanted':
      return `no wanted range for ${part}: the limits are in the manual`
    default:
      return `${part === '' ? 'this' : `'${part}'`} ${FAULTS[fault]}`
  }
}

const FAULTS: Record<ShimFault, string> = {
  valve: 'is no valve with its clearance and its shim',
  comma: 'may be decimal commas or several numbers: write points',
  inches: 'is too thin for millimetres: inches are said with their unit',
  'turned-round': 'has the shim where the clearance belongs',
  'too-large': 'is no clearance of a valve',
  code: 'may be a number etched on the shim, but nothing else here says what it stands for',
  twice: 'is there twice',
  'limit-missing': 'is no range: both limits are needed, as the manual gives them',
  limits: 'has its least and its most the wrong way round',
  'step-missing': 'has no step: from what size to what size, and in which steps',
  step: 'does not go up in whole steps',
  size: 'is no size of a shim',
  'too-many': 'is more than can be worked out at once',
}
