import type { Thing } from '../machines/machine.ts'
import type { MistakeClass } from '../mistakes/classes.ts'

/** A kind of mistake, made at one thing alone. */
export function madeAt(mistake: MistakeClass, name: string): MistakeClass {
  return {
    ...mistake,
    at: (acts, place, machine) => {
      const thing = acts[place]?.thing
      return thing && nameOf(thing) === name ? mistake.at(acts, place, machine) : null
    },
  }
}

function nameOf(thing: Thing): string {
  return 'name' in thing ? thing.name : thing.text
}
