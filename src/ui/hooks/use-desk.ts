import { useCallback, useEffect, useSyncExternalStore } from 'react'
import { keyReader } from '../controls/line/key-reader.ts'
import type { Desk } from '../desk.ts'

export interface Input {
  subscribe(listener: (chunk: string) => void): () => void
}

/** Changes that come together are drawn together, in milliseconds: a scanner types faster than anybody looks. */
const FRAME_MS = 12
/** How long an ESC waits for the rest of a sequence before it is the Escape key, in milliseconds. */
const ESCAPE_MS = 50
/** After so long a held Backspace is a new one, in milliseconds. */
const PAUSE_MS = 500

/** Leads the terminal's input to the desk, and draws again whenever the desk has something else to show. */
export function useDesk(desk: Desk, input: Input): void {
  const subscribe = useCallback((listener: () => void) => desk.subscribe(gathered(listener)), [desk])
  useSyncExternalStore(subscribe, () => desk.version)
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

/** Calls `listener` at once, and for all calls within a frame's time after that once more. */
function gathered(listener: () => void): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined
  let last = 0
  const call = () => {
    timer = undefined
    last = performance.now()
    listener()
  }
  return () => {
    if (timer !== undefined) return
    const wait = last + FRAME_MS - performance.now()
    if (wait <= 0) call()
    else timer = setTimeout(call, wait)
  }
}
