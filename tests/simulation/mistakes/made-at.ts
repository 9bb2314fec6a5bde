import type { Act } from '../job/act.ts'
import { nameOf } from '../machines/machine.ts'
import { ALL_MISTAKES } from './all-mistakes.ts'
import type { MistakeClass } from './classes.ts'

/** The kind of mistake of that name, made in one place alone: at a thing, at a position of it (`cam caps A1`), or in a step (`step 2`). */
export function madeAt(name: string, place: string): MistakeClass {
  const mistake = mistakeCalled(name)
  return {
    ...mistake,
    at: (acts, nth, machine) => (isAt(acts[nth], place) ? mistake.at(acts, nth, machine) : null),
  }
}

/** Throws where no kind of mistake has that name. */
export function mistakeCalled(name: string): MistakeClass {
  const found = ALL_MISTAKES.find((each) => each.name === name)
  if (!found) throw new Error(`no kind of mistake is called ${name}`)
  return found
}

function isAt(act: Act | undefined, place: string): boolean {
  if (!act) return false
  const { thing, at, step } = act
  if (!thing) return place === `step ${step}`
  const name = nameOf(thing)
  return place === name || place === `${name} ${at}`
}
