import type { Verb } from './verb.ts'
import { arrivalVerbs } from './verbs/arrivals.ts'
import { buildVerbs } from './verbs/build.ts'
import { buyingVerbs } from './verbs/buying.ts'
import { consumableVerbs } from './verbs/consumables.ts'
import { containerVerbs } from './verbs/containers.ts'
import { coolantVerbs } from './verbs/coolant.ts'
import { countingVerbs } from './verbs/counting.ts'
import { decisionVerbs } from './verbs/decisions.ts'
import { doctorVerbs } from './verbs/doctor.ts'
import { findingVerbs } from './verbs/findings.ts'
import { foundVerbs } from './verbs/found.ts'
import { jobVerbs } from './verbs/job.ts'
import { judgingVerbs } from './verbs/judging.ts'
import { labelVerbs } from './verbs/labels.ts'
import { looseningVerbs } from './verbs/loosening.ts'
import { measuringVerbs } from './verbs/measuring.ts'
import { outingVerbs } from './verbs/outings.ts'
import { pictureVerbs } from './verbs/pictures.ts'
import { pieceVerbs } from './verbs/pieces.ts'
import { planVerbs } from './verbs/plan.ts'
import { positionVerbs } from './verbs/positions.ts'
import { questionVerbs } from './verbs/questions.ts'
import { replacingVerbs } from './verbs/replacing.ts'
import { secondLookVerbs } from './verbs/second-looks.ts'
import { shimVerbs } from './verbs/shims.ts'
import { stripVerbs } from './verbs/strip.ts'
import { tighteningVerbs } from './verbs/tightening.ts'
import { tighteningOrderVerbs } from './verbs/tightening-order.ts'
import { timingVerbs } from './verbs/timing.ts'
import { torqueVerbs } from './verbs/torque.ts'

/** Everything that a line can begin with, by subject. */
export const verbs: readonly Verb[] = [
  ...stripVerbs,
  ...containerVerbs,
  ...labelVerbs,
  ...pictureVerbs,
  ...pieceVerbs,
  ...outingVerbs,
  ...decisionVerbs,
  ...buyingVerbs,
  ...arrivalVerbs,
  ...replacingVerbs,
  ...judgingVerbs,
  ...findingVerbs,
  ...planVerbs,
  ...buildVerbs,
  ...consumableVerbs,
  ...secondLookVerbs,
  ...positionVerbs,
  ...tighteningVerbs,
  ...looseningVerbs,
  ...tighteningOrderVerbs,
  ...shimVerbs,
  ...measuringVerbs,
  ...torqueVerbs,
  ...coolantVerbs,
  ...timingVerbs,
  ...countingVerbs,
  ...jobVerbs,
  ...doctorVerbs,
  ...foundVerbs,
  ...questionVerbs,
]
