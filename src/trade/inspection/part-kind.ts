import { singular } from '../bag-line/nouns.ts'
import { type NameEnds, nameEnds, otherEnds, type PartKind } from './name-ends.ts'

// What stands around the words that name a thing: which one it is, its size, how it looks.
const qualifiers = new Set(
  (
    'left right lh rh front rear upper lower top bottom inner outer inlet intake exhaust in ex exh first second third fourth ' +
    'long short large small big old used worn burnt cracked broken assembly assy set kit pair half complete ' +
    'no number nr x mm the a'
  ).split(' '),
)
const mark = /^(?:[a-z]{0,3}#?\d+(?:[.,/x×]\d+)*(?:mm|in)?[a-z]?)$/
// `bolts of the pump`, `hose from block to radiator`, `bolt, cylinder head`: what comes behind tells which one it is.
const behindTheNoun = /[,;:(].*$| (?:of|for|from|to|with|in|on|at|under|behind|between|without) .*$/

const kinds = Object.entries(nameEnds) as [PartKind, NameEnds][]
const byEnd = new Map<string, PartKind | undefined>([
  ...kinds.flatMap(([kind, { ends = [] }]) => ends.map((end) => [end, kind] as const)),
  ...otherEnds.map((end) => [end, undefined] as const),
])
const byWholeName = new Map(
  kinds.flatMap(([kind, { alone = [] }]) => alone.map((name) => [name, kind] as const)),
)
const longestEnd = Math.max(...[...byEnd.keys()].map((end) => end.split(' ').length))

/**
 * What kinds of things a name tells of, each once and in the order named: `exhaust valve`, `bucket and shim`. Empty for
 * a name that the trade's words say nothing of. The longest end of a name that is known decides.
 */
export function partKinds(name: string): PartKind[] {
  const things = name
    .toLowerCase()
    .replace(/^(?:\d+ )?(?:set|pair|box|bag)s? of /, '')
    .split(/ and | or |[&+/]/)
    .map(partKind)
  return [...new Set(things.filter((kind) => kind !== undefined))]
}

function partKind(name: string): PartKind | undefined {
  const words = name
    .trim()
    .replace(behindTheNoun, '')
    .split(/[\s\u2010-\u2015-]+/u)
    .filter((word) => word !== '')
    .map((word) => (word === 'halves' ? 'half' : singular(word)))
  for (let until = words.length; until > 0; until--) {
    const named = words.slice(0, until)
    const whole = byWholeName.get(withoutLeadingQualifiers(named).join(' '))
    if (whole !== undefined) return whole
    const length = knownEnd(named)
    if (length > 0) return byEnd.get(named.slice(-length).join(' '))
    if (!isQualifier(named.at(-1) ?? '')) return undefined
  }
  return undefined
}

/** How many words the longest known end of a name has; 0 when none fits. */
function knownEnd(words: readonly string[]): number {
  for (let length = Math.min(longestEnd, words.length); length > 0; length--) {
    if (byEnd.has(words.slice(-length).join(' '))) return length
  }
  return 0
}

function withoutLeadingQualifiers(words: readonly string[]): readonly string[] {
  const first = words.findIndex((word) => !isQualifier(word))
  return first === -1 ? [] : words.slice(first)
}

function isQualifier(word: string): boolean {
  return qualifiers.has(word) || mark.test(word)
}
