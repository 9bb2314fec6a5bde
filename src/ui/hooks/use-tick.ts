import { useEffect } from 'react'
import type { Desk } from '../desk/desk.ts'

const SECOND_MS = 1000

/** Looks every second whether a time that runs says something else; only while one runs. */
export function useTick(desk: Desk): void {
  const isTimed = desk.isTimed()
  useEffect(() => {
    if (!isTimed) return
    const timer = setInterval(() => desk.tick(), SECOND_MS)
    return () => clearInterval(timer)
  }, [desk, isTimed])
}
