import type { ComparedFeature, Likeness } from '../plan/judging/judging-facts.ts'

/** What is said of a new piece beside the old one. */
export interface ComparisonSaid {
  features: ComparedFeature[]
  /** What all features are that are not named. */
  rest?: Likeness | undefined
  says?: string | undefined
  keep?: boolean | undefined
}

/**
 * Reads `ports alike, 2 differs one more, rest alike, keep old`: features by name or by their numbers in `proposed`.
 * Words behind `differs` and `wrong` are the user's own, commas and all. Null where a part says nothing.
 */
export function readComparison(text: string, proposed: readonly string[]): ComparisonSaid | null {
  const keep = KEEP.test(text)
  const parts = text
    .replace(KEEP, '')
    .split(/[,;]/)
    .map((part) => part.trim())
    .filter((part) => part !== '')
  const said: ComparisonSaid = { features: [], ...(keep && { keep }) }
  /** Named, and waiting for what they are: `ports, holes alike`. */
  let waiting: string[] = []
  let last: { says?: string | undefined } | null = null
  for (const part of parts) {
    const [, subject = '', word = '', words = ''] = CLAUSE.exec(part) ?? []
    if (word === '') {
      waiting.push(part)
      continue
    }
    const how = likeness(word)
    const says = words === '' ? undefined : words
    if (/^(?:|all|rest|the rest|the others?)$/i.test(subject) && waiting.length === 0) {
      said.rest = how
      said.says = says
      last = said
    } else {
      const named = [...waiting, subject].filter((name) => !/^(?:|all)$/i.test(name))
      const features = named.map((name): ComparedFeature => ({ feature: known(name, proposed), how, says }))
      said.features.push(...features)
      last = features.at(-1) ?? null
    }
    waiting = []
  }
  if (waiting.length > 0) {
    // What stands behind the last verdict goes on with its words: `wrong, the flange is turned`.
    if (last === null) return null
    last.says = [last.says, ...waiting].filter(Boolean).join(', ')
  }
  return parts.length === 0 ? null : said
}

const CLAUSE = /^(.*?) ?\b(alike|same|differs?|different|wrong)\b ?(?:because |: ?)?(.*)$/i
const KEEP = /,? ?\b(?:and )?keep (?:the )?old(?: one)?\b/i

function likeness(word: string): Likeness {
  if (/^wrong$/i.test(word)) return 'wrong'
  return /^(?:alike|same)$/i.test(word) ? 'alike' : 'differs'
}

/** A feature by its number in the list or by its name; else as it was typed. */
function known(name: string, proposed: readonly string[]): string {
  const number = /^\d{1,2}$/.test(name) ? Number(name) : 0
  const plain = name
    .replace(/^(?:the )/i, '')
    .replace(/ (?:is|are)$/i, '')
    .toLowerCase()
  return proposed[number - 1] ?? proposed.find((feature) => feature.toLowerCase() === plain) ?? plain
}
