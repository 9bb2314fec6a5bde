import type { JointQuestion } from '../session/joint-questions.ts'
import type { WrenchView } from '../session/wrench-settings.ts'
import { say } from './cures.ts'
import { joined, sentence } from './grammar.ts'
import { ORDER_SOURCES } from './order-rules.ts'
import { passQuestionWords } from './pass-questions.ts'
import { percent } from './sums/figures.ts'

/** What is worth asking about a tightening, with its arithmetic. `id`: that of the tightening. */
export function jointQuestionText(id: string, question: JointQuestion): string {
  return sentence(questionWords(id, question))
}

function questionWords(id: string, question: JointQuestion): string {
  switch (question.code) {
    case 'torque-over': {
      const { typed, share } = question
      return `${typed} is much for ${threadOf(question)}: ${percent(share)} of ${ceiling(question)}${slips(question)}. ${LOOK}`
    }
    case 'torque-needs-class': {
      const { typed, bearing } = question
      const classes = joined(
        bearing.map((each) => className(each)),
        'or',
      )
      return `${typed} on ${threadOf(question)} is more than ${ceiling(question)}${slips(question)}; of the common classes only ${classes} ${bearing.length === 1 ? 'bears' : 'bear'} it: is it that? Look at the unit and the manual`
    }
    case 'torque-low': {
      const { typed, share } = question
      return `${typed} is little for ${threadOf(question)}: ${percent(share)} of ${ceiling(question)}${slips(question)}. ${LOOK}`
    }
    case 'condition-missing':
      return `dry or oiled? It is part of the torque: look it up, then ${say(`threads ${id} dry`)} or ${say(`threads ${id} oiled`)}`
    case 'order-by-rule':
      return `no order was given: it goes by the rule ${question.rule} (${ORDER_SOURCES[question.source]}). If the manual has its own, it goes before: ${say('tighten PIECE: ... order 3,1,2')}`
    case 'order-differs': {
      const { rule, difference } = question
      if (difference.code === 'reversed')
        return `the order is that of the rule ${rule} backwards, as for loosening: is it the manual's for tightening?`
      const { at, manual, ruled, isBy } = difference
      const other = isBy === null ? '' : `; it follows the rule ${isBy}`
      return `the order given holds. It differs from the rule ${rule} from place ${at} on: ${manual ?? 'nothing'}, the rule has ${ruled ?? 'nothing'}${other}`
    }
    case 'torque-falls':
    case 'check-below':
    case 'angle-from-loose':
    case 'angle-over-a-turn':
    case 'ends-backed-off':
      return passQuestionWords(question)
    default:
      return question satisfies never
  }
}

/** What the wrench is set to, and what speaks against it. */
export function wrenchText(view: WrenchView): string {
  const { newtonMetres, settingNm, fault } = view
  const setting = settingText(view)
  if (settingNm === null) return setting
  const told = fault === null ? setting : `${setting}: ${FAULTS[fault]}`
  return isAsAsked({ newtonMetres, settingNm }) ? told : `${told}; worked out, the service manual decides`
}

/** The same in few words for the bench: the setting alone, and what is to be known about it. */
export function wrenchBrief(view: WrenchView): { setting: string; note: string } {
  const { newtonMetres, settingNm, fault } = view
  const notes = [
    ...(fault === null ? [] : [BRIEFLY[fault]]),
    ...(settingNm === null || isAsAsked({ newtonMetres, settingNm })
      ? []
      : ['worked out, the manual decides']),
  ]
  return { setting: settingText(view), note: notes.join('; ') }
}

/** In the fewest words: `wrench 22.4 N·m, worked out`; nothing where it is set to what was asked for. */
export function wrenchInFew(view: WrenchView): string {
  const { newtonMetres, settingNm, fault, scale, unit } = view
  if (settingNm === null) return 'turn the adapter round'
  const isSame = isAsAsked({ newtonMetres, settingNm })
  if (isSame && unit.name === scale.name && fault === null) return ''
  const setting = `wrench ${torqueText(settingNm, scale)}`
  if (fault !== null) return `${setting}, ${IN_FEW[fault]}`
  return isSame ? setting : `${setting}, worked out`
}

function settingText({ newtonMetres, settingNm, unit, scale }: WrenchView): string {
  if (settingNm === null) return 'this adapter leaves the wrench no lever: turn it round'
  const isSaid = isAsAsked({ newtonMetres, settingNm }) && unit.name === scale.name
  const asked = isSaid ? '' : ` for ${torqueText(newtonMetres, unit)}`
  return `set the wrench to ${torqueText(settingNm, scale)}${asked}`
}

function isAsAsked({ newtonMetres, settingNm }: { newtonMetres: number; settingNm: number }): boolean {
  return Math.abs(settingNm - newtonMetres) < 0.005
}

/** A torque in a unit: `15 lbf·ft`. */
export function torqueText(newtonMetres: number, { name, scale }: WrenchView['unit']): string {
  return `${rounded(newtonMetres / scale)} ${name}`
}

const FAULTS = {
  'range-empty': 'its range is not understood',
  'below-range': 'below the range of this wrench',
  'above-range': 'above the range of this wrench',
  'lowest-fifth': 'in its lowest fifth, where a wrench is not to be trusted (common practice)',
}

const BRIEFLY: typeof FAULTS = {
  'range-empty': 'its range is not understood',
  'below-range': 'below its range',
  'above-range': 'above its range',
  'lowest-fifth': 'in its lowest fifth',
}

const IN_FEW: typeof FAULTS = {
  'range-empty': 'range unclear',
  'below-range': 'below its range',
  'above-range': 'above its range',
  'lowest-fifth': 'its lowest fifth',
}

const LOOK = 'Look at the unit and the manual; if it is right, set it again with "because ..." behind it'

type Facts = Extract<JointQuestion, { ceilingNm: number }>

/** The arithmetic of the ceiling: a choice of this program, and no specification. */
function ceiling({ ceilingNm, fastenerClass, isClassAssumed, proofLoadN }: Facts): string {
  const { standard } = fastenerClass
  const named = `${standard === 'ISO 898-1' ? 'class ' : ''}${className(fastenerClass)}`
  return `${rounded(ceilingNm)} N·m, which is 0.2 × d × proof load of ${Math.round(proofLoadN)} N, ${isClassAssumed ? 'taken as ' : ''}${named}`
}

function threadOf({ thread }: Facts): string {
  return thread.size
}

function className({ standard, name }: Facts['fastenerClass']): string {
  return standard === 'ISO 898-1' ? name : `grade ${name}`
}

function slips({ slips: found }: Facts): string {
  if (found.length === 0) return ''
  const units = found.map(({ text, newtonMetres }) =>
    text.endsWith('N·m') ? text : `${text} (${rounded(newtonMetres)} N·m)`,
  )
  return `; ${joined(units, 'or')} would be usual`
}

function rounded(value: number): string {
  return String(Number(value.toPrecision(3)))
}
