/**
 * One of what a plural names: `cam caps` gives `cam cap`. A name that is not surely a plural stays as it is:
 * better a plain plural for one piece than a word that does not exist.
 */
export function singular(name: string): string {
  const match = /^(.*?)([A-Za-z]+)$/.exec(name)
  if (!match || /[,;:()]|\b(with|of|for|to|at|from|in|on|and|under|behind)\b/i.test(name)) return name
  const [, before = '', last = ''] = match
  const one = singularWord(last)
  return one === null ? name : before + one
}

/** `a, b and c`. */
export function joined(items: readonly string[], word: 'and' | 'or' = 'and'): string {
  const last = items.at(-1) ?? ''
  if (items.length < 2) return last
  return `${items.slice(0, -1).join(', ')} ${word} ${last}`
}

/** A text as a sentence of its own: a capital first, unless it begins with an id or a code; a stop last. */
export function sentence(text: string): string {
  const first = /^[a-z](?=[a-z ])/.test(text) ? text.charAt(0).toUpperCase() + text.slice(1) : text
  return /[.?]$/.test(first) ? first : `${first}.`
}

/** `1 reason`, `3 reasons`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`
}

/** `step 3`, `steps 3, 4 and 7`. */
export function stepNumbers(numbers: readonly number[]): string {
  return `${numbers.length === 1 ? 'step' : 'steps'} ${joined(numbers.map(String))}`
}

/** Numbers in rising order as a person says them: `5 to 9, 12 and 14 to 20`. */
export function numberRanges(numbers: readonly number[]): string {
  const ranges: { from: number; to: number }[] = []
  for (const number of [...numbers].sort((a, b) => a - b)) {
    const last = ranges.at(-1)
    if (last && number <= last.to + 1) last.to = number
    else ranges.push({ from: number, to: number })
  }
  return joined(
    ranges.flatMap(({ from, to }) =>
      to - from < 2 ? [...new Set([from, to])].map(String) : [`${from} to ${to}`],
    ),
  )
}

/** `is` or `are`. */
export function isAre(count: number): string {
  return count === 1 ? 'is' : 'are'
}

/** A number of litres without needless digits: `2.1 L`. */
export function litresText(litres: number): string {
  return `${Number(litres.toFixed(2))} L`
}

const IRREGULAR = new Map([
  ['halves', 'half'],
  ['shelves', 'shelf'],
  ['buses', 'bus'],
  ['lenses', 'lens'],
  ['leaves', 'leaf'],
])

/** Words that end like a plural and are none, or have no singular of their own. */
const NOT_PLURAL = new Set(
  'gas bias lens canvas series species axes gases knives dies ties pliers scissors tongs tweezers calipers goggles works news'.split(
    ' ',
  ),
)

function singularWord(word: string): string | null {
  const lower = word.toLowerCase()
  const irregular = IRREGULAR.get(lower)
  if (irregular) return irregular
  if (lower.length < 4 || NOT_PLURAL.has(lower) || !lower.endsWith('s') || /(ss|us|is|os|oes)$/.test(lower)) {
    return null
  }
  if (lower.endsWith('ies')) return `${word.slice(0, -3)}y`
  if (/(shes|ches|xes|sses)$/.test(lower)) return word.slice(0, -2)
  return word.slice(0, -1)
}
