import { readCode, splitTail } from '../../label/code.ts'
import { plainText } from '../../label/plain-text.ts'
import { findVerb } from '../../lines/read-line.ts'
import { bearerOf, scan } from '../../session/scan.ts'
import { containerName } from '../../words/places.ts'
import { type Scene, withHand } from '../model/scene.ts'
import type { Screen } from '../navigation.ts'
import { line } from '../text/line.ts'
import { language } from './language.ts'
import { act, go, type Meaning, type Shown, type Typed } from './meaning.ts'

/** A label code alone is a scan, wherever one is. */
export function wholeCode(text: string): Meaning | undefined {
  return readCode(text).kind === 'code' ? go('scan', { at: 'scan', text }) : undefined
}

/**
 * Where things come off, an unused label is taken in hand at once; scanned behind the words of what came off, it takes
 * that in.
 */
export function unusedLabel(text: string, scene: Scene, screen: Screen): Meaning | undefined {
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
export function misreadCode(text: string): Meaning | undefined {
  return readCode(text).kind === 'misread'
    ? go('a label code that does not agree', { at: 'scan', text })
    : undefined
}

/**
 * A line that waits for a place takes a scanned label as its end: `photo g3 to `, `put 5 in `, `8 bolts into `. A label
 * that does not end it so that it is understood is a scan like any other.
 */
export function placeScanned({ before, after }: Typed, scene: Scene, screen: Screen): Meaning | undefined {
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

/** One in 97 endings is a valid code by chance, so the code has to be known as well. */
export function behindWords({ before, after }: Typed, scene: Scene): Meaning | undefined {
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

/** What came off, written where a label was scanned while things come off: it goes into what was scanned. */
export function intoScanned(text: string, scene: Scene, { screen, page }: Shown): Meaning | undefined {
  if (screen.at !== 'scan' || findVerb(text)) return undefined
  const enter = page.enter?.act
  const comesOff = scene.session.state.strip !== null
  const scanned = comesOff ? shownLabel(scene.session, screen) : null
  const hand = enter?.do === 'take' ? enter.container : scanned
  if (hand === null) return undefined
  const off: Screen = { at: 'off' }
  const meaning = language(text, withHand(scene, hand), off)
  if (meaning.kind !== 'act' || meaning.act.do !== 'send') return meaning
  const goesIn = meaning.act.commands.some(
    (command) => command.do === 'take-off' && command.into?.kind === 'container' && command.into.no === hand,
  )
  // The head still names what is in hand.
  const where = goesIn ? [line(`into ${containerName(scene.session.state, hand)}:`)] : []
  return { ...meaning, says: [...where, ...meaning.says], act: { ...meaning.act, to: meaning.act.to ?? off } }
}

/** A meaning that is recorded as it stands; of a guess at what a label is for, nothing else counts. */
function recording(meaning: Meaning): Meaning | undefined {
  return meaning.kind === 'act' && meaning.act.do === 'send' ? meaning : undefined
}

/** The label that a screen is about; null where it is about none. */
export function shownLabel(session: Scene['session'], screen: Screen): number | null {
  if (screen.at === 'qr' || screen.at === 'count' || screen.at === 'differences') return screen.container
  if (screen.at !== 'scan') return null
  const answer = scan(session, screen.text)
  return answer.kind === 'container' || answer.kind === 'blank' ? answer.container : null
}
