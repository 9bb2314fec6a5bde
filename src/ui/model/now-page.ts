import { arrivedView } from '../../session/arrived-view.ts'
import { isEstimable } from '../../session/finish-view.ts'
import { startsAgain } from '../../session/pass-again.ts'
import { unsortedPictures } from '../../session/pictures.ts'
import { proposedSteps } from '../../session/proposed-steps.ts'
import type { Card } from '../../session/views.ts'
import { entryText } from '../../words/entries.ts'
import { counted } from '../../words/grammar.ts'
import { fastenerCalled, passName, stepName } from '../../words/names.ts'
import { reasonLines } from '../../words/reason-lines.ts'
import { type Choice, choicesOf, goTo, type Page, rowsOf } from '../page.ts'
import { type Line, line, plain, strong } from '../text/line.ts'
import { setNames } from './content-names.ts'
import { dueTexts, overdueTexts } from './due/due-in-brief.ts'
import { nextChoice, takeUp } from './next.ts'
import { nextInLarge } from './next-in-large.ts'
import { ALL_PICTURES } from './pictures-choice.ts'
import { flowed, groups, labelled, labelledFlow, withWords } from './rows.ts'
import { cardNow, isUnderWay, perVersion, type Scene, type State } from './scene.ts'
import { timerTexts } from './timer-rows.ts'
import { whenText } from './when.ts'

/** Where the job stands: what a person who comes back wants to see first. */
export function nowPage(scene: Scene): Page {
  const { session, width } = scene
  const { state } = session
  const card = cardNow(session)
  const enter = nextChoice(scene, card.next)
  const choices = choicesNow(scene, card)
  const rows = groups(
    [
      ...labelled('YOU WERE', stopped(scene, card), width),
      ...labelled('OVERDUE', overdueTexts(scene), width),
      ...labelled('NEXT', nextTexts(scene, card, enter.says), width),
    ],
    [
      ...labelled('TIME RUNS', timerTexts(scene), width),
      ...labelled('HALF DONE', halfway(state, card), width),
      ...labelledFlow('LOOSE', setNames(state, card.bench), width, 2),
      ...labelledFlow('ARRIVED', arrived(scene), width, 2),
      ...labelled('DUE', dueTexts(scene), width),
      ...labelled('LAST DONE', lastDone(scene), width),
    ],
    flowed(choices, width),
  )
  return {
    title: line(strong('WHERE YOU ARE'), `  ${state.job.machine}`),
    top: [],
    rows: rowsOf(rows),
    enter,
    choice: choicesOf(choices),
    large: nextInLarge(scene, card.next),
  }
}

const PASS_AGAIN = 'work stopped in the middle of the pass, so it starts again'

/** The next thing, and where it is blocked what it waits for. */
function nextTexts({ session }: Scene, { next }: Card, says: string): Line[] {
  const reasons = next.kind === 'blocked' ? reasonLines(session.stateNow(), next.reasons) : []
  // One says where to begin; the step's own page has them all.
  const shown = reasons.slice(0, 1).map((reason) => line('· ', withWords(reason)))
  const left = reasons.length - 1
  const turn = next.kind === 'todo' && next.todo.kind === 'turn' ? next.todo : null
  const again = turn !== null && startsAgain(session, turn.tightening.id, turn.next)
  const through = turn ? `, ${turn.next.through} of ${turn.tightening.order.length} through` : ''
  return [
    line(strong(says), again ? `: ${PASS_AGAIN}` : through),
    ...shown,
    ...(left > 0 ? [line(`· and ${left} more`)] : []),
  ]
}

function stopped({ session, now }: Scene, { stopped: stop }: Card): string[] {
  if (!stop) return []
  const { state } = session
  const where = stop.step === null ? '' : `, in ${stepName(state, stop.step)}`
  // After a power cut nobody wrote when it was: the last entry before is what is known.
  const before = stop.abrupt ? session.entries().findLast(({ n }) => n < stop.n) : undefined
  const how = before ? `broken off after ${whenText(before.at, now)}` : `stopped ${whenText(stop.at, now)}`
  const note = stop.note === '' ? '' : `: ${stop.note}`
  return [`${how}${where}${note}`]
}

function halfway(state: State, card: Card): Line[] {
  const { next: thing } = card
  const isNext = (id: string) =>
    thing.kind === 'todo' && thing.todo.kind === 'turn' && thing.todo.tightening.id === id
  const others = card.halfway.filter(({ tightening }) => !isNext(tightening.id))
  const begun = card.begun.filter((no) => !('step' in thing) || thing.step !== no)
  const joints = others.map(({ tightening, next }) => {
    const through = `${next.through} of ${tightening.order.length} through`
    const text = `${tightening.name}, ${passName(tightening, next.pass)}, ${through}: `
    const fastener = fastenerCalled(next.fastener)
    const doubt = next.suspect ? `${fastener} may have been turned already` : `${fastener} is next`
    return line(text, strong(doubt))
  })
  return [...joints, ...begun.map((no) => line(strong(stepName(state, no)), ', taken up and not done'))]
}

const MOST_ARRIVED = 12

/** What came while other things were done, and is not on yet. */
function arrived({ session }: Scene): string[] {
  return setNames(
    session.state,
    perVersion(session, 'arrived', () => arrivedView(session, MOST_ARRIVED)),
  )
}

function lastDone({ session, now }: Scene): Line[] {
  const { state } = session
  const inForce = new Set(state.inForce.slice(-4))
  const last = session
    .entries()
    .slice(-40)
    .filter(({ n, type }) => inForce.has(n) && type !== 'stopped')
    .slice(-3)
    .reverse()
  return last.map((entry) => [plain(`${whenText(entry.at, now)}  ${entryText(state, entry)}`)])
}

const MOST_READY = 5

/** Other things to do than the next one: 1 to 5 are ready steps, 7 to 9 always mean the same. */
function choicesNow(scene: Scene, card: Card): Map<number, Choice> {
  const { session } = scene
  const { state } = session
  const taken = card.next.kind === 'take' ? card.next.step : null
  const ready = card.ready.filter((no) => no !== taken).slice(0, MOST_READY)
  const choices = new Map<number, Choice>()
  for (const [index, step] of ready.entries()) choices.set(index + 1, takeUp(state, step))
  const unsorted = perVersion(session, 'unsorted', () => unsortedPictures(state)).length
  if (unsorted > 0) choices.set(6, goTo(`${counted(unsorted, 'picture')} not sorted yet`, ALL_PICTURES))
  if (state.steps.size > 0) {
    const proposed = proposedSteps(session).length
    const many = proposed === 0 ? '' : ` (${counted(proposed, 'step')})`
    choices.set(7, goTo(`see what else the way back asks for${many}`, { at: 'proposals' }))
  }
  choices.set(8, goTo('another job', { at: 'jobs' }))
  choices.set(
    9,
    isUnderWay(scene.session.state)
      ? goTo('stop work and leave', { at: 'leave' })
      : { says: 'leave', act: { do: 'leave', note: null } },
  )
  if (!state.started && isEstimable(state)) choices.set(10, goTo('when it is together', { at: 'finish' }))
  return choices
}
