import { readPositions } from '../positions.ts'
import { notUnderstood, type Reading, understood } from '../reading.ts'
import { lengthFrom, looksLikeLength, type TypedLength, withLastUnit } from './read-length.ts'
import type { ShimFault } from './shim-fault.ts'

/** A valve as it was typed: `I1 0.14 2.45`. Null: without its shim, which the record may know. */
export interface TypedValve {
  position: string
  clearance: TypedLength
  fitted: TypedLength | null
}

/** As many as positions can have. */
const mostValves = 200
/** No valve is set to a wider gap, and no shim is thinner. Common practice. */
const mostClearance = 1.5
const leastShim = 0.5

/**
 * Reads valves with the clearance measured and the shim fitted: `I1 0.14 2.45, I2 0,15 2,40; E1: 0.26 2.50`. A comma
 * with a space or a letter behind it parts valves, one between digits is a decimal comma. The unit of the last number
 * holds for both.
 */
export function readValves(text: string): Reading<TypedValve[], ShimFault> {
  const valves: TypedValve[] = []
  for (const words of itemsOf(text)) {
    const valve = readValve(words, valves.at(-1))
    if (!valve.understood) return valve
    const { position } = valve.value
    if (valves.some((other) => other.position.toLowerCase() === position.toLowerCase())) {
      return notUnderstood('twice', words.join(' '), valves.map(valveText).join(', '))
    }
    valves.push(valve.value)
    if (valves.length > mostValves) return notUnderstood('too-many', words.join(' '), valveText(valve.value))
  }
  return understood(valves)
}

function valveText({ position, clearance, fitted }: TypedValve): string {
  return [position, clearance.typed, fitted?.typed ?? ''].join(' ').trim()
}

/** The words of each valve: commas and semicolons part them, and so does a position after a number. */
function itemsOf(text: string): string[][] {
  return text
    .split(/[;\n]|,(?=\s|\p{L}|$)/u)
    .map((item) => item.split(/[\s:=]+/u).filter((word) => word !== ''))
    .flatMap((words) => {
      const starts = words.flatMap((word, at) => {
        const isPosition = /\p{L}/u.test(word) && /\d/.test(word) && !looksLikeLength(word)
        return at === 0 || isPosition ? [at] : []
      })
      return starts.map((start, at) => words.slice(start, starts[at + 1]))
    })
    .filter((words) => words.length > 0)
}

function readValve(words: readonly string[], before: TypedValve | undefined): Reading<TypedValve, ShimFault> {
  const typed = words.join(' ')
  const [position = '', ...rest] = withLastUnit(words.filter((word) => !/^(?:shim|fitted|with)$/i.test(word)))
  const positions = readPositions(position)
  const isPosition = positions.understood && positions.value.length === 1
  const lengths = rest.map(lengthFrom)
  const badComma = rest.find((word) => looksLikeLength(word) && word.includes(',') && !lengthFrom(word))
  if (badComma !== undefined) return notUnderstood('comma', badComma, commaText(badComma))
  const [clearance, fitted] = lengths
  if (!isPosition || !clearance || lengths.length > 2 || lengths.includes(undefined)) {
    const isRestOfBefore = before?.fitted === null && words.length === 1 && looksLikeLength(typed)
    if (isRestOfBefore) return notUnderstood('valve', typed, `${valveText(before)} ${typed}`)
    const [one = 'CLEARANCE', other = 'SHIM'] = (isPosition ? rest : words).filter((word) => lengthFrom(word))
    return notUnderstood('valve', typed, `${isPosition ? position : 'VALVE'} ${one} ${other}`)
  }
  if (fitted && clearance.mm >= leastShim && fitted.mm <= mostClearance) {
    return notUnderstood('turned-round', typed, `${position} ${fitted.typed} ${clearance.typed}`)
  }
  if (clearance.mm > mostClearance || clearance.mm < 0) {
    return notUnderstood('too-large', clearance.typed, 'CLEARANCE')
  }
  return understood({ position, clearance, fitted: fitted ?? null })
}

/** `0,14,2,45` was meant as two numbers, as far as one can tell. */
function commaText(part: string): string {
  const [, first, second] = /^(\d+,\d+),(\d+,\d+)$/.exec(part) ?? []
  return first && second ? `${first} ${second}`.replace(/,/g, '.') : 'CLEARANCE SHIM'
}
