import { enterGuard, REPEAT_MS } from '../controls/line/enter-guard.ts'
import { keyReader, type Pressed } from '../controls/line/key-reader.ts'
import type { Desk } from '../desk/desk.ts'

export interface Input {
  subscribe(listener: (chunk: string) => void): () => void
}

/** How long an ESC waits for the rest of a sequence before it is the Escape key, in milliseconds. */
const ESCAPE_MS = 50
/** After so long a held Backspace is a new one, and a paste should have ended, in milliseconds. */
const PAUSE_MS = 500

/** Leads the terminal's input to the desk, until the returned function is called. */
export function hearInput(desk: Desk, input: Input): () => void {
  const reader = keyReader()
  const enters = entersOf(desk)
  let held: ReturnType<typeof setTimeout> | undefined
  let pause: ReturnType<typeof setTimeout> | undefined
  const stop = input.subscribe((chunk) => {
    clearTimeout(held)
    clearTimeout(pause)
    for (const pressed of reader.push(chunk)) enters.press(pressed)
    if (reader.waiting()) {
      held = setTimeout(() => {
        for (const pressed of reader.flush()) enters.press(pressed)
      }, ESCAPE_MS)
    }
    pause = setTimeout(() => desk.settle(reader.settle()), PAUSE_MS)
  })
  return () => {
    clearTimeout(held)
    clearTimeout(pause)
    enters.stop()
    stop()
  }
}

/** Hands on what is pressed, but for an Enter that no finger meant. */
function entersOf(desk: Desk) {
  const fateOf = enterGuard()
  let waiting: { claim: string | null; timer: ReturnType<typeof setTimeout> } | undefined
  let isAfterReturn = false
  let meant: string | null = null

  function press(pressed: Pressed): void {
    if (!('text' in pressed)) {
      letThrough()
      pass(pressed)
      return
    }
    for (const part of pressed.text.split(/(?<=[\t\r\n])|(?=[\t\r\n])/)) {
      const isSecondHalf = part === '\n' && isAfterReturn
      isAfterReturn = part === '\r'
      if (isSecondHalf) continue
      if (part === '\r' || part === '\n') enter(part)
      else {
        letThrough()
        // It may have ended a scan: an Enter at once behind it is the scanner's as well.
        if (part === '\t') fateOf(performance.now(), false)
        pass({ text: part })
      }
    }
  }

  function pass(pressed: Pressed): void {
    desk.press(pressed)
    meant = numberMeant(desk)
  }

  function enter(text: string): void {
    const before = meant
    meant = numberMeant(desk)
    if (before !== meant) {
      desk.passOverEnter('overtaken')
      return
    }
    const { claim } = desk
    switch (fateOf(performance.now(), claim !== null)) {
      case 'counts':
        pass({ text })
        break
      case 'repeat':
        drop()
        desk.passOverEnter('repeated')
        break
      case 'waits':
        waiting = { claim, timer: setTimeout(letThrough, REPEAT_MS) }
        break
    }
  }

  /** Nothing repeated it. What it would record by now must still be what it was pressed for. */
  function letThrough(): void {
    const claim = drop()
    if (claim === undefined) return
    if (claim === desk.claim) pass({ text: '\r' })
    else desk.passOverEnter('overtaken')
  }

  function drop(): string | null | undefined {
    const claim = waiting?.claim
    clearTimeout(waiting?.timer)
    waiting = undefined
    return claim
  }

  return { press, stop: drop }
}

/** What a number that stands in the line would do, as a text to know it again by: what others record renumbers rows. */
function numberMeant(desk: Desk): string | null {
  const { before, after } = desk.typed()
  if (!/^\s*\d[\d.,]*\s*$/.test(before + after)) return null
  const meaning = desk.meaning()
  return JSON.stringify(meaning.kind === 'act' ? meaning.act : meaning.kind)
}
