import { readLine } from '../../lines/read-line.ts'
import { checksOf, proposedChecks } from '../../session/proposed-steps.ts'
import { counted } from '../../words/grammar.ts'
import { proposedName, proposedWords } from '../../words/judging/proposal-words.ts'
import type { Command } from '../act.ts'
import { type Choice, choicesOf, goTo, type Page, rowsOf } from '../page.ts'
import { line, strong } from '../text/line.ts'
import { groups, headed, indented, numbered } from './rows.ts'
import { perVersion, type Scene } from './scene.ts'

type Added = Extract<Command, { do: 'add-step' }>

/** Steps of the way back, and checks of what goes back, that the record suggests. Each is taken by its number. */
export function proposalsPage({ session, width }: Scene): Page {
  const proposed = perVersion(session, 'proposals', () => allOf(session.state))
  const checks = perVersion(session, 'proposed-checks', () => proposedChecks(session))
  const choices = new Map<number, Choice>(
    proposed.map((step, index) => [
      index + 1,
      { says: `add: ${step.title}`, act: { do: 'send', commands: [step] } },
    ]),
  )
  for (const [index, check] of checks.entries()) {
    const commands: Command[] = [{ do: 'ask-checks', checks: checksOf(check) }]
    choices.set(proposed.length + index + 1, {
      says: `check: ${proposedName(session.state, check)}`,
      act: { do: 'send', commands },
    })
  }
  const checkRows = checks.flatMap((check, index) =>
    numbered(
      proposed.length + index + 1,
      line(strong(proposedName(session.state, check)), `  ${proposedWords(check)}`),
      width,
    ),
  )
  const rows = proposed.flatMap((step, index) => {
    const when =
      step.way === 'after-start'
        ? `after the first start${step.due === undefined ? '' : `, ${step.due}`}`
        : step.due === undefined
          ? `before ${steps(step.before)}`
          : `${step.due} before the first start`
    return numbered(index + 1, line(strong(step.title), `  ${step.kind}, ${when}`), width)
  })
  return {
    title: line(strong('WHAT ELSE THE WAY BACK ASKS FOR'), `  ${howMany(proposed.length, checks.length)}`),
    top: [],
    rows: rowsOf(
      groups(
        proposed.length + checks.length === 0
          ? indented('The record suggests nothing more now.', width)
          : rows,
        headed('USUALLY CHECKED BEFORE IT GOES BACK', checkRows),
        headed('OR TYPE', [
          ...indented('"add measure valve clearances after 4 before 2"', width),
          ...indented('"add later check head bolts due after 500 km"', width),
        ]),
        indented("These are common practice. The machine's service manual decides.", width),
      ),
    ),
    enter: goTo('where you are', { at: 'now' }),
    choice: choicesOf(choices),
    large: null,
  }
}

/** As they are counted where one comes from: steps are asked for, checks are usual. */
function howMany(steps: number, checks: number): string {
  const said = `${counted(steps, 'step')}, ${counted(checks, 'check')}`
  return steps + checks === 0 ? said : `${said}: a number takes one`
}

/** The language numbers the proposals: taking all of them names each. */
function allOf(state: Scene['session']['state']): Added[] {
  const reading = readLine('accept all', state)
  return reading.kind === 'commands'
    ? reading.commands.filter((command): command is Added => command.do === 'add-step')
    : []
}

function steps(numbers: readonly number[]): string {
  return numbers.length === 0 ? 'anything' : `step ${numbers.join(', ')}`
}
