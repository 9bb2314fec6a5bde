/** What a typed text comes to: its value, or what was not understood and the nearest form that would be. */
export type Reading<Value, Fault extends string> = { understood: true; value: Value } | NotUnderstood<Fault>

export interface NotUnderstood<Fault extends string> {
  understood: false
  code: Fault
  /** The part of the text that is not understood, as typed. */
  part: string
  /** A form that is understood, built from the words typed where that is possible. */
  nearest: string
}

/** A reading that came to a value. */
export function understood<Value>(value: Value): { understood: true; value: Value } {
  return { understood: true, value }
}

/** A reading that came to nothing, with what would have been understood instead. */
export function notUnderstood<Fault extends string>(
  code: Fault,
  part: string,
  nearest: string,
): NotUnderstood<Fault> {
  return { understood: false, code, part, nearest }
}
