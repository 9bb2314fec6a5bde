import { plainText } from '../label/plain-text.ts'
import { STEERING } from '../label/without-steering.ts'

/**
 * An entry whose texts neither steer a terminal nor hide or turn what they say, changed in place where they did. What this
 * program writes is so already, but a journal may come from elsewhere: the schema takes any text, and no view, label or
 * list that is made from it asks again.
 */
export function harmless<T>(value: T): T {
  return cleaned(value) as T
}

function cleaned(value: unknown): unknown {
  if (typeof value === 'string') return STEERING.test(value) ? plainText(value) || NOTHING_LEFT : value
  if (typeof value !== 'object' || value === null) return value
  for (const [key, inner] of Object.entries(value)) {
    const clean = cleaned(inner)
    if (clean !== inner) Reflect.set(value, key, clean)
  }
  return value
}

/** For what was nothing but that: some texts must not be empty. */
const NOTHING_LEFT = '\ufffd'
