import { readCode, splitTail } from '../label/code.ts'
import { plainText } from '../label/plain-text.ts'
import { findVerb } from '../lines/read-line.ts'
import { bearerOf, scan } from '../session/scan.ts'
import { bearerName } from '../words/bearers.ts'
import { entryText } from '../words/entries.ts'
import { QUIT, SCREENS } from './keys.ts'
import { language } from './language.ts'
import { act, go, type Meaning, no, noNumber, type Typed } from './meaning.ts'
import { fewerFitted, fewerForm } from './model/fewer-fitted.ts'
import { printChoice } from './model/print-choices.ts'
import { countedAgain } from './model/same-again.ts'
import { cardNow, type Hall, isUnderWay, type Scene, withHand } from './model/scene.ts'
import { withWordsAgain } from './model/words-again.ts'
import type { Screen } from './navigation.ts'
import type { Page } from './page.ts'
import { readHelp } from './read-help.ts'
import { scanInHall } from './scan-in-hall.ts'
import { isSearch } from './search-words.ts'
import { line } from './text/line.ts'

export interface Shown {
  scene: Hall | Scene
  screen: Screen
  page: Page
}

/**
 * Content decides what a line is, in this order: nothing, a screen, a whole label code, an answer to the screen's
 * question, a number to choose, a code behind words, a word of the screens, and then what the screen takes lines for.
 */
export function meaningOf(typed: Typed, shown: Shown): Meaning {
  const { scene, screen, page } = shown
  const text = plainText(typed.before + typed.after)
  if (text === '')
    return page.enter
      ? { kind: 'act', act: page.enter.act, says: [line(page.enter.says)] }
      : { kind: 'nothing' }
  if (!('session' in scene)) return scanInHall(typed, scene) ?? inHall(text, shown)
  return (
    toScreen(text) ??
    unusedLabel(text, scene, screen) ??
    wholeCode(text) ??
    placeScanned(typed, scene, screen) ??
    behindWords(typed, scene) ??
    // Behind the scans: a label is looked up also where one looks for words.
    askedHelp(text, screen) ??
    answered(text, page) ??
    chosen(text, shown) ??
    inWords(text, scene, shown)
  )
}

/** What a line means that neither goes to a place nor answers or chooses anything on the page. */
function inWords(text: string, scene: Scene, shown: Shown): Meaning {
  const { screen } = shown
  const meant =
    endedByNumber(text, scene, screen) ??
    sameCounted(text, scene, screen) ??
    amountFilled(text, scene, screen) ??
    fewer(text, shown) ??
    screenWord(text, scene, screen) ??
    misreadCode(text) ??
    intoScanned(text, scene, shown) ??
    searched(text, screen) ??
    language(text, scene, screen)
  return screen.at === 'help' ? readHelp(text, screen, meant) : meant
}

function inHall(text: string, shown: Shown): Meaning {
  const { screen, page } = shown
  const leaving = QUIT.test(text) ? act({ do: 'leave', note: null }, 'leave') : undefined
  const choose = no('Choose by number.', 'Type the number of a row, then Enter; "quit" leaves.')
  return (
    askedHelp(text, screen) ??
    answered(text, page) ??
    chosen(text, shown) ??
    leaving ??
    (screen.at === 'help' ? readHelp(text, screen, choose) : choose)
  )
}

/** `?`, with words to look for or without: no note begins so. Of a job's name its own page says whether it is one. */
function askedHelp(text: string, screen: Screen): Meaning | undefined {
  const about = /^\?\s*(.*)$/.exec(text)?.[1]
  if (about === undefined || screen.at === 'new-job') return undefined
  if (screen.at === 'help') return readHelp(text, screen, { kind: 'nothing' })
  return go(about === '' ? 'all keys and words' : `look for "${about}" among all keys and words`, {
    at: 'help',
    about: about === '' ? null : about,
    from: screen.at,
  })
}

/** `.1` to `.6`, and `.` for where one is. Some number pads have a comma there, and some no `*`: `.0` is that. */
function toScreen(text: string): Meaning | undefined {
  const digit = /^[.,](\d?)$/.exec(text)?.[1]
  if (digit === undefined) return undefined
  if (digit === '0') return LARGE
  const found = SCREENS.find((each) => each.digit === digit)
  return found
    ? go(`${found.name}: ${found.says}`, found.screen)
    : noNumber(`There is no screen .${digit}.`, 'The screens are . and .1 to .6')
}

const LARGE = act({ do: 'large' }, 'large letters, and small again')

function wholeCode(text: string): Meaning | undefined {
  return readCode(text).kind === 'code' ? go('scan', { at: 'scan', text }) : undefined
}

/**
 * Where things come off, an unused label is taken in hand at once; scanned behind the words of what came off, it takes
 * that in.
 */
function unusedLabel(text: string, scene: Scene, screen: Screen): Meaning | undefined {
  const tail = screen.at === 'off' ? splitTail(text) : null
  const reading = tail && readCode(tail.code)
  const { job, blanks } = scene.session.state
  if (!tail || reading?.kind !== 'code' || reading.job !== job.no) return undefined
  const { container } = reading
  if (blanks.get(container)?.voided !== null) return undefined
  const words = tail.words.trim().replace(/^off /i, '')
  if (words === '')
    return act({ do: 'take', container }, `take label ${container} in hand: what comes off goes into it`)
  return recording(language(words, withHand(scene, container), screen))
}

/** Digits that are nearly a code are a scan that went wrong, unless they are a choice or a container. */
function misreadCode(text: string): Meaning | undefined {
  return readCode(text).kind === 'misread'
    ? go('a label code that does not agree', { at: 'scan', text })
    : undefined
}

/**
 * A line that waits for a place takes a scanned label as its end: `photo g3 to `, `put 5 in `, `8 bolts into `. A label
 * that does not end it so that it is understood is a scan like any other.
 */
function placeScanned({ before, after }: Typed, scene: Scene, screen: Screen): Meaning | undefined {
  const tail = splitTail(before)
  if (!tail || after.trim() !== '' || !/(?:^|\s)(?:in|into|on|onto|to)\s*$/i.test(tail.words))
    return undefined
  const reading = readCode(tail.code)
  const { state } = scene.session
  const bearer =
    reading.kind === 'code' && reading.job === state.job.no ? bearerOf(state, reading.container) : null
  if (bearer === null) return undefined
  const place = 'container' in bearer ? tail.code : bearer.kind === 'step' ? `step ${bearer.step}` : 'machine'
  return recording(language(plainText(`${tail.words.trimEnd()} ${place}`), scene, screen))
}

/** A meaning that is recorded as it stands; of a guess at what a label is for, nothing else counts. */
function recording(meaning: Meaning): Meaning | undefined {
  return meaning.kind === 'act' && meaning.act.do === 'send' ? meaning : undefined
}

/** One in 97 endings is a valid code by chance, so the code has to be known as well. */
function behindWords({ before, after }: Typed, scene: Scene): Meaning | undefined {
  const tail = splitTail(before)
  if (!tail || !isKnown(tail.code, scene)) return undefined
  const meaning = go('scan, the words stay', { at: 'scan', text: tail.code })
  return meaning.kind === 'act' ? { ...meaning, keep: { before: tail.words, after } } : meaning
}

function isKnown(code: string, { session, jobs }: Scene): boolean {
  const reading = readCode(code)
  if (reading.kind !== 'code') return false
  if (reading.job !== session.state.job.no) return jobs.some(({ no }) => no === reading.job)
  return bearerOf(session.state, reading.container) !== null
}

function answered(text: string, { question }: Page): Meaning | undefined {
  if (!question) return undefined
  const answer = question.take(text)
  if (!answer) return undefined
  return 'cannot' in answer ? { kind: 'not-understood', told: answer.cannot } : act(answer.act, answer.says)
}

function chosen(text: string, { scene, screen, page }: Shown): Meaning | undefined {
  if (text === '0' && 'session' in scene) return takingBack(scene)
  const long = LONG_NUMBERS[screen.at]
  if (long !== undefined && /^\d{3,5}$/.test(text)) {
    const choice = page.choice(Number(text))
    return choice
      ? act(choice.act, choice.says)
      : noNumber(`There is no ${long} ${Number(text)}.`, 'The rows show those there are.')
  }
  return numberChosen(text, page)
}

/** Where the numbers are those of the record, and may be longer than a choice is elsewhere. */
const LONG_NUMBERS: Partial<Record<Screen['at'], string>> = {
  lies: 'container',
  back: 'step',
  left: 'line',
  due: 'line',
  photos: 'picture',
  arrivals: 'line',
  help: 'row',
}

function numberChosen(text: string, page: Page): Meaning | undefined {
  if (!/^\d{1,2}$/.test(text)) return undefined
  const choice = page.choice(Number(text))
  return choice
    ? act(choice.act, choice.says)
    : noNumber(`Nothing has the number ${text} here.`, howToChoose(page))
}

function howToChoose(page: Page): string {
  const rows = Array.from({ length: 9 }, (_, index) => page.choice(index + 1))
  const form = fewerForm(rows.filter((row) => row !== undefined))
  return `A number chooses a row that has it${form === null ? '' : `; ${form}`}.`
}

/** `... because 1`: a reason that was given before, by its number. */
function endedByNumber(text: string, scene: Scene, screen: Screen): Meaning | undefined {
  const whole = withWordsAgain(scene, text)
  const meaning = whole === null ? undefined : language(whole, scene, screen)
  return meaning?.kind === 'act' ? { ...meaning, says: [line(whole ?? '')] } : undefined
}

/** Where things come off, `8.2` is eight of the second of the words that were written before. */
function sameCounted(text: string, scene: Scene, screen: Screen): Meaning | undefined {
  const counted = screen.at === 'off' ? countedAgain(text, scene) : null
  return counted === null ? undefined : language(counted, scene, screen)
}

/** A decimal number alone, as from a number pad, is the amount of the fluid that is to be filled next. */
function amountFilled(text: string, scene: Scene, screen: Screen): Meaning | undefined {
  const { next } = cardNow(scene.session)
  if (!/^\d{1,4}[.,]\d{1,3}$/.test(text) || next.kind !== 'todo' || next.todo.kind !== 'fill')
    return undefined
  return language(`fill ${next.todo.fluid.id} ${text}`, scene, screen)
}

/** In a step, `7.1` is seven of what its first row puts home. */
function fewer(text: string, { screen, page }: Shown): Meaning | undefined {
  const choice = screen.at === 'step' ? fewerFitted(text, page) : null
  return choice === null ? undefined : act(choice.act, choice.says)
}

/** The last entry, by its number, where it was written here: a finger takes back what its own hand did. */
function takingBack({ session }: Scene): Meaning {
  const { state } = session
  const last = session.entries().findLast(({ n }) => n === state.inForce.at(-1))
  if (!last || state.inForce.length < 2)
    return noNumber('There is nothing to take back.', 'What is recorded first can be.')
  if (session.isFromElsewhere(last.n)) {
    const what = `Entry ${last.n} was not recorded here: ${entryText(state, last)}.`
    const cure = 'Whoever did that may not know: "undo" takes it back all the same.'
    return act({ do: 'say', what, cure }, what)
  }
  return act(
    { do: 'send', commands: [{ do: 'undo', entry: last.n }] },
    `take back entry ${last.n}: ${entryText(state, last)}`,
  )
}

function screenWord(text: string, scene: Scene, screen: Screen): Meaning | undefined {
  const named = /^new job(?: (.+))?$/i.exec(text)
  if (named) return go('a new job', { at: 'new-job', name: named[1]?.replaceAll('"', '') ?? null })
  const sound = /^sound(?: (on|off))?$/i.exec(text)
  if (sound)
    return act(
      { do: 'sound', on: sound[1] === undefined ? undefined : /on/i.test(sound[1]) },
      'the bell, on or off',
    )
  if (/^large$/i.test(text)) return LARGE
  if (/^told$/i.test(text)) return go('all that came of the last print or import', { at: 'told' })
  if (/^labels?$/i.test(text)) return itsLabel(text, scene, screen)
  if (/^jobs$/i.test(text)) return go('the jobs of this home', { at: 'jobs' })
  if (QUIT.test(text))
    return isUnderWay(scene.session.state)
      ? go('stop work and leave', { at: 'leave' })
      : act({ do: 'leave', note: null }, 'leave')
  return undefined
}

/** `label` and `labels` alone mean the one on the screen, else the one in hand. */
function itsLabel(text: string, { session, hand }: Scene, screen: Screen): Meaning | undefined {
  const { state } = session
  const shown = shownLabel(session, screen)
  const no = shown ?? hand ?? state.hand
  const bearer = no === null ? null : bearerOf(state, no)
  if (no === null || bearer === null) return undefined
  if (/^label$/i.test(text))
    return go(`what to write on ${bearerName(state, bearer)}`, { at: 'qr', container: no, invert: false })
  const choice = printChoice(state, no)
  return choice ? act(choice.act, `${choice.says}: ${bearerName(state, bearer)}`) : undefined
}

function shownLabel(session: Scene['session'], screen: Screen): number | null {
  if (screen.at === 'qr' || screen.at === 'count' || screen.at === 'differences') return screen.container
  if (screen.at !== 'scan') return null
  const answer = scan(session, screen.text)
  return answer.kind === 'container' || answer.kind === 'blank' ? answer.container : null
}

/** What came off, written where a label was scanned while things come off: it goes into what was scanned. */
function intoScanned(text: string, scene: Scene, { screen, page }: Shown): Meaning | undefined {
  if (screen.at !== 'scan' || findVerb(text)) return undefined
  const enter = page.enter?.act
  const comesOff = scene.session.state.strip !== null
  const scanned = comesOff ? shownLabel(scene.session, screen) : null
  const hand = enter?.do === 'take' ? enter.container : scanned
  if (hand === null) return undefined
  const off: Screen = { at: 'off' }
  const meaning = language(text, withHand(scene, hand), off)
  return meaning.kind === 'act' && meaning.act.do === 'send'
    ? { ...meaning, act: { ...meaning.act, to: meaning.act.to ?? off } }
    : meaning
}

/** On a list, words look for what answers to them. Without them one comes back to all of it, with Backspace too. */
function searched(text: string, screen: Screen): Meaning | undefined {
  if (screen.at !== 'lies' && screen.at !== 'log') return undefined
  if (!isSearch(text)) return undefined
  const to = { ...screen, words: text }
  return act({ do: screen.words ? 'turn' : 'go', to }, `look for ${text}`)
}
