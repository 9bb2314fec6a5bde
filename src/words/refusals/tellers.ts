import type { Refusal, RefusalCode } from '../../journal/refusal.ts'
import type { State } from '../../journal/state.ts'
import type { LabelCode } from '../leftovers.ts'
import type { Told } from '../told.ts'

export type RefusalOf<Code extends RefusalCode> = Extract<Refusal, { code: Code }>

/** How each of some refusals is told; the compiler asks for every code. */
export type Tellers<Code extends RefusalCode> = {
  [Each in Code]: (state: State, refusal: RefusalOf<Each>, code: LabelCode) => Told
}
