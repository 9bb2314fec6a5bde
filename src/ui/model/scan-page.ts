import { groupedCode, readCode } from '../../label/code.ts'
import { lainIn } from '../../session/last-round.ts'
import { type JobNumber, type ScanAnswer, type ScannedPiece, scan, type Verdict } from '../../session/scan.ts'

import { sentence } from '../../words/grammar.ts'
import { lainTexts } from '../../words/lain-in.ts'
import { opensText } from '../../words/leftovers.ts'
import { stepName } from '../../words/names.ts'
import { notAgainText } from '../../words/not-again.ts'
import { countedPiece, homeName, pieceName } from '../../words/pieces.ts'
import { containerName, containerPath, containerPlace, whereName } from '../../words/places.ts'
import { reasonLines } from '../../words/reason-lines.ts'
import type { Command } from '../act.ts'
import { bigLetters } from '../controls/big-letters/big-letters.ts'
import { type Choice, choicesOf, goTo, type Page, rowsOf } from '../page.ts'
import { chip, SIGNS, type Sign } from '../signs.ts'
import { blank, cut, type Line, large, line, strong, textOf } from '../text/line.ts'
import { screenOfReason } from './due/screen-of-reason.ts'
import { inLarge } from './large-words.ts'
import { takeUp } from './next.ts'
import { picturesChoice } from './pictures-choice.ts'
import { putInto } from './put-into.ts'
import { bulleted, flowed, groups, headed, indented } from './rows.ts'
import { scanTold } from './scan-told.ts'
import { cardNow, type Scene, type State } from './scene.ts'
import { foundIn } from './tip-rows.ts'
import { whenText } from './when.ts'

type Container = Extract<ScanAnswer, { kind: 'container' }>

/** The answer to a scan: what this is, what is in it, where each piece goes, and the verdict in large letters. */
export function scanPage(scene: Scene, text: string): Page {
  const answer = scan(scene.session, text, otherJobs(scene, text))
  return answer.kind === 'container' ? containerPage(scene, answer) : otherPage(scene, answer)
}

/** The other jobs are read only for a label that is not of this one. */
function otherJobs(scene: Scene, text: string): JobNumber[] {
  const reading = readCode(text)
  if (reading.kind !== 'code' || reading.job === scene.session.state.job.no) return []
  return scene.jobs.flatMap(({ no, name }) => (no === null ? [] : [{ no, name }]))
}

function containerPage(scene: Scene, answer: Container): Page {
  const { session, width } = scene
  const { state } = session
  const { container, code, pieces, inside, verdict } = answer
  const choices = containerChoices(scene, answer)
  const sign = verdictSign(verdict)
  return {
    ...verdictShown(scene, sign, { words: [containerName(state, container), goesText(state, verdict)] }),
    title: line(
      ...cut([strong(containerName(state, container))], Math.floor(width / 3)),
      '  ',
      chip(sign),
      `  label ${groupedCode(code)}`,
      standsIn(state, container),
    ),
    rows: rowsOf(
      groups(
        verdictRows(scene, answer),
        headed('IN IT', [
          ...pieces.flatMap((piece) => pieceRows(scene, piece)),
          ...inside.flatMap((no) => indented(containerName(state, no), width)),
        ]),
        headed('OR', flowed(choices, width)),
      ),
    ),
    enter: enter(scene, answer),
    choice: choicesOf(choices),
  }
}

function standsIn(state: State, no: number): string {
  const path = containerPath(state, no)
  const [, ...rest] = path.split(/(?= (?:in|on) )/)
  return rest.length === 0 ? '' : `  ${rest.join('').trim()}`
}

function verdictSign(verdict: Verdict): Sign {
  switch (verdict.kind) {
    case 'fits-now':
      return SIGNS.fitsNow
    case 'not-yet':
    case 'closed-over':
      return SIGNS.notYet
    case 'not-good':
      return SIGNS.notGood
    case 'not-checked':
      return verdict.reasons[0]?.code === 'compare-due' ? SIGNS.notCompared : SIGNS.notChecked
    case 'not-again':
      return SIGNS.notAgain
    case 'not-in-this-step':
      return SIGNS.otherStep
    case 'empty':
      return SIGNS.empty
    case 'nothing-to-fit':
      return SIGNS.nothingToFit
    default:
      return verdict satisfies never
  }
}

function verdictRows({ session, width, now }: Scene, { container, verdict }: Container): Line[] {
  const state = session.stateNow()
  switch (verdict.kind) {
    case 'fits-now':
      return indented(line('For ', strong(stepName(state, verdict.step))), width)
    case 'not-yet':
      return [
        ...indented(line('For ', strong(stepName(state, verdict.step)), ', which cannot start:'), width),
        ...reasonLines(state, verdict.reasons).flatMap((text) => bulleted(text, width)),
      ]
    case 'closed-over':
      return [
        ...indented(line('For ', strong(stepName(state, verdict.step)), ', which is closed:'), width),
        ...bulleted(sentence(opensText(verdict.undo, verdict.step)), width),
      ]
    case 'not-good':
    case 'not-checked':
      return [
        ...indented(line('For ', strong(stepName(state, verdict.step)), ', and not accepted:'), width),
        ...reasonLines(state, verdict.reasons).flatMap((text) => bulleted(text, width)),
      ]
    case 'not-again':
      return verdict.pieces.flatMap(({ piece, by }) => bulleted(notAgainText(state, piece, by), width))
    case 'empty': {
      const lain = lainIn(state, container)
      if (lain.length === 0) return []
      return [
        ...indented('It should be empty. It held:', width),
        ...lainTexts(state, lain, (at) => whenText(at, now)).flatMap((text) => bulleted(text, width)),
      ]
    }
    case 'not-in-this-step':
      return [
        ...indented(
          line('It belongs to ', strong(verdict.belongs.map((no) => stepName(state, no)).join('; '))),
          width,
        ),
        ...indented(`In hand: ${stepName(state, verdict.step)}`, width),
      ]
    default:
      return []
  }
}

function pieceRows({ session, width }: Scene, { piece, count, place, step, wanted }: ScannedPiece): Line[] {
  const { state } = session
  const inside = containerPlace(place)
  const inSlot = inside === null ? `${whereName(state, place)}: ` : inside.slot && `slot ${inside.slot}: `
  const notWanted = state.used.has(piece) ? 'used: a new one goes in' : 'goes nowhere'
  const goes = wanted ? `goes to ${homeName(state, piece)}, step ${step}` : notWanted
  return indented(line(inSlot ?? '', strong(countedPiece(state, piece, count)), `  ${goes}`), width)
}

function containerChoices(scene: Scene, { container, verdict }: Container): Map<number, Choice> {
  const { session, hand } = scene
  const { state } = session
  const choices = new Map<number, Choice>()
  const isComingOff = state.strip !== null
  if (verdict.kind === 'fits-now' && state.build !== verdict.step) choices.set(1, takeUp(state, verdict.step))
  if (verdict.kind === 'not-yet')
    choices.set(1, goTo(`look at ${stepName(state, verdict.step)}`, { at: 'step', step: verdict.step }))
  if (verdict.kind === 'closed-over') choices.set(1, reopen(state, verdict.step))
  if (verdict.kind === 'not-good' || verdict.kind === 'not-checked') {
    const [first] = verdict.reasons
    const screen = first && screenOfReason(state, first)
    if (screen) choices.set(1, goTo(`see what ${pieceName(state, first.piece)} waits for`, screen))
  }
  if (verdict.kind === 'not-in-this-step') {
    const [first] = verdict.belongs
    if (first !== undefined)
      choices.set(1, goTo(`look at ${stepName(state, first)}`, { at: 'step', step: first }))
  }
  if (verdict.kind === 'empty' && lainIn(state, container).length > 0)
    choices.set(1, foundIn(container, 1, 'there is one in it'))
  // An empty one too: a bolt left in a bag that should be empty is what a count is for.
  choices.set(2, goTo('count what is in it', { at: 'count', container, given: [] }))
  choices.set(3, goTo('its label', { at: 'qr', container, invert: false }))
  if (!isComingOff) choices.set(4, putInto(container))
  else if ((hand ?? state.hand) !== container)
    choices.set(4, { ...takeInHand(state, container), says: 'take it in hand' })
  choices.set(5, {
    says: 'stand it in another',
    act: { do: 'write', before: `put ${container} in `, asks: 'Type or scan what it stands in, as: bin 2' },
  })
  const pictures = picturesChoice(scene, { container })
  if (pictures) choices.set(6, pictures)
  return choices
}

function reopen(state: State, no: number): Choice {
  return {
    says: `open ${stepName(state, no)}, again: say why`,
    act: { do: 'write', before: `reopen ${no} because `, asks: 'Type why, as: a bolt lay in its bag' },
  }
}

function takeInHand(state: State, container: number): Choice {
  return {
    says: `take it in hand: what comes off goes into ${containerName(state, container)}`,
    act: { do: 'take', container },
  }
}

/** Enter does what the verdict says, one piece at a time where each has a home of its own. */
function enter(scene: Scene, { container, pieces, verdict }: Container): Choice | null {
  const { session, hand } = scene
  const { state } = session
  if (state.strip !== null && (hand ?? state.hand) !== container && cardNow(session).phase === 'strip-down') {
    return takeInHand(state, container)
  }
  if (verdict.kind === 'fits-now') {
    if (state.build !== verdict.step) {
      return {
        ...takeUp(state, verdict.step),
        act: { do: 'send', commands: [{ do: 'begin-build', step: verdict.step }] },
      }
    }
    const first = pieces.find(({ wanted, step }) => wanted && step === verdict.step)
    if (first) return fitFrom(state, first, verdict.step)
  }
  return { says: 'back', act: { do: 'back', past: 'scan' } }
}

function fitFrom(state: State, { piece, count, step }: ScannedPiece, no: number): Choice {
  const position = state.ledger.accounts.get(piece)?.home.position
  const command: Command = { do: 'fit', step: no, fittings: [{ piece, position }] }
  return {
    says: `fit ${countedPiece(state, piece, count)}, step ${step}`,
    act: { do: 'send', commands: [command] },
  }
}

/** The verdict in large letters where they fit; its sign and word stand in the title. */
function verdictShown(
  { width }: Scene,
  sign: Sign,
  { letters = sign.word, words = [] }: { letters?: string | undefined; words?: readonly string[] },
): Pick<Page, 'top' | 'large' | 'verdict'> {
  const drawn = bigLetters(letters, width - 5) ?? []
  return {
    top: [...drawn.map((row) => line('     ', large(row))), blank],
    verdict: sign,
    large: inLarge(letters, [[chip(sign)], ...words]),
  }
}

/** The step that it is for, in few words. */
function goesText(state: State, verdict: Verdict): string {
  if ('belongs' in verdict) return `belongs to ${verdict.belongs.map((no) => `step ${no}`).join(', ')}`
  return 'step' in verdict ? `for ${stepName(state, verdict.step)}` : ''
}

function otherPage(scene: Scene, answer: Exclude<ScanAnswer, { kind: 'container' }>): Page {
  const { sign, rows, choices, enter, letters } = scanTold(scene, answer)
  return {
    ...verdictShown(scene, sign, { letters, words: [textOf(rows[0] ?? blank).trim()] }),
    title: line(strong('THE LABEL'), '  ', chip(sign)),
    rows: rowsOf(rows),
    enter: enter ?? { says: 'back', act: { do: 'back', past: 'scan' } },
    choice: choicesOf(choices),
  }
}
