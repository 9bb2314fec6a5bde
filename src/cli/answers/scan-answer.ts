import { groupedCode } from '../../label/code.ts'
import type { ScanAnswer, ScannedPiece, Verdict } from '../../session/scan.ts'
import type { Session } from '../../session/session.ts'
import { cardOf } from '../../session/views.ts'
import { otherBearerName } from '../../words/bearers.ts'
import { sentence } from '../../words/grammar.ts'
import { opensText } from '../../words/leftovers.ts'
import { stepName } from '../../words/names.ts'
import { notAgainText } from '../../words/not-again.ts'
import { countedPiece, homeName } from '../../words/pieces.ts'
import { containerName, containerPlace, containerStands, whereName } from '../../words/places.ts'
import { reasonLines } from '../../words/reason-lines.ts'
import { cardText } from './card-text.ts'
import { bearerText } from './labels.ts'
import { picturesLine } from './photos-text.ts'
import { emptyLines } from './round-text.ts'
import { stepAnswer } from './step-text.ts'

type State = Session['state']

/** What a label is, what is in it, where each piece goes, and first of all whether it fits now. */
export function scanText(session: Session, answer: ScanAnswer): string[] {
  const state = session.stateNow()
  switch (answer.kind) {
    case 'container': {
      const { container, code, pieces, inside, verdict } = answer
      return [
        `${containerStands(state, container)}, label ${groupedCode(code)}: ${verdictText(state, verdict)}`,
        ...reasonsOf(state, verdict).map((reason) => `  ${reason}`),
        ...(verdict.kind === 'empty' ? emptyLines(state, container) : []).map((line) => `  ${line}`),
        ...pieces.map((piece) => `  ${pieceLine(state, piece)}`),
        ...inside.map((no) => `  ${containerName(state, no)} stands in it`),
        ...picturesLine(state, { container }).map((line) => `  ${line}`),
      ]
    }
    case 'void': {
      const { code, insteadOf, reason } = answer
      const after = insteadOf === null ? '' : ` ${containerName(state, insteadOf)} took its place.`
      return [`Label ${groupedCode(code)} is void: ${reason}.${after}`]
    }
    case 'blank': {
      const { container, code } = answer
      return [
        `UNUSED LABEL ${container}, ${groupedCode(code)}: nothing has it yet.`,
        `  What is put into it opens it: off ... into ${container}, or into tag ${container}`,
        `  To open it empty: bag label ${container}, or tray 12 slots label ${container}`,
        ...picturesLine(state, { container }).map((line) => `  ${line}`),
      ]
    }
    case 'step': {
      const { step, code } = answer
      return [`Label ${groupedCode(code)} is a step:`, ...(stepAnswer(session, step)?.text ?? [])]
    }
    case 'machine':
      return [`Label ${groupedCode(answer.code)} is the machine:`, ...cardText(session, cardOf(session))]
    case 'other-job': {
      const { job, bearer, name } = answer
      const whose = name === null ? ', which is not in this home' : `, ${name}`
      return [
        `OTHER JOB: this is ${otherBearerName(bearer)} of job ${job}${whose}. Here is job ${state.job.no}, ${state.job.name}.`,
        'Nothing in it belongs to this machine.',
      ]
    }
    case 'unknown': {
      const { container, code } = answer
      const what =
        code === null
          ? `No container ${container} was ever opened in this job.`
          : `Container ${container} was opened and taken back: its label ${groupedCode(code)} stands for nothing.`
      return [what, 'Read the number again, or look for the piece: putback where WORDS']
    }
    case 'misread': {
      const near = answer.near.map(
        (code) => `  ${groupedCode(code)}  ${bearerText(state, Number(code.slice(3, 7))) ?? ''}`,
      )
      const what = `${answer.digits} is no label code: its check digits do not agree.`
      return near.length === 0
        ? [`${what} Scan or type it again.`]
        : [`${what} Scan or type it again, or was it one of these?`, ...near]
    }
    case 'not-a-code':
      return [`"${answer.text}" is no label code and no container's number.`]
    default:
      return answer satisfies never
  }
}

function verdictText(state: State, verdict: Verdict): string {
  switch (verdict.kind) {
    case 'fits-now':
      return `FITS NOW, for ${stepName(state, verdict.step)}`
    case 'not-yet':
      return `NOT YET, for ${stepName(state, verdict.step)}:`
    case 'closed-over':
      return `NOT YET, for ${stepName(state, verdict.step)}, which is closed:`
    case 'not-good':
      return `NOT GOOD, it does not go back, for ${stepName(state, verdict.step)}:`
    case 'not-checked':
      return `${isToCompare(verdict) ? 'NOT COMPARED' : 'NOT CHECKED'}, for ${stepName(state, verdict.step)}:`
    case 'not-again':
      return 'NOT AGAIN, a new one goes in:'
    case 'not-in-this-step':
      return `NOT IN THIS STEP, it is for ${verdict.belongs.map((no) => stepName(state, no)).join('; ')}; in hand is ${stepName(state, verdict.step)}`
    case 'empty':
      return 'EMPTY'
    case 'nothing-to-fit':
      return 'NOTHING TO FIT in it'
    default:
      return verdict satisfies never
  }
}

/** Whether a new one waits to be laid beside the old one: that is said before what is to be checked of it. */
function isToCompare({ reasons }: Extract<Verdict, { kind: 'not-good' | 'not-checked' }>): boolean {
  return reasons[0]?.code === 'compare-due'
}

function reasonsOf(state: State, verdict: Verdict): string[] {
  if (verdict.kind === 'not-again')
    return verdict.pieces.map(({ piece, by }) => notAgainText(state, piece, by))
  if (verdict.kind === 'closed-over') return [sentence(opensText(verdict.undo, verdict.step))]
  return 'reasons' in verdict ? reasonLines(state, verdict.reasons) : []
}

function pieceLine(state: State, { piece, count, place, step, wanted }: ScannedPiece): string {
  const inside = containerPlace(place)
  const at = inside === null ? `${whereName(state, place)}: ` : inside.slot && `slot ${inside.slot}: `
  const notWanted = state.used.has(piece) ? 'used: a new one goes in' : 'goes nowhere'
  const goes = wanted ? `goes to ${homeName(state, piece)}, step ${step}` : notWanted
  return `${at ?? ''}${piece}  ${countedPiece(state, piece, count)}: ${goes}`
}
