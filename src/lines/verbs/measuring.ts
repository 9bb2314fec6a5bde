import type { PieceId } from '../../ledger/piece.ts'
import type { MeasuringFault } from '../../trade/measuring/reading/measuring-fault.ts'
import { readMeasurement } from '../../trade/measuring/reading/read-measurement.ts'
import { readStretch } from '../../trade/measuring/reading/read-stretch.ts'
import { readSubject } from '../../trade/measuring/reading/read-subject.ts'
import type { NotUnderstood } from '../../trade/reading.ts'
import { findPieces, namesPosition } from '../find-piece.ts'
import type { Line } from '../line.ts'
import type { Ask } from '../reading.ts'
import { misread } from '../stopped.ts'
import type { Verb } from '../verb.ts'

export const measuringVerbs: readonly Verb[] = [
  {
    words: ['measure'],
    topic: 'measuring',
    forms: [
      'measure WHAT of PIECE [POSITIONS]: READINGS [by N INSTRUMENT], LIMITS [manual p. N] [in step N]',
      'measure flatness grid 3x4 [every LENGTH] of PIECE: READINGS',
    ],
    says: 'Holds readings against the limits of the manual: in, out, or too close to call for that instrument.',
    examples: [
      'measure flatness of head: 0.02 0.03 0.02 0.03 0.04 0.02 by 0.01 feeler, max 0.05 manual p. 4-12',
      'measure flatness grid 2x3 of head: 0 0.01 0.02 0 0.01 0.01 by 0.01 dial, max 0.05',
      'measure valve clearance I1..I4: 0.14 0.15 0.15 0.14 feeler 0.01, limits 0.13..0.17',
      'measure bore of cylinder 1: top x 76.01 y 76.02 bottom x 76.00 y 76.01, out-of-round max 0.02',
      'measure clearance of cam caps I1..I2: bore 28.03 28.02 journal 27.98 27.98 by 0.01, max 0.07',
      'measure ring gap of cylinder 1: 0.25 max 0.55 mm (0.022 in)',
    ],
    read(line) {
      const stepText = line.take(/,? (?:in|for) step (\d{1,9})$/i)?.[0]
      const [subjectText = '', readings = ''] = line.take(/^([^:]*):? ?(.*)$/) ?? []
      if (subjectText.trim() === '') line.missing('WHAT')
      const subject = readSubject(subjectText)
      if (!subject.understood) return faulty(line, subject)
      if (readings === '') line.missing('READINGS')
      const { name, of, ...frame } = subject.value
      const measurement = readMeasurement(readings, { ...frame, units: line.state.job.units })
      if (!measurement.understood) return faulty(line, measurement)
      const piece = measured(line, of, frame.positions)
      return {
        do: 'measure',
        name,
        ...(piece !== undefined && { piece }),
        ...(stepText !== undefined && { step: Number(stepText) }),
        measurement: measurement.value,
      }
    },
  },
  {
    words: ['measures', 'measurements'],
    topic: 'measuring',
    forms: ['measures [WORDS]'],
    says: 'Shows what was measured, each result with its verdict; with words, only what they name.',
    examples: ['measures', 'measures valve clearance'],
    read(line) {
      return { ask: 'sum', sum: { sum: 'measures', words: line.rest === '' ? null : line.takeRest('WORDS') } }
    },
  },
  {
    words: ['stretch'],
    topic: 'arithmetic',
    forms: ['stretch FORCE over LENGTH THREAD|area AREA [modulus MODULUS]'],
    says: 'Works out how much longer a bolt gets under a force.',
    examples: [
      'stretch 20 kN over 90 mm M10x1.25',
      'stretch 10000 lbf over 5 in area 0.46 in2 modulus 30e6 psi',
    ],
    read(line): Ask {
      const typed = line.takeRest('FORCE')
      const question = readStretch(typed)
      if (!question.understood) {
        const proposal = `stretch ${question.nearest}`
        return line.notUnderstood(question.part || typed, isOfTheirs(proposal, line.whole) ? proposal : null)
      }
      return { ask: 'sum', sum: { sum: 'stretch', question: question.value } }
    },
  },
]

/** The piece that was measured, where the record knows one by those words; one stands for its whole set. */
function measured(line: Line, words: string, positions: readonly string[]): PieceId | undefined {
  if (words === '') return undefined
  const id = /^p\d{1,9}$/i.test(words) ? (words.toLowerCase() as PieceId) : undefined
  if (id && line.account(id)) return id
  const found = findPieces([words, positions.length === 1 ? positions[0] : ''].join(' ').trim(), line.state)
  const last = words.toLowerCase().split(' ').at(-1) ?? ''
  const named = found.filter((id) => {
    const account = line.account(id)
    const noun = account?.piece.name.toLowerCase().split(' ').at(-1)
    return noun?.startsWith(last) || (account !== undefined && namesPosition(words, account))
  })
  const sets = new Set(named.map((id) => line.account(id)?.piece.set ?? id))
  return sets.size === 1 ? named[0] : undefined
}

/** The line once more, as it would be understood; a figure that nobody typed is never proposed. */
function faulty(line: Line, { code, part, nearest }: NotUnderstood<MeasuringFault>): never {
  const isWithin = part !== '' && line.whole.includes(part)
  const proposal = isWithin ? line.whole.replace(part, () => nearest) : null
  const isGood = proposal !== null && isOfTheirs(proposal, line.whole) && isUnderstood(proposal)
  return misread({ code: 'measuring', fault: code, part, nearest: isGood ? proposal : null, form: line.form })
}

function isOfTheirs(proposal: string, whole: string): boolean {
  const figures = (text: string): string[] => text.match(/\d+(?:[.,]\d+)?/g) ?? []
  const typed = new Set(figures(whole).concat(figures(whole.replaceAll(',', '.'))))
  return figures(proposal).every((figure) => typed.has(figure))
}

function isUnderstood(whole: string): boolean {
  const [, subjectText = '', readings = ''] = /^measure ([^:]*): ?(.*)$/i.exec(whole) ?? []
  const subject = readSubject(subjectText)
  return subject.understood && readMeasurement(readings, subject.value).understood
}
