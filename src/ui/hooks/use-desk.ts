import { useCallback, useEffect, useSyncExternalStore } from 'react'
import type { Desk } from '../desk/desk.ts'
import { hearInput, type Input } from './hear-input.ts'

/** Changes that come together are drawn together, in milliseconds: a scanner types faster than anybody looks. */
const FRAME_MS = 12

/** Leads the terminal's input to the desk, and draws again whenever the desk has something else to show. */
export function useDesk(desk: Desk, input: Input): void {
  const subscribe = useCallback((listener: () => void) => desk.subscribe(gathered(listener)), [desk])
  useSyncExternalStore(subscribe, () => desk.version)
  useEffect(() => hearInput(desk, input), [desk, input])
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
