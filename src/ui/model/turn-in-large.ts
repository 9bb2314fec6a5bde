import type { Todo } from '../../session/views.ts'
import { passUnit, wrenchSetting } from '../../session/wrench-settings.ts'
import { quarterMarks } from '../../trade/tightening-passes/turn.ts'
import { torqueText, wrenchInFew } from '../../words/joint-questions.ts'
import { passVerb } from '../../words/pass-work.ts'
import type { Large } from '../page.ts'
import { inLarge } from './large-words.ts'

type Turn = Extract<Todo, { kind: 'turn' }>
type Pass = Turn['tightening']['passes'][number]

/** The fastener, and what it is turned to in letters as large. `asks`: of one that is in doubt. */
export function turnInLarge({ tightening, next }: Turn, asks = '1 turned, 2 not'): Large {
  const { fastener, pass, through, suspect } = next
  const at = tightening.passes[pass]
  const figure = at ? figureOf(at) : ''
  const which = passOf(tightening.passes, next)
  if (suspect) return inLarge(fastener, [figure, which, `in doubt: ${asks}`], 1)
  const detail = at ? detailOf(tightening, pass, at) : ''
  const far = detail === '' ? `${through} of ${tightening.order.length} through` : ''
  return inLarge(fastener, [figure, which, detail, far], 1)
}

/** `pass 2 of 3`; `new` before the first fastener of any but the first. */
export function passOf(passes: readonly Pass[], { pass, through }: Turn['next']): string {
  return `${through === 0 && pass > 0 ? 'new ' : ''}pass ${pass + 1} of ${passes.length}`
}

/** `24 N·m`, `90 deg`, `back off 180 deg`, `check 24 N·m`. */
export function figureOf(pass: Pass): string {
  switch (pass.kind) {
    case 'torque':
      return torqueText(pass.newtonMetres, passUnit(pass.typed))
    case 'check':
      return `${passVerb(pass)} ${torqueText(pass.newtonMetres, passUnit(pass.typed))}`
    case 'angle':
      return `${pass.degrees} deg`
    case 'back-off':
      return `${passVerb(pass)} ${pass.degrees === undefined ? 'fully' : `${pass.degrees} deg`}`
    case 'snug':
      return 'snug'
    case 'witness':
      return passVerb(pass)
    default:
      return pass satisfies never
  }
}

/** What the wrench is set to; the share or the range that was asked for; an angle by the quarters of a mark. */
function detailOf(tightening: Turn['tightening'], index: number, pass: Pass): string {
  const setting = wrenchSetting(tightening, index)
  const wrench = setting === null ? '' : wrenchInFew(setting)
  if (wrench !== '') return wrench
  if ('newtonMetres' in pass) return /%|±|\.\.|-/.test(pass.typed) ? pass.typed : ''
  if (pass.kind !== 'angle') return ''
  const { quarters, rest } = quarterMarks(pass.degrees)
  if (quarters === 0) return ''
  if (rest === 0) return `${quarters} quarter ${quarters === 1 ? 'turn' : 'turns'}`
  return `${quarters} ${quarters === 1 ? 'quarter' : 'quarters'} and ${rest} deg`
}
