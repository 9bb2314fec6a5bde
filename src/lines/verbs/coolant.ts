import type { State } from '../../journal/state.ts'
import { type CoolantFault, readCoolant } from '../../trade/coolant/read-coolant.ts'
import { readStrength, takeGlycol } from '../../trade/coolant/strength.ts'
import { readTemperature } from '../../trade/coolant/temperature.ts'
import type { QuantityFault, Volume } from '../../trade/quantity.ts'
import type { NotUnderstood } from '../../trade/reading.ts'
import type { Line } from '../line.ts'
import type { Ask } from '../reading.ts'
import { misread } from '../stopped.ts'
import type { Verb } from '../verb.ts'

export const coolantVerbs: readonly Verb[] = [
  {
    words: ['coolant'],
    topic: 'arithmetic',
    forms: [
      'coolant 10 L from 30 % to 50 % [with concentrate|premix|water|60 %] [drained 4 L] [propylene]',
      'coolant [2.1 L] at 50 % [with premix]',
    ],
    says: 'Works out how much coolant to drain and refill; for a strength, or how to mix it.',
    examples: [
      'coolant 10 L from 30 % to 50 %',
      'coolant 10 L drained 4 L from 30 % to 40 %',
      'coolant 10 L drained 4 L from 30 % with premix',
      'coolant 2.1 L at 50 %',
    ],
    meant: /^$|^(?:(?:(?:capacity|of) )?[\d.,½¼¾].* )?(?:from|to|at) ?[\d.,]/i,
    read(line): Ask {
      if (isOfABag(line.rest)) line.notUnderstood(line.rest, `off ${line.whole}`)
      const { job } = line.state
      const read = readCoolant(line.rest, { units: job.units, drainedBefore: drainedBefore(line.state) })
      if (read.understood) return { ask: 'sum', sum: { sum: 'coolant', question: read.value } }
      const nearest = `coolant ${read.nearest}`
      if (isOfAnAmount(read)) return line.notAnAmount(read, nearest)
      if (read.code === 'missing') return missingIn(line, read.part, nearest)
      return line.notUnderstood(read.part || line.whole, nearest)
    },
  },
  {
    words: ['freezes at', 'freezes', 'freezing point'],
    topic: 'arithmetic',
    forms: ['freezes at 50 % [propylene]'],
    says: 'Shows about where a mixture of glycol and water freezes.',
    examples: ['freezes at 50 %', 'freezes at 40 % propylene'],
    read(line): Ask {
      const { rest, glycol } = takeGlycol(line.takeRest('50 %'))
      const percent = readStrength(rest)
      if (!percent.understood) {
        const named = glycol === 'propylene' ? ' propylene' : ''
        return line.notUnderstood(percent.part || line.whole, `freezes at ${percent.nearest}${named}`)
      }
      return { ask: 'sum', sum: { sum: 'freezing-point', glycol, percent: percent.value } }
    },
  },
  {
    words: ['glycol'],
    topic: 'arithmetic',
    forms: ['glycol for -25 °C [propylene]'],
    says: 'Shows how strong glycol and water have to be for a frost.',
    examples: ['glycol for -25 °C', 'glycol for -13 °F propylene'],
    meant: /^$|^for /i,
    read(line): Ask {
      if (isOfABag(line.rest)) line.notUnderstood(line.rest, `off ${line.whole}`)
      const { rest, glycol } = takeGlycol(line.takeRest('for -25 °C').replace(/^for(?: |$)/i, ''))
      const lowest = readTemperature(rest)
      if (!lowest.understood) {
        const named = glycol === 'propylene' ? ' propylene' : ''
        const nearest = `glycol for ${lowest.nearest}${named}`
        if (lowest.code === 'celsius-or-fahrenheit') return missingIn(line, 'C or F', nearest)
        return line.notUnderstood(lowest.part || line.whole, nearest)
      }
      return { ask: 'sum', sum: { sum: 'glycol-for', glycol, lowest: lowest.value } }
    },
  },
]

/** Something is missing: with a line that has it. */
function missingIn({ verb }: Line, what: string, form: string): never {
  return misread({ code: 'missing', verb, what, form })
}

/** Coolant that came out, or a piece that is named after it. */
function isOfABag(rest: string): boolean {
  return (
    /(?:^| )(?:out|in|filled|added)(?= |$)/i.test(rest) ||
    /^(?!.* (?:from|to|at) ).*\bdrained\b/i.test(rest) ||
    /^(?!(?:from|to|at|with|for|drained|capacity|of)\b)\p{L}{3,}/iu.test(rest)
  )
}

function isOfAnAmount(fault: NotUnderstood<CoolantFault>): fault is NotUnderstood<QuantityFault> {
  return !['strength', 'refill', 'missing', 'twice', 'words'].includes(fault.code)
}

/** What came out, where the record tells of one coolant and of no other. */
function drainedBefore({ fluids }: State): Volume | undefined {
  const coolants = [...fluids.values()].filter(({ name }) => /coolant|anti-?freeze/i.test(name))
  const [only] = coolants
  return only && coolants.length === 1 ? { litres: only.litresOut, typed: only.typed } : undefined
}
