import { groupedCode } from '../../label/code.ts'
import { bearerOf, type ScanAnswer } from '../../session/scan.ts'
import { bearerName, otherBearerName } from '../../words/bearers.ts'
import { stepName } from '../../words/names.ts'
import { containerName } from '../../words/places.ts'
import { type Choice, goTo } from '../page.ts'
import { SIGNS, type Sign } from '../signs.ts'
import type { Line } from '../text/line.ts'
import { picturesChoice } from './pictures-choice.ts'
import { putInto } from './put-into.ts'
import { indented, numbered } from './rows.ts'
import { cardNow, type Scene } from './scene.ts'

/** A label that leads to no container of this job: what it is, and what can be done about it. */
export interface ToldAnswer {
  sign: Sign
  rows: Line[]
  choices: Map<number, Choice>
  /** Where Enter leads, when it is not back. */
  enter?: Choice | undefined
  /** What large letters say, when it is more than the sign. */
  letters?: string | undefined
}

/** Tells it in words, with its choices by number. */
export function scanTold(scene: Scene, answer: Exclude<ScanAnswer, { kind: 'container' }>): ToldAnswer {
  const { session, jobs, width } = scene
  const { state } = session
  const choices = new Map<number, Choice>()
  const say = (...texts: string[]) => texts.flatMap((text) => indented(text, width))
  switch (answer.kind) {
    case 'void': {
      const { code, insteadOf, reason } = answer
      const rows = say(`Label ${groupedCode(code)} is void: ${reason}`)
      if (insteadOf === null) return { sign: SIGNS.void, rows, choices }
      choices.set(
        1,
        goTo(`look into ${containerName(state, insteadOf)}, which took its place`, {
          at: 'scan',
          text: String(insteadOf),
        }),
      )
      return { sign: SIGNS.void, rows: [...rows, ...listed(choices, width)], choices }
    }
    case 'blank': {
      const { container, code } = answer
      const pictures = picturesChoice(scene, { container })
      const take: Choice = {
        says: `take it in hand: what comes off goes into label ${container}`,
        act: { do: 'take', container },
      }
      choices.set(3, goTo('its label', { at: 'qr', container, invert: false }))
      choices.set(4, isComingOff(session) ? putInto(container) : take)
      if (pictures) choices.set(6, pictures)
      return {
        sign: SIGNS.unused,
        letters: `${SIGNS.unused.word} ${container}`,
        rows: [
          ...say(
            `Label ${groupedCode(code)} is on paper and nothing has it yet. What is put into it opens a bag.`,
            `For a tag or a tray: "tag label ${container}", "tray 12 slots label ${container}".`,
          ),
          ...listed(choices, width),
        ],
        choices,
        enter: isComingOff(session) ? take : putInto(container),
      }
    }
    case 'step': {
      const { step, code } = answer
      const name = stepName(state, step)
      return {
        sign: SIGNS.step,
        letters: `STEP ${step}`,
        rows: say(`Label ${groupedCode(code)} is ${name}.`),
        choices,
        enter: goTo(`look at ${name}`, { at: 'step', step }),
      }
    }
    case 'machine':
      return {
        sign: SIGNS.machine,
        rows: say(
          `Label ${groupedCode(answer.code)} is the machine itself: job ${state.job.no}, ${state.job.name}.`,
        ),
        choices,
        enter: goTo('where you are', { at: 'now' }),
      }
    case 'other-job': {
      const known = jobs.find(({ no }) => no === answer.job)
      const rows = say(
        `This label is ${otherBearerName(answer.bearer)} of job ${answer.job}${answer.name === null ? ', which is not in this home' : `, ${answer.name}`}. This job is ${state.job.no}, ${state.job.name}.`,
        'Nothing in it belongs to this machine.',
      )
      if (known) choices.set(1, { says: `open ${known.name}`, act: { do: 'open-job', path: known.path } })
      return { sign: SIGNS.otherJob, rows: [...rows, ...listed(choices, width)], choices }
    }
    case 'unknown': {
      const what =
        answer.code === null
          ? `No container ${answer.container} was ever opened in this job.`
          : `Container ${answer.container} was opened and taken back: its label ${groupedCode(answer.code)} stands for nothing.`
      return {
        sign: SIGNS.unknown,
        rows: say(what, 'Read the number again, or look for the piece with "where" and its words.'),
        choices,
      }
    }
    case 'misread': {
      for (const [index, code] of answer.near.entries()) {
        const bearer = bearerOf(state, Number(code.slice(3, 7)))
        const name = bearer === null ? '' : `, ${bearerName(state, bearer)}`
        choices.set(index + 1, goTo(`${groupedCode(code)}${name}`, { at: 'scan', text: code }))
      }
      const rows = say(
        `${answer.digits} is no label code: its check digits do not agree. Scan or type it again${answer.near.length > 0 ? ', or was it one of these?' : '.'}`,
      )
      return { sign: SIGNS.misread, rows: [...rows, ...listed(choices, width)], choices }
    }
    case 'not-a-code':
      return {
        sign: SIGNS.unknown,
        rows: say(`"${answer.text}" is no label code and no container's number.`),
        choices,
      }
    default:
      return answer satisfies never
  }
}

/** Before the first step, and while one is open or the next may be. */
function isComingOff(session: Scene['session']): boolean {
  return session.state.strip !== null || cardNow(session).phase === 'strip-down'
}

function listed(choices: ReadonlyMap<number, Choice>, width: number): Line[] {
  return [...choices].flatMap(([no, { says }]) => numbered(no, says, width))
}
