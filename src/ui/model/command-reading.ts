import { groupedCode } from '../../label/code.ts'
import { codeOf } from '../../session/scan.ts'
import type { Session } from '../../session/session.ts'
import { wrenchSettings } from '../../session/wrench-settings.ts'
import { sentence } from '../../words/grammar.ts'
import { wrenchText } from '../../words/joint-questions.ts'
import { fastenerName, passName } from '../../words/names.ts'
import { refusalText } from '../../words/refusals.ts'
import type { Command } from '../act.ts'
import { type Line, line, strong } from '../text/line.ts'
import { measureReading } from './measure-reading.ts'
import { passesReading } from './passes-reading.ts'
import type { State } from './scene.ts'

/** What was understood of a command that is easily mistyped, while it is typed; null for those that say it themselves. */
export function commandReading(session: Session, command: Command | undefined): Line[] | null {
  switch (command?.do) {
    case 'measure':
      return measureReading(command)
    case 'set-tightening':
      return passesReading(command)
    case 'set-loosening':
      return looseningReading(command)
    case 'choose-wrench':
      return wrenchReading(session.state, command)
    case 'lay-out':
      return layoutReading(command)
    case 'tighten':
      return turnReading(session, command)
    default:
      return null
  }
}

function looseningReading({ name, passes, order }: Extract<Command, { do: 'set-loosening' }>): Line[] {
  return [
    line(strong(`ease ${order.length} ${name}: `), passes.map(({ typed }) => typed).join(', then ')),
    line(`in order ${order.join(' ')}`),
  ]
}

function wrenchReading(
  state: State,
  { tightening: id, wrench }: Extract<Command, { do: 'choose-wrench' }>,
): Line[] | null {
  const tightening = state.tightenings.get(id)
  const settings = tightening ? wrenchSettings({ ...tightening, wrench }) : []
  return settings.length === 0 ? null : settings.map((view) => line(sentence(wrenchText(view))))
}

/** Which fastener, in which pass; or why not that one. */
function turnReading(session: Session, command: Extract<Command, { do: 'tighten' }>): Line[] | null {
  const { state } = session
  const foreseen = session.foresee(command)
  if (!foreseen.ok) {
    const { what } = refusalText(state, foreseen.refusal, (no) => groupedCode(codeOf(state, no)))
    return [line(strong('not yet: '), what)]
  }
  const { body } = foreseen
  if (body.type !== 'tightened' && body.type !== 'loosened') return null
  const joint =
    body.type === 'tightened' ? state.tightenings.get(body.tightening) : state.loosenings.get(body.loosening)
  return joint
    ? [line(strong(`${fastenerName(body.fastener)}: `), `${passName(joint, body.pass)}, ${joint.name}`)]
    : null
}

/** Row by row, as it would be typed. */
function layoutReading({ layout: { shape, places } }: Extract<Command, { do: 'lay-out' }>): Line[] {
  const names = places.map(({ position }) => position).join(' ')
  if (shape === 'circle')
    return [line(strong(`${places.length} on a circle: `), `${names}, clockwise from the top`)]
  const across = Math.max(...places.map(({ x }) => x)) + 1
  const down = Math.max(...places.map(({ y }) => y)) + 1
  const at = (column: number, row: number) =>
    places.find(({ x, y }) => x === column && y === row)?.position ?? '.'
  const rows = Array.from({ length: down }, (_, row) =>
    Array.from({ length: across }, (__, column) => at(column, row)).join(' '),
  )
  return [line(strong(`${places.length} positions, row by row: `), rows.join(' / '))]
}
