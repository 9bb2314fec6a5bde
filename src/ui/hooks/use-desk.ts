import { useEffect, useSyncExternalStore } from 'react'
import { keyReader } from '../controls/line/key-reader.ts'
import type { Desk } from '../desk.ts'

export interface Input {
  subscribe(listener: (chunk: string) => void): () => void
}

/** How long an ESC waits for the rest of a sequence before it is the Escape key, in milliseconds. */
const ESCAPE_MS = 50
/** After so long a held Backspace is a new one, in milliseconds. */
const PAUSE_MS = 500

/** Leads the terminal's input to the desk, and draws again whenever the desk has something else to show. */
export function useDesk(desk: Desk, input: Input): void {
  useSyncExternalStore(
    (listener) => desk.subscribe(listener),
    () => desk.version,
  )
  useEffect(() => listen(desk, input), [desk, input])
}

function listen(desk: Desk, input: Input): () => void {
  const reader = keyReader()
  let held: ReturnType<typeof setTimeout> | undefined
  let pause: ReturnType<typeof setTimeout> | undefined
  const stop = input.subscribe((chunk) => {
    clearTimeout(held)
    clearTimeout(pause)
    for (const pressed of reader.push(chunk)) desk.press(pressed)
    if (reader.waiting()) {
      held = setTimeout(() => {
        for (const pressed of reader.flush()) desk.press(pressed)
      }, ESCAPE_MS)
    }
    pause = setTimeout(() => desk.settle(), PAUSE_MS)
  })
  return () => {
    clearTimeout(held)
    clearTimeout(pause)
    stop()
  }
}
