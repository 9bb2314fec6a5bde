import { startsAgain } from '../../session/pass-again.ts'
import type { Session } from '../../session/session.ts'
import { timersOf } from '../../session/timers.ts'
import type { Card } from '../../session/views.ts'
import { timerText } from '../../words/consumables/timer-words.ts'
import { counted, isAre } from '../../words/grammar.ts'
import { fastenerName, passName, stepName, tighteningName } from '../../words/names.ts'
import { countedPiece } from '../../words/pieces.ts'
import { lateText } from '../../words/waiting/late-text.ts'
import { nextText } from './next-text.ts'
import { whenText } from './when.ts'

/** Where a job stands: what a person who comes back wants to see first. */
export function cardText(session: Session, card: Card): string[] {
  const state = session.stateNow()
  const { job } = state
  const { stopped, bench, halfway, off, begun, late, ready, next } = card
  const name = `${job.name} (job ${job.no})${job.machine === '' ? '' : `, ${job.machine}`}`
  const lines = [`${name}: ${card.phase}`, ...late.map((thing) => lateText(state, thing))]
  if (stopped) {
    const where = stopped.step === null ? '' : ` in ${stepName(state, stopped.step)}`
    const what = stopped.abrupt ? 'Work broke off' : 'Stopped'
    lines.push(`${what} ${whenText(stopped.at)}${where}${stopped.note === '' ? '' : `: ${stopped.note}`}`)
  }
  lines.push(`Next: ${nextText(state, next)}`)
  const turn = next.kind === 'todo' && next.todo.kind === 'turn' ? next.todo : null
  if (turn !== null && startsAgain(session, turn.tightening.id, turn.next))
    lines.push('Work stopped in the middle of the pass, so it starts again at its first fastener.')
  lines.push(...timersOf(state).map((timer) => `Time runs: ${timerText(state, timer)}`))
  for (const { tightening, next: turn } of halfway) {
    const doubt = turn.suspect ? ', perhaps turned already' : ''
    lines.push(
      `Half way: ${tighteningName(state, tightening.id)}, ${passName(tightening, turn.pass)}, ${turn.through} of ${tightening.order.length} through, next ${fastenerName(turn.fastener)}${doubt}`,
    )
  }
  lines.push(...begun.map((no) => `Half way: ${stepName(state, no)}, taken up and not done`))
  if (bench.length > 0) {
    lines.push(
      'On the bench:',
      ...bench.map(({ piece, count }) => `  ${piece}  ${countedPiece(state, piece, count)}`),
    )
  }
  lines.push(
    off === 0 ? 'No piece is off the machine.' : `${counted(off, 'piece')} ${isAre(off)} off the machine.`,
  )
  if (ready.length > 0) lines.push('Could start now:', ...ready.map((no) => `  ${stepName(state, no)}`))
  return lines
}
