import type { ConsumableId, OutingId, SecondLine } from './waiting-facts.ts'

/** Why a step waits for somebody, or for time to pass. */
export type WaitingReason =
  /** Nobody has said what the shop took out. */
  | { code: 'out-unanswered'; outing: OutingId }
  /** A line of a critical step that is still to be seen a second time. */
  | { code: 'second-due'; step: number; line: SecondLine }
  | { code: 'consumable-due'; consumable: ConsumableId }
  /** The joint was put together too late after it was put on: by so many minutes. */
  | { code: 'worked-late'; consumable: ConsumableId; late: number }
  /** It must set until that time. */
  | { code: 'curing'; consumable: ConsumableId; until: string }
