import { readDecimal, withoutNoise } from '../../number.ts'
import { readLength } from '../../quantity.ts'
import { notUnderstood, type Reading, understood } from '../../reading.ts'
import { readThread, type Thread } from '../../thread.ts'
import { stressAreaMm2 } from '../../torque/stress-area.ts'
import type { StretchedBolt } from '../bolt-stretch.ts'

export interface StretchQuestion extends StretchedBolt {
  /** Each as typed; the modulus of steel where none was. */
  typed: { force: string; length: string; area: string; modulus: string | null }
  /** Whose stress area was taken; none where an area was typed. */
  thread?: Thread
}

/** What is missing or was not understood: no force, length, section (thread or area) or modulus; words left over. */
export type StretchFault = 'force' | 'length' | 'section' | 'modulus' | 'words'

/** Of steel, in MPa. Common practice: steels differ by a few percent. */
const steelMPa = 205_000

const newtonsPerPound = 4.4482216152605 // exact: NIST SP 811, appendix B.8
const squareInch = 25.4 ** 2
const newtons = new Map(
  Object.entries({
    n: 1,
    kn: 1000,
    lbf: newtonsPerPound,
    lb: newtonsPerPound,
    lbs: newtonsPerPound,
    kgf: 9.80665,
  }),
)
const megapascals = new Map(
  Object.entries({
    gpa: 1000,
    mpa: 1,
    'n/mm2': 1,
    'n/mm²': 1,
    psi: newtonsPerPound / squareInch,
    ksi: (1000 * newtonsPerPound) / squareInch,
  }),
)
const squareMillimetres = new Map(
  Object.entries({ mm2: 1, 'mm²': 1, in2: squareInch, 'in²': squareInch, 'sq in': squareInch }),
)

/**
 * Reads how a bolt is stretched: `20 kN over 90 mm M10x1.25`, `10000 lbf over 5 in area 0.46 in2 modulus 30e6 psi`.
 * Without a modulus the bolt is of steel.
 */
export function readStretch(text: string): Reading<StretchQuestion, StretchFault> {
  let rest = text.replace(/\s+/gu, ' ').trim()
  const take = (pattern: RegExp) => {
    const match = pattern.exec(rest)
    if (match) rest = `${rest.slice(0, match.index)} ${rest.slice(match.index + match[0].length)}`.trim()
    return match?.[1]
  }
  const modulusText = take(/(?:,? )?(?:modulus|e)[ =]+(\S+ ?(?:gpa|mpa|n\/mm[2²]|psi|ksi))(?= |,|$)/iu)
  const areaText = take(/(?:,? )?area[ =]+(\S+ ?(?:mm[2²]|in[2²]|sq in))(?= |,|$)/iu)
  const lengthText = take(/(?:,? )?(?:over|length) (\S+ ?(?:mm|cm|in|inch|inches|"))(?= |,|$)/iu)
  const forceText = take(/^(\S+ ?(?:kn|n|lbf|lbs?|kgf))(?= |,|$)/iu)
  const force = inUnit(forceText, newtons)
  if (force === undefined) return notUnderstood('force', forceText ?? text.trim(), '20 kN over 90 mm M10')
  const length = readLength(lengthText ?? '')
  const lengthMm = length.understood ? length.value.millimetres : 0
  if (lengthMm <= 0) return notUnderstood('length', lengthText ?? text.trim(), `${forceText} over 90 mm M10`)
  const threadText = rest.replace(/^,? ?(?:of |on |a )*|,$/giu, '').trim()
  const thread = readThread(threadText)
  const isThread = thread.understood && areaText === undefined
  const areaMm2 = isThread ? stressAreaMm2(thread.value) : inUnit(areaText, squareMillimetres)
  const said = `${forceText} over ${lengthText}`
  if (!areaMm2) return notUnderstood('section', areaText ?? (threadText || text.trim()), `${said} M10`)
  if (areaText !== undefined && threadText !== '')
    return notUnderstood('words', threadText, `${said} area ${areaText}`)
  const modulusMPa = modulusText === undefined ? steelMPa : inUnit(modulusText, megapascals)
  if (modulusMPa === undefined)
    return notUnderstood('modulus', modulusText ?? '', `${said} M10 modulus 205 GPa`)
  return understood({
    newtons: force,
    lengthMm,
    areaMm2,
    modulusMPa,
    typed: {
      force: forceText ?? '',
      length: lengthText ?? '',
      area: areaText ?? threadText,
      modulus: modulusText ?? null,
    },
    ...(isThread && { thread: thread.value }),
  })
}

/** A positive number of one of some units, in the base of these. `30e6 psi` is one too. */
function inUnit(text: string | undefined, units: ReadonlyMap<string, number>): number | undefined {
  const [, numberText = '', power, unit = ''] = /^([\d.,]+)(?:e(\d{1,2}))? ?(.*)$/i.exec(text ?? '') ?? []
  const [number, factor] = [readDecimal(numberText), units.get(unit.toLowerCase())]
  if (number === undefined || number <= 0 || factor === undefined) return undefined
  return withoutNoise(number * 10 ** Number(power ?? 0) * factor)
}
