import { sentence } from './grammar.ts'

/** What a person is told when something was not done: what, with its arithmetic; more where there is more; what to do. */
export interface Told {
  what: string
  lines: string[]
  cure: string
}

/** Puts the three parts into sentences. */
export function told(what: string, cure: string, lines: readonly string[] = []): Told {
  return { what: sentence(what), lines: lines.map(sentence), cure: sentence(cure) }
}
