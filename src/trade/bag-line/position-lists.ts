import { readCount } from './count.ts'
import { isFastener, isPlural } from './nouns.ts'
import { isFault } from './outcome.ts'

const position = '(?:[A-Z]{1,3}|#)?\\d{1,3}\\b'
const between = '(?:,? and |, | ?& ?| ?\\+ ?)'
const list = new RegExp(
  `(\\S*[^\\s,]),? (?:nos?\\.? )?(${position}(?:(?:${between}|,)${position})*${between}${position})(?=,|$)`,
  'giu',
)
const range = new RegExp(
  `(\\S*[^\\s,]),? (?:nos?\\.? )?(${position}) (?:to|through|thru) (${position})(?=,|$)`,
  'giu',
)

/**
 * Positions as hands write them, in the form in which they are read: `cam caps I1, I2 and I3` as `cam caps I1,I2,I3`,
 * `pistons 1 and 2` as `pistons 1..2`, `main caps M1 to M5` as `main caps M1..M5`. Left in the name, they would make
 * one piece of a matched set.
 */
export function joinPositionLists(text: string): string {
  return text
    .replace(range, (all, before: string, first: string, last: string) => {
      const ends = [bare(first), bare(last)]
      return isOfPositions(before, ends) ? `${before} ${ends.join('..')}` : all
    })
    .replace(list, (all, before: string, typed: string) => {
      const positions = typed.split(new RegExp(`${between}|,`, 'iu')).map(bare)
      const isOneEach = /\D/.test(positions[0] ?? '') || isAsMany(text, positions.length)
      return isOneEach && isOfPositions(before, positions) ? `${before} ${joined(positions)}` : all
    })
}

/** Alike in their letters and each another; bare numbers only behind several things. */
function isOfPositions(before: string, positions: readonly string[]): boolean {
  const [first = '', ...further] = positions.map((each) => each.replace(/\d+/g, '').toUpperCase())
  const isAlike = further.every((letters) => letters === first)
  const isEachAnother = new Set(positions.map((each) => each.toUpperCase())).size === positions.length
  if (!isAlike || !isEachAnother) return false
  // Behind a fastener these are threads, drives and steels.
  return first === '' ? isPlural(before) : !(isFastener(before) && /^[MTEA]$/.test(first))
}

/** Whether the line counts as many pieces, or none. */
function isAsMany(text: string, positions: number): boolean {
  const count = readCount(text.split(' '))
  return isFault(count) || !count.isStated || count.should === positions
}

/** Two bare numbers with a comma would be a decimal number. */
function joined(positions: readonly string[]): string {
  const [first = '', second = '', ...further] = positions
  if (further.length > 0 || /\D/.test(first)) return positions.join(',')
  return Number(second) === Number(first) + 1 ? `${first}..${second}` : `${first}..${first},${second}`
}

function bare(position: string): string {
  return position.replace('#', '')
}
