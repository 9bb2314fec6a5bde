import { readDecimal, readWhole, tidy } from '../number.ts'
import { notUnderstood, type Reading, understood } from '../reading.ts'
import {
  type Measured,
  type Rotation,
  runOnSide,
  type Shaft,
  type Side,
  sideOfMark,
} from './misplaced-mark.ts'

/** What was measured, and which way the engine runs as seen, where that was said. */
export interface MisplacedAsTyped {
  measured: Measured
  runs?: Rotation
}

/**
 * Why it was not understood: nothing there; no amount; degrees of what; early or late not said; which run was counted
 * not said; which way the engine runs not said, where left, right or clockwise says nothing without it; words that
 * say nothing here.
 */
export type MisplacedFault =
  | 'empty'
  | 'amount'
  | 'crank-or-cam'
  | 'early-or-late'
  | 'tight-or-slack'
  | 'which-way-it-runs'
  | 'words'

/**
 * Reads how a mark is off: `1 late`, `15 deg crank late`, `7.5 deg cam clockwise, runs clockwise`, `16 pins for 15 on
 * the tight side`, `16 for 15 right, runs clockwise`.
 */
export function readMisplaced(text: string): Reading<MisplacedAsTyped, MisplacedFault> {
  const typed = text.trim()
  if (typed === '') return notUnderstood('empty', '', '1 late')
  const words = new Words(tidy(text).toLowerCase())
  const runs = words.take(
    /\b(?:it )?(?:runs?|turns?|rotates?|rotation|running) (?:is )?(clockwise|anticlockwise|counter-?clockwise|cw|a?ccw|acw)\b/,
  )
  const counted = words.take(
    /\b(?:found |counted )?(\d{1,4}) ?(?:pins?|links?|teeth|tooth)? ?(?:,? ?(?:for|not|instead of|should be|wanted)) (\d{1,4}) ?(?:pins?|links?|teeth|tooth)?\b/,
  )
  const degrees = counted
    ? null
    : words.take(/(?:^|\s)([\d.,]{1,12}) ?(?:(crank|cam)(?:shaft)? ?)?(?:°|deg(?:rees?)?\b\.?)/)
  const teeth =
    counted || degrees
      ? null
      : words.take(/(?:^|\s)(\d{1,4}|one|two|three|four|five|six)(?: ?(?:teeth|tooth|pins?|links?|t))?\b/)
  const found: Found = {
    typed,
    runs: runs ? rotationOf(runs[0]) : undefined,
    shaft: shaftOf(degrees?.[1] || words.take(/\b(crank|cam)(?:shaft)?\b/)?.[0]),
    side: sideOf(words.take(/\b(early|late|advanced?|retarded?|ahead|behind|fast|slow)\b/)?.[0]),
    seen: words.take(/\b(left|right)\b/)?.[0] as 'left' | 'right' | undefined,
    stands: undefined,
    run: words.take(/\b(tight|slack|pulled|driving|tensioner)\b/)?.[0],
  }
  const stands = words.take(/\b(clockwise|anticlockwise|counter-?clockwise|cw|a?ccw|acw)\b/)?.[0]
  if (stands !== undefined) found.stands = rotationOf(stands)
  if (words.left !== '') return notUnderstood('words', words.left, '1 late')
  if (counted) return readCount(Number(counted[1]), Number(counted[0]), found)
  if (degrees) return readDegrees(readDecimal(degrees[0] ?? ''), found)
  return readTeethOff(readWhole(teeth?.[0] ?? ''), found)
}

interface Found {
  typed: string
  runs: Rotation | undefined
  shaft: Shaft | undefined
  side: Side | undefined
  seen: 'left' | 'right' | undefined
  stands: Rotation | undefined
  run: string | undefined
}

function readCount(wanted: number, found: number, said: Found): Reading<MisplacedAsTyped, MisplacedFault> {
  const form = `${found} for ${wanted}`
  const at = said.shaft ?? 'cam'
  // A count says by itself whether the cam is early or late.
  if (said.side !== undefined || said.stands !== undefined) {
    return notUnderstood('words', said.side ?? said.stands ?? '', `${form} ${said.run ?? 'tight'}`)
  }
  if (said.run !== undefined) {
    const run = /slack|tensioner/.test(said.run) ? 'slack' : 'tight'
    return value({ by: 'count', wanted, found, run, at }, said)
  }
  if (said.seen === undefined) return notUnderstood('tight-or-slack', said.typed, `${form} tight`)
  if (said.runs === undefined)
    return notUnderstood('which-way-it-runs', said.typed, `${form} ${said.seen}, runs clockwise`)
  return value({ by: 'count', wanted, found, run: runOnSide(said.seen, said.runs), at }, said)
}

function readDegrees(degrees: number | undefined, said: Found): Reading<MisplacedAsTyped, MisplacedFault> {
  if (degrees === undefined) return notUnderstood('amount', said.typed, '15 deg crank late')
  if (said.shaft === undefined)
    return notUnderstood('crank-or-cam', said.typed, `${degrees} deg crank ${said.side ?? 'late'}`)
  const form = `${degrees} deg ${said.shaft}`
  const side = sideSaid(said.shaft, said)
  if (side === undefined || saysTooMuch(said)) return withoutSide(form, said)
  return value({ by: 'degrees', degrees, side, at: said.shaft }, said)
}

function readTeethOff(teeth: number | undefined, said: Found): Reading<MisplacedAsTyped, MisplacedFault> {
  if (teeth === undefined) return notUnderstood('amount', said.typed, `1 ${said.side ?? 'late'}`)
  const at = said.shaft ?? 'cam'
  const side = sideSaid(at, said)
  if (side === undefined || saysTooMuch(said)) return withoutSide(`${teeth}`, said)
  return value({ by: 'teeth', teeth, side, at }, said)
}

function sideSaid(at: Shaft, { side, stands, runs }: Found): Side | undefined {
  if (side !== undefined) return side
  return stands === undefined || runs === undefined ? undefined : sideOfMark(at, stands, runs)
}

/** A run belongs to a count, and a mark stands either early or late, or clockwise or not. */
function saysTooMuch({ run, seen, side, stands }: Found): boolean {
  return run !== undefined || seen !== undefined || (side !== undefined && stands !== undefined)
}

function withoutSide(form: string, said: Found): Reading<MisplacedAsTyped, MisplacedFault> {
  const { typed, side, stands, run, seen } = said
  if (saysTooMuch(said))
    return notUnderstood('words', run ?? seen ?? stands ?? '', `${form} ${side ?? 'late'}`)
  return stands === undefined
    ? notUnderstood('early-or-late', typed, `${form} late`)
    : notUnderstood('which-way-it-runs', typed, `${form} ${stands}, runs clockwise`)
}

function value(measured: Measured, { runs }: Found): Reading<MisplacedAsTyped, MisplacedFault> {
  return understood(runs === undefined ? { measured } : { measured, runs })
}

function rotationOf(word: string | undefined): Rotation {
  return word === 'clockwise' || word === 'cw' ? 'clockwise' : 'anticlockwise'
}

function sideOf(word: string | undefined): Side | undefined {
  if (word === undefined) return undefined
  return /^(?:late|retard|behind|slow)/.test(word) ? 'late' : 'early'
}

function shaftOf(word: string | undefined): Shaft | undefined {
  return word === 'crank' || word === 'cam' ? word : undefined
}

/** Words from which what is understood is taken away. */
class Words {
  #text: string

  constructor(text: string) {
    this.#text = text
  }

  take(pattern: RegExp): string[] | null {
    const match = pattern.exec(this.#text)
    if (!match) return null
    this.#text = `${this.#text.slice(0, match.index)} ${this.#text.slice(match.index + match[0].length)}`
    return match.slice(1)
  }

  /** What is left but for words that only join. */
  get left(): string {
    return this.#text
      .replace(/\b(?:off|by|of|at|on|in|the|it|is|and|side|run|mark|as seen|seen)\b|[,;:.]/g, ' ')
      .replace(/\s+/g, ' ')
      .trim()
  }
}
