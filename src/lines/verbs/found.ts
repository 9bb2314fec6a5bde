import { readFound } from '../read-found.ts'
import type { Verb } from '../verb.ts'

export const foundVerbs: readonly Verb[] = [
  {
    words: ['found'],
    topic: 'questions',
    forms: ['found M6x25 hex 10', 'found 2 cover bolts', 'found bolt 25 mm long'],
    says: 'Looks for the home of something that turned up: what agrees with it, and where the record misses one. Writes nothing.',
    examples: ['found M6x25 hex 10', 'found cover bolt under the bench', 'found a bolt 25 mm long'],
    read: (line) => ({ ask: 'found', found: readFound(line) }),
  },
]
