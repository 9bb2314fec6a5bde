import { passUnit } from '../../session/wrench-settings.ts'
import { torqueText } from '../../words/joint-questions.ts'
import type { Command } from '../act.ts'
import { type Line, line, strong } from '../text/line.ts'

type SetTightening = Extract<Command, { do: 'set-tightening' }>

/** The passes of a tightening as they were understood, in their unit, newton metres and degrees, while they are typed. */
export function passesReading({ passes, condition, order, by }: SetTightening): Line[] {
  const said = passes.map((pass) => {
    if ('newtonMetres' in pass) return `${pass.kind === 'check' ? 'check ' : ''}${inBoth(pass)}`
    if (pass.kind === 'angle') return `${pass.degrees} deg on`
    if (pass.kind === 'back-off')
      return pass.degrees === undefined ? 'back off fully' : `${pass.degrees} deg back`
    return pass.kind === 'witness' ? 'witness marks' : 'snug'
  })
  const how = order ? "in the manual's order" : by ? `by the rule ${by}` : 'in the usual order of the drawing'
  return [
    line(strong(`${passes.length} passes: `), said.join(' · ')),
    line(`threads ${condition ?? 'not said: dry or oiled?'} · ${how}`),
  ]
}

/** As it was meant, and where that is another unit in newton metres as well. */
function inBoth({ typed, newtonMetres }: { typed: string; newtonMetres: number }): string {
  const unit = passUnit(typed)
  const inNewtonMetres = `${Number(newtonMetres.toPrecision(4))} N·m`
  return unit.scale === 1 ? inNewtonMetres : `${torqueText(newtonMetres, unit)} = ${inNewtonMetres}`
}
