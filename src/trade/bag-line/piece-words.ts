import { singular } from './nouns.ts'
import type { Fault } from './outcome.ts'
import { numbersFrom, positionsFrom } from './position-words.ts'
import type { At, Saying } from './saying.ts'
import { classFrom, driveFrom, threadFrom, torqueFrom } from './size-words.ts'
import { stateFrom } from './state-words.ts'

/**
 * What the words of a clause say from a place on: the longest run that says one thing. The `nearest` of a fault stands
 * for its `part` alone.
 */
export function readSaying(words: readonly string[], at: At): Saying | Fault {
  const plain = words.map((word) => word.replace(/^\(|(?<!\.)[.!]\)?$|\)$/g, ''))
  return (
    stateFrom(plain, at) ??
    fateFrom(plain, at) ??
    washersFrom(plain, at.from) ??
    positionsFrom(plain, at.from) ??
    threadFrom(plain, at.from) ??
    classFrom(plain, at.from) ??
    numbersFrom(plain, at) ??
    driveFrom(plain, at.from) ??
    torqueFrom(plain, at.from) ?? { says: 'name', used: 1 }
  )
}

/** `single-use`, `new` behind a comma or at the end, `renew`, `reuse`. */
function fateFrom(words: readonly string[], { clause, from }: At): Saying | undefined {
  const [first = '', second = ''] = words.slice(from, from + 2).map((word) => word.toLowerCase())
  if (/^(?:single-?use|renew|one-?time)$/.test(first)) return { says: 'single-use', used: 1 }
  if (first === 'single' && second === 'use') return { says: 'single-use', used: 2 }
  if (/^(?:re-?use|re-?usable)$/.test(first)) return { says: 'reuse', used: 1 }
  const isLast = from === words.length - 1
  const isWholeClause = clause > 0 && from === 0
  if (isLast && from > 0 && clause === 0 && first === 'new') return { says: 'single-use', used: 1 }
  if (isWholeClause && isLast && /^(?:new|replace)$/.test(first)) return { says: 'single-use', used: 1 }
  return undefined
}

/** `with copper washers`, `+ washer`. */
function washersFrom(words: readonly string[], from: number): Saying | undefined {
  const first = words[from]?.toLowerCase() ?? ''
  const isGlued = /^\+\p{L}/u.test(first)
  if (!isGlued && !/^(?:with|w\/|\+|and|&|plus|incl\.?|including)$/.test(first)) return undefined
  const begin = isGlued ? from : from + 1
  const end = words.findIndex((word, i) => i >= begin && i < begin + 5 && singular(word) === 'washer')
  if (end < 0) return undefined
  const text = words
    .slice(begin, end + 1)
    .join(' ')
    .replace(/^\+/, '')
  return { says: 'washers', text, used: end + 1 - from }
}
