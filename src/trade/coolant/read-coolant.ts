import { tidy } from '../number.ts'
import { type QuantityFault, readVolume, type UnitSystem, type Volume } from '../quantity.ts'
import { notUnderstood, type Reading, understood } from '../reading.ts'
import type { Glycol } from './freezing-point.ts'
import { type Refill, readRefill, readStrength, takeGlycol } from './strength.ts'

/** What is asked about a coolant. Strengths are percent of antifreeze by volume. */
export type CoolantQuestion = { glycol: Glycol } /** How much to drain and to replace. */ & (
  | { ask: 'change'; capacity: Volume; nowPercent: number; wantedPercent: number; refill: Refill }
  /** What to put in, so much having come out. */
  | {
      ask: 'refill'
      capacity: Volume
      drained: Volume
      nowPercent: number
      wantedPercent: number
      refill: Refill
    }
  /** What it comes to, so much having come out and gone in. */
  | { ask: 'after'; capacity: Volume; drained: Volume; nowPercent: number; refill: Refill }
  /** How to mix a volume. `asDrained`: it is what the record says came out. */
  | { ask: 'mix'; volume: Volume; asDrained: boolean; wantedPercent: number; refill: Refill }
)

/**
 * Why a question was not understood: an amount that is none, and why; a strength or what goes in that is none; something
 * that is missing, which `part` then names; a part said twice; words that do not go together.
 */
export type CoolantFault = QuantityFault | 'strength' | 'refill' | 'missing' | 'twice' | 'words'

/**
 * Reads a question: `10 L from 30 % to 50 % with premix`, `10 L drained 4 L from 30 % to 50 %`, `10 L drained 4 L from
 * 30 % with premix`, `2.1 L at 50 %`, `at 50 %`. Without `with` the concentrate goes in.
 * @param drainedBefore what came out by the record, for a mixture whose volume is not said
 */
export function readCoolant(text: string, options: CoolantOptions): Reading<CoolantQuestion, CoolantFault> {
  const reading = readOnce(text, options)
  return reading.understood ? reading : { ...reading, nearest: whole(reading.nearest, options) }
}

interface CoolantOptions {
  units: UnitSystem
  drainedBefore?: Volume | undefined
}

/** A form with one fault mended may have another. */
function whole(nearest: string, options: CoolantOptions): string {
  let form = nearest
  for (let tries = 0; tries < 4; tries++) {
    const reading = readOnce(form, options)
    if (reading.understood) return form
    form = reading.nearest
  }
  return '10 L from 30 % to 50 %'
}

function readOnce(text: string, options: CoolantOptions): Reading<CoolantQuestion, CoolantFault> {
  const { rest, glycol } = takeGlycol(tidy(text).replace(/,(?=\s|$)/g, ''))
  if (rest === '') return notUnderstood('missing', 'AMOUNT', '10 L from 30 % to 50 %')
  const parts = partsOf(rest)
  if (!parts.understood) return parts
  const values = valuesOf(parts.value, rest, options.units)
  if (!values.understood) return values
  return questionOf(values.value, { rest, glycol, drainedBefore: options.drainedBefore })
}

type Part = 'volume' | 'from' | 'to' | 'at' | 'drained' | 'with'
type Parts = Partial<Record<Part, string>>

const keywords = new Map<string, Part>(
  (['from', 'to', 'at', 'drained', 'with'] as const).map((word) => [word, word]),
)

/** The text behind each of the words that begin a part; what stands before them is the volume. */
function partsOf(text: string): Reading<Parts, CoolantFault> {
  const parts: Parts = {}
  const split = text.replace(/ using (?=\S)/i, ' with ').split(/(?:^| )(from|to|at|drained|with)(?= |$)/i)
  const front = split[0]?.trim().replace(/^(?:capacity|of)(?: of)? /i, '') ?? ''
  // `10 L 30 % to 50 %`, `10 L 50 %`
  const [, volume = front, strength] = /^([\d.,].*\p{L}) ([\d.,]+ ?(?:%|percent)?|50\/50)$/u.exec(front) ?? []
  if (volume !== '') parts.volume = volume
  if (strength !== undefined) {
    if (split.length === 1) return notUnderstood('words', strength, `${volume} at ${strength}`)
    parts.from = strength
  }
  for (let i = 1; i < split.length; i += 2) {
    const part = keywords.get(split[i]?.toLowerCase() ?? '') ?? 'volume'
    if (parts[part] !== undefined) return notUnderstood('twice', part, nearestOf(parts))
    parts[part] = split[i + 1]?.trim() ?? ''
  }
  if (parts.at !== undefined && (parts.to !== undefined || parts.from !== undefined)) {
    return notUnderstood('words', `at ${parts.at}`, '10 L from 30 % to 50 %')
  }
  return understood(parts)
}

interface Values {
  volume: Volume | undefined
  drained: Volume | undefined
  from: number | undefined
  to: number | undefined
  at: number | undefined
  refill: Refill | undefined
}

function valuesOf(parts: Parts, whole: string, units: UnitSystem): Reading<Values, CoolantFault> {
  const values: Values = {
    volume: undefined,
    drained: undefined,
    from: undefined,
    to: undefined,
    at: undefined,
    refill: undefined,
  }
  for (const part of ['volume', 'drained'] as const) {
    const typed = parts[part]
    if (typed === undefined) continue
    const read = readVolume(typed, { units })
    if (!read.understood) {
      const nearest =
        typed === '' ? whole.replace(part, `${part} ${read.nearest}`) : whole.replace(typed, read.nearest)
      return notUnderstood(read.code, read.part || part, nearest)
    }
    values[part] = read.value
  }
  for (const part of ['from', 'to', 'at'] as const) {
    const typed = parts[part]
    if (typed === undefined) continue
    const read = readStrength(typed)
    if (!read.understood) return notUnderstood('strength', read.part || part, nearestOf(parts))
    values[part] = read.value
  }
  if (parts.with !== undefined) {
    const read = readRefill(parts.with)
    if (!read.understood) return notUnderstood('refill', read.part || 'with', refilled(whole, read.nearest))
    values.refill = read.value
  }
  return understood(values)
}

function questionOf(
  { volume, drained, from, to, at, refill }: Values,
  { rest, glycol, drainedBefore }: { rest: string; glycol: Glycol; drainedBefore: Volume | undefined },
): Reading<CoolantQuestion, CoolantFault> {
  const missing = (what: string, nearest: string) => notUnderstood<CoolantFault>('missing', what, nearest)
  const into = refill ?? CONCENTRATE
  if (drained !== undefined) {
    if (volume === undefined) return missing('AMOUNT', `10 L ${rest}`)
    if (from === undefined)
      return missing(
        'from STRENGTH',
        `${volume.typed} drained ${drained.typed} from 30 % to ${to ?? at ?? 50} %`,
      )
    const known = { capacity: volume, drained, nowPercent: from, glycol }
    if (to !== undefined) return understood({ ask: 'refill', ...known, wantedPercent: to, refill: into })
    return refill === undefined
      ? missing('with WHAT', `${rest} with premix`)
      : understood({ ask: 'after', ...known, refill })
  }
  if (at !== undefined) {
    const mixed = volume ?? drainedBefore
    if (mixed === undefined) return missing('AMOUNT', `10 L ${rest}`)
    const asDrained = volume === undefined
    return understood({ ask: 'mix', volume: mixed, asDrained, wantedPercent: at, refill: into, glycol })
  }
  if (volume === undefined) return missing('AMOUNT', nearestOf({ from: '', to: '' }))
  if (from === undefined)
    return to === undefined
      ? missing('STRENGTH', `${volume.typed} at 50 %`)
      : missing('from STRENGTH', `${volume.typed} from 30 % to ${to} %`)
  if (to === undefined) return missing('to STRENGTH', `${volume.typed} from ${from} % to 50 %`)
  return understood({
    ask: 'change',
    capacity: volume,
    nowPercent: from,
    wantedPercent: to,
    refill: into,
    glycol,
  })
}

const CONCENTRATE: Refill = { kind: 'concentrate', percent: 100 }

/** The same question with strengths that there are. */
function nearestOf({ volume = '10 L', from, to }: Parts): string {
  return from === undefined && to === undefined ? `${volume} at 50 %` : `${volume} from 30 % to 50 %`
}

function refilled(whole: string, nearest: string): string {
  return `${whole.replace(/ ?\bwith\b.*$/i, '')} with ${nearest}`.trim()
}
