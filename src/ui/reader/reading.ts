import type { Answer } from '../answer.ts'
import type { Desk } from '../desk/desk.ts'
import { SCREENS } from '../keys.ts'
import { headRows } from '../model/head.ts'
import { nextChoice } from '../model/next.ts'
import { perVersion } from '../model/scene.ts'
import type { Page } from '../page.ts'
import { textOf } from '../text/line.ts'
import { isHeading, rowSentence, type SpokenPart, sentence, spokenHeading, spokenRow } from './spoken-row.ts'

/** The screen in sentences, in the order in which they are read. */
export interface Reading {
  /** Where one is: another screen is read whole, the same one only where it says something else. */
  place: string
  answer: string[]
  /** What stands above every screen of the job. */
  above: string[]
  screen: string[]
  /** The job, what is in hand, the account of what is off. */
  head: string[]
  /** The next thing of the job, where Enter does something else; what stands in the line. */
  next: string[]
  /** What Enter does. */
  enter: string
  choices: Group[]
  rows: Group[]
}

/** Sentences under a heading; '' where there is none. */
export interface Group {
  heading: string
  sentences: string[]
}

/** What the screens show now, as it is read aloud. */
export function readingOf(desk: Desk): Reading {
  const page = desk.page()
  const { choices, rows } = bodyGroups(page)
  return {
    place: JSON.stringify(desk.screen),
    answer: [...answerSentences(desk.answer()), ...answerSentences(desk.news()?.answer ?? null)],
    above: desk.above().map(rowSentence).filter(Boolean),
    screen: screenSentences(desk, page),
    head: headSentences(desk),
    next: nextSentences(desk, page),
    enter: enterSentence(desk, page),
    choices,
    rows,
  }
}

/** What acts at once on the screens is a line of its own here. */
export const READER_KEYS = [
  'Enter alone does what is said after Enter; a number chooses; 0 takes back the last entry.',
  '/ goes back, + reads on, - reads all again, ? is help, quit leaves.',
]

/** Of a longer list the rest is not looked at: nobody listens to it. */
const MOST_ROWS = 400

/** An answer: the word of its sign, what it is, its points, what to do. */
function answerSentences(answer: Answer | null): string[] {
  if (!answer) return []
  const { sign, told } = answer
  const what = sign ? `${sign.word.charAt(0)}${sign.word.slice(1).toLowerCase()}: ${told.what}` : told.what
  return [what, ...told.lines, told.cure].map(sentence).filter(Boolean)
}

function screenSentences(desk: Desk, page: Page): string[] {
  const name = SCREENS.find(({ screen }) => screen.at === desk.screen.at)?.name
  const title = sentence(spokenHeading(page.title))
  const { verdict } = page
  const isSaid = verdict === undefined || textOf(page.title).includes(verdict.word)
  const keys = desk.screen.at === 'help' ? READER_KEYS : []
  return [
    name === undefined ? title : `${capital(name)}. ${title}`,
    isSaid ? '' : sentence(verdict.word),
    ...keys,
  ].filter(Boolean)
}

/** The parts of the first row, each a sentence, so that only what changed is read again. */
function headSentences(desk: Desk): string[] {
  const scene = desk.scene()
  if (!('session' in scene)) return []
  const [row] = headRows(scene, desk.screen)
  return textOf(row)
    .split(/\s{2,}/)
    .map((part) => sentence(part.replace(' = ', ': ').replaceAll(' + ', ', ')))
    .filter(Boolean)
}

function nextSentences(desk: Desk, { enter }: Page): string[] {
  const scene = desk.scene()
  const next =
    'session' in scene ? perVersion(scene.session, 'next choice', () => nextChoice(scene)).says : null
  const progress = desk.progress()
  if (progress !== null) return [sentence(`Under way: ${progress}`)]
  const { before, after } = desk.typed()
  if (before + after !== '') return [inTheLine(desk, before, after)]
  // "go on: turn A3" is what Enter does where that is "turn A3".
  return next === null || (enter !== null && next.endsWith(enter.says))
    ? []
    : [sentence(`Next in the job: ${next}`)]
}

/** Nothing where words stand in the line: Enter alone does not go with them. */
function enterSentence(desk: Desk, { enter, question }: Page): string {
  const { before, after } = desk.typed()
  if (before + after !== '') return ''
  if (enter) return sentence(`Enter: ${enter.says}`)
  return question ? 'Type an answer.' : 'Type a number or words.'
}

/** What stands in the line before anything more is typed, and what becomes of it. */
function inTheLine(desk: Desk, before: string, after: string): string {
  const standing = desk.standing()
  if (standing === 'kept')
    return `Kept: ${before}${after}. Enter alone tries it again; what you type takes its place.`
  if (standing === 'not-taken') return `Not taken: ${before}${after}. Type it anew; Enter alone forgets it.`
  if (after === '') return `The line begins with: ${before.trim()}. Type the rest; / clears it.`
  if (before === '') return `The line ends with: ${after.trim()}. Type its beginning; / clears it.`
  return `In the line: ${before}, then what you type, then ${after}. / clears it.`
}

/** Choices apart from the rest, each under its heading. A row that is a drawing is said to be one. */
function bodyGroups({ top, rows, choice, enter }: Page): { choices: Group[]; rows: Group[] } {
  const lines = [...top, ...Array.from({ length: Math.min(rows.length, MOST_ROWS) }, (_, at) => rows.at(at))]
  const choices: Group[] = []
  const others: Group[] = []
  let heading = ''
  for (const line of lines) {
    if (isHeading(line)) {
      heading = sentence(spokenHeading(line)).replace(/\.$/, ':')
      continue
    }
    for (const part of spokenRow(line)) {
      // What Enter does has been read.
      if (part.no !== null && enter && sentence(part.text) === sentence(enter.says)) continue
      add(isSaidBy(part, choice) ? choices : others, heading, partSentence(part))
    }
  }
  return { choices, rows: others }
}

/** Whether a row is no more than its choice, perhaps with a word more about it. */
function isSaidBy({ no, text }: SpokenPart, choice: Page['choice']): boolean {
  const says = no === null ? undefined : choice(no)?.says
  return says !== undefined && sentence(text).startsWith(sentence(says).replace(/\.$/, ''))
}

function add(groups: Group[], heading: string, text: string): void {
  const last = groups.at(-1)
  if (last?.heading === heading) last.sentences.push(text)
  else groups.push({ heading, sentences: [text] })
}

function partSentence({ no, text }: SpokenPart): string {
  return no === null ? sentence(text) : `${no}: ${sentence(text)}`
}

function capital(word: string): string {
  return word.charAt(0) + word.slice(1).toLowerCase()
}
