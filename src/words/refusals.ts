import type { Refusal, RefusalCode } from '../journal/refusal.ts'
import type { State } from '../journal/state.ts'
import type { LabelCode } from './leftovers.ts'
import { consumableRefusals } from './refusals/consumables.ts'
import { containerRefusals } from './refusals/containers.ts'
import { countRefusals } from './refusals/count.ts'
import { jobRefusals } from './refusals/job.ts'
import { judgingRefusals } from './refusals/judging.ts'
import { lawRefusals } from './refusals/law.ts'
import { measuringRefusals } from './refusals/measuring.ts'
import { orderRefusals } from './refusals/orders.ts'
import { outingRefusals } from './refusals/outings.ts'
import { pictureRefusals } from './refusals/pictures.ts'
import { pieceRefusals } from './refusals/pieces.ts'
import { positionRefusals } from './refusals/positions.ts'
import { replacingRefusals } from './refusals/replacing.ts'
import { secondLookRefusals } from './refusals/second-looks.ts'
import { stepRefusals } from './refusals/steps.ts'
import type { Tellers } from './refusals/tellers.ts'
import { tighteningRefusals } from './refusals/tightening.ts'
import type { Told } from './told.ts'

/** A refusal as a person reads it: what and why, all the reasons there are, and what to do next. */
export function refusalText(state: State, refusal: Refusal, code: LabelCode): Told {
  const tell = tellers[refusal.code] as (state: State, refusal: Refusal, code: LabelCode) => Told
  return tell(state, refusal, code)
}

const tellers: Tellers<RefusalCode> = {
  ...jobRefusals,
  ...containerRefusals,
  ...pieceRefusals,
  ...stepRefusals,
  ...tighteningRefusals,
  ...countRefusals,
  ...measuringRefusals,
  ...pictureRefusals,
  ...judgingRefusals,
  ...replacingRefusals,
  ...orderRefusals,
  ...outingRefusals,
  ...consumableRefusals,
  ...secondLookRefusals,
  ...positionRefusals,
  ...lawRefusals,
}
