import { readDecimal, withoutNoise } from '../number.ts'
import { readPositions } from '../positions.ts'
import { notUnderstood, type Reading, understood } from '../reading.ts'
import { lengthFrom, withLastUnit } from './read-length.ts'
import type { ShimFault } from './shim-fault.ts'
import type { ClearanceRange } from './valve.ts'

/** A range and the valves that it is for: positions (`E3`), their letters (`E`), or all (null). */
export interface WantedRange extends ClearanceRange {
  of: string | null
}

// Common practice, in the words as in the letters of positions.
const groupWords = new Map(
  Object.entries({ inlet: 'I', inlets: 'I', intake: 'I', in: 'I', exhaust: 'E', exhausts: 'E', ex: 'E' }),
)

/**
 * Reads the ranges wanted: `0.13..0.17`, `I 0.13..0.17 E 0,22-0,28`, `E3 0.25±0.03`, `inlet 0.005..0.007 in`. One number
 * is no range: what the manual gives as both limits is never made up.
 */
export function readWanted(text: string): Reading<WantedRange[], ShimFault> {
  const words = text
    .replace(/ ?(\.\.|±|\+\/?-) ?/g, (_, sign: string) => (sign === '..' ? '..' : '±'))
    .replace(/(\d["\p{L}]*) (?:-|to) (?=[\d.])/giu, '$1..')
    .split(/[;\s]+|,(?=\s|\p{L}|$)/u)
    .map((word) => word.replace(/[:=]$/, ''))
    .filter((word) => word !== '')
  const ranges: WantedRange[] = []
  let group: string[] = []
  for (const word of words) {
    const range = rangeFrom(word)
    if (range === undefined) {
      if (lengthFrom(word) && !/^\d{1,3}$/.test(word)) return limitMissing([...group, word].join(' '), group)
      group.push(word)
      continue
    }
    if (range === 'limits') return notUnderstood('limits', word, turnedRound(word))
    for (const of of group.length === 0
      ? [null]
      : group.map((name) => groupWords.get(name.toLowerCase()) ?? name)) {
      if (of !== null && !readPositions(of).understood) return limitMissing(of, group)
      if (ranges.some((other) => other.of?.toLowerCase() === of?.toLowerCase())) {
        return notUnderstood('twice', [...group, word].join(' '), ranges.map(rangeText).join(' '))
      }
      ranges.push({ of, ...range })
    }
    group = []
  }
  if (group.length > 0 || ranges.length === 0) return limitMissing(group.join(' '), group)
  return understood(ranges)
}

/** The range for a valve: the one for its position goes before that for its letters, and that before the one for all. */
export function rangeFor(position: string, ranges: readonly WantedRange[]): WantedRange | undefined {
  const name = position.toLowerCase()
  const letters = name.replace(/\d+/gu, '')
  const positionsOf = (of: string) => {
    const positions = readPositions(of)
    return positions.understood ? positions.value.map((one) => one.toLowerCase()) : []
  }
  return (
    ranges.find(({ of }) => of !== null && /\d/.test(of) && positionsOf(of).includes(name)) ??
    ranges.find(({ of }) => of !== null && of.toLowerCase() === letters) ??
    ranges.find(({ of }) => of === null)
  )
}

function rangeFrom(word: string): ClearanceRange | 'limits' | undefined {
  const [, middleText = '', about = ''] = /^(.+)±(.+)$/.exec(word) ?? []
  const [, from = '', to = ''] = /^([\d.,]*\d["a-z]*)(?:\.\.|-)(.+)$/i.exec(word) ?? []
  const [first, second] = withLastUnit(middleText === '' ? [from, to] : [middleText, about]).map(lengthFrom)
  if (!first || !second) return undefined
  // `1..4` and `1-4` are valves by their numbers; no clearance is a whole number of millimetres.
  const areWhole = [from, to].every((text) => /^\d+$/.test(text))
  if (areWhole) return undefined
  const range =
    middleText === ''
      ? { least: first.mm, most: second.mm }
      : { least: withoutNoise(first.mm - second.mm), most: withoutNoise(first.mm + second.mm) }
  return range.least > range.most || range.least < 0 ? 'limits' : range
}

function turnedRound(word: string): string {
  const [, from = '', sign = '..', to = ''] = /^([\d.,]*\d)(\.\.|-)([\d.,]*\d)$/.exec(word) ?? []
  return readDecimal(from) === undefined ? 'LEAST..MOST' : `${to}${sign}${from}`
}

function limitMissing(part: string, group: readonly string[]): Reading<WantedRange[], ShimFault> {
  const [of = ''] = group
  return notUnderstood('limit-missing', part, `${of} LEAST..MOST`.trim())
}

function rangeText({ of, least, most }: WantedRange): string {
  return `${of ?? ''} ${least}..${most}`.trim()
}
