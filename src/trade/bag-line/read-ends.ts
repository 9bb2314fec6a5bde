import { readPositions } from '../positions.ts'
import type { AidItem } from './bag-item.ts'
import { readCount } from './count.ts'
import { asOne, connectionNoun, isAid, isOnlyAid, isPlural } from './nouns.ts'
import { fault, isFault, type Outcome } from './outcome.ts'

/**
 * Reads what has `>` in it: a connection that begins with what it is (`fuel hose tank > rail`), or an aid and where it
 * was put (`rag > inlet port 1`). Undefined for a text without `>`.
 */
export function readEnds(text: string): Outcome | undefined {
  if (!text.includes('>')) return undefined
  const [left = '', right = '', ...more] = text.split('>').map((side) => side.trim())
  const connection = splitConnection(left)
  if (connection) return readConnection(connection.label, `${connection.end}>${[right, ...more].join('>')}`)
  if (more.length > 0) return fault('where', text, `${left} > ${right}`)
  return readAid(left, right)
}

/**
 * Reads the ends of a connection: `tank > rail`, or one end alone, as of a wiring connector.
 * @param label what it is, ending in its noun: `fuel hose`
 */
export function readConnection(label: string, text: string): Outcome {
  const words = label.split(' ')
  const count = readCount(words)
  if (isFault(count)) return count
  const named = words.slice(count.used).join(' ')
  const name = connectionNoun(named) ?? 'hose'
  // `from tank to rail` names two ends, and `to the pump` one.
  const ends = text
    .replace(/^from (?=.+ to )/i, '')
    .split(/>|(?<=\S) to (?=\S)/i)
    .map((end) => end.trim())
    .filter((end) => end !== '')
  const [first = 'tank', second = 'rail'] = ends
  // Each has ends of its own to be closed, so each is a line of its own.
  if (count.found > 1) {
    return fault('count', words.slice(0, count.used).join(' '), `${asOne(named)}: ${first} > ${second}`)
  }
  const typed = text.trim()
  if (ends.length === 0) return fault('ends', label, `${named}: tank > rail`)
  if (ends.length > 2) return fault('ends', typed, `${named}: ${first} > ${second}`)
  if (ends.length === 2 && first.toLowerCase() === second.toLowerCase()) {
    return fault('ends', typed, `${named}: ${first} > rail`, `${named}: tank > ${second}`)
  }
  return {
    items: [
      {
        kind: 'connection',
        name,
        ...(named.includes(' ') && { label: named }),
        ends: ends.length === 1 ? [first] : [first, second],
      },
    ],
  }
}

/** Reads an aid and where it was put: `2 rags`, `inlet ports 1..2`. */
export function readAid(what: string, where: string): Outcome {
  const words = what.split(' ')
  const count = readCount(words)
  if (isFault(count)) return { ...count, nearest: [`${count.nearest.at(-1)} > ${where}`] }
  const name = words.slice(count.used).join(' ')
  if (name === '') return fault('where', `${what} > ${where}`.trim(), `rag > ${where}`)
  if (where === '') return fault('where', what, `${what} > inlet port 1`)
  const placeWords = where.split(' ')
  const last = placeWords.at(-1) ?? ''
  const isNumbered = /\d(?:\.\.|…|,|-)./u.test(last)
  const positions = isNumbered ? readPositions(last.replace(/^@/, '')) : undefined
  const place = placeWords.slice(0, -1).join(' ')
  if (!positions) return { items: [aid(name, count.found, where, undefined, count.isStated)] }
  const before = place === '' ? 'inlet ports' : place
  if (!positions.understood) return fault('positions', last, `${what} > ${before} ${positions.nearest}`)
  if (place === '') return fault('where', where, `${what} > inlet ports ${where}`)
  const { length } = positions.value
  if (count.isStated && count.found !== length)
    return fault('positions', last, `${length} ${name} > ${where}`)
  return { items: [aid(name, length, place, positions.value, true)] }
}

/** Reads an aid told in words: `rag in inlet port 1`. Undefined for any other text. */
export function readAidInWords(text: string): Outcome | undefined {
  const match = /^(.{1,60}?) (?:in|into|on) (.+)$/i.exec(text)
  const [, what = '', where = ''] = match ?? []
  if (match && (isOnlyAid(what) || /\b(?:blanking|locking) \S{1,20}$/i.test(what)))
    return readAid(what, where)
  return isOnlyAid(text) ? readAid(text, '') : undefined
}

/** `fuel hose tank` is a fuel hose with one end at the tank; an aid is none, although it may hold a hose. */
function splitConnection(left: string): { label: string; end: string } | undefined {
  const words = left.split(' ')
  if (connectionNoun(left)) return { label: left, end: '' }
  if (isAid(left)) return undefined
  // No connection has a name of more than five words.
  const at = words
    .slice(0, 5)
    .findLastIndex((_, i) => connectionNoun(words.slice(0, i + 1).join(' ')) !== undefined)
  if (at < 0) return undefined
  return { label: words.slice(0, at + 1).join(' '), end: words.slice(at + 1).join(' ') }
}

function aid(
  name: string,
  count: number,
  where: string,
  positions: string[] | undefined,
  isCounted: boolean,
): AidItem {
  return {
    kind: 'aid',
    name,
    count,
    where,
    ...(positions && { positions }),
    questions: isPlural(name) && !isCounted ? [{ code: 'count-assumed', count }] : [],
  }
}
