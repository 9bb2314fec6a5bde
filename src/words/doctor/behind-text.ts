import type { Entry } from '../../journal/entry.ts'
import type { Behind } from '../../session/health.ts'

/**
 * An entry that nothing can be said about by what stands before it: its number, when, its kind, and the words and moves
 * in it, enough to say it again. `?`: it can be read, but is not proved.
 */
export function behindText({ n, entry, isProved }: Behind<Entry>, when: (at: string) => string): string {
  const number = `${String(n).padStart(4)}${isProved ? ' ' : '?'}`
  if (entry === null) return `${number} not known to this program`
  const all = [...new Set(factsOf(entry))]
  const facts = [...all.slice(0, MOST_FACTS), ...(all.length > MOST_FACTS ? ['...'] : [])].join(', ')
  const kind = entry.type.replaceAll('-', ' ')
  return `${number} ${when(entry.at)}  ${kind}${facts === '' ? '' : `: ${facts}`}`
}

const MOST_FACTS = 8
const HEADER = new Set(['v', 'n', 'at', 'id', 'by', 'type'])

/** What a person wrote or would look for, in the order of the entry. */
function factsOf(entry: Entry): string[] {
  return Object.entries(entry).flatMap(([key, value]) => (HEADER.has(key) ? [] : told(key, value)))
}

function told(key: string, value: unknown): string[] {
  if (Array.isArray(value)) return value.flatMap((each) => told(key, each))
  if (typeof value === 'object' && value !== null) {
    const move = moveText(value)
    return move === null ? Object.entries(value).flatMap(([inner, each]) => told(inner, each)) : [move]
  }
  if (typeof value === 'string')
    return WORDS.has(key) ? [value] : REFERENCES.has(key) ? [`${key} ${value}`] : []
  return typeof value === 'number' && NUMBERS.has(key) ? [`${key} ${value}`] : []
}

function moveText(value: object): string | null {
  if (!('piece' in value && 'count' in value && 'to' in value)) return null
  const { piece, count, to } = value
  return `${count} ${piece} to ${placeText(String(to))}`
}

/** What kind a container is, is not known here: its number is what stands on it. */
function placeText(place: string): string {
  const [, container, slot] = /^c(\d+)(?:\/(.+))?$/.exec(place) ?? []
  if (container === undefined) return place
  return slot === undefined ? `container ${container}` : `container ${container} slot ${slot}`
}

const WORDS = new Set(
  'name title text reason note typed how says result machine what because condition size'.split(' '),
)
const REFERENCES = new Set(
  'piece mark fluid tightening loosening fastener position fault difference order'.split(' '),
)
const NUMBERS = new Set('step container entry count litres counted'.split(' '))
