/** A place in the product's sources where a gate can be switched off while the program runs. */
export interface GateSwitch {
  /** The name of the gate. One gate may stand in several places, which then go off together. */
  gate: string
  /** The file of `src/`. */
  file: string
  /** An expression of that file. */
  find: string
  /** Text of that file that holds the expression, and stands there once; the expression itself when not given. */
  within?: string
  /** The expression that takes its place while the gate is off. */
  becomes: string
}

/** Where the changed sources look up which gates are off: a set of their names. */
export const OFF = 'putbackGatesOff'

/** A source with each gate of it as a question: the expression as it stands, or what becomes of it while the gate is off. */
export function withSwitches(source: string, switches: readonly GateSwitch[]): string {
  return switches.reduce(withSwitch, source)
}

function withSwitch(source: string, { gate, file, find, within = find, becomes }: GateSwitch): string {
  const inside = replaceOnce(
    within,
    find,
    `(globalThis.${OFF}.has(${JSON.stringify(gate)}) ? (${becomes}) : (${find}))`,
  )
  const changed = inside === null ? null : replaceOnce(source, within, inside)
  // Else nothing would be switched off, and nobody would notice.
  if (changed === null) throw new Error(`'${gate}' should stand in src/${file} once: ${within}`)
  return changed
}

/** Null where it is not there exactly once. */
function replaceOnce(text: string, find: string, by: string): string | null {
  const parts = text.split(find)
  return parts.length === 2 ? parts.join(by) : null
}
