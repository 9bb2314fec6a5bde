import { useApp } from 'ink'
import { useEffect } from 'react'
import type { Desk } from './desk/desk.ts'
import { useDesk } from './hooks/use-desk.ts'
import { useSize } from './hooks/use-size.ts'
import { useTick } from './hooks/use-tick.ts'
import { Frame } from './screens/frame.tsx'
import type { Terminal } from './terminal/terminal.ts'

interface AppProps {
  desk: Desk
  terminal: Pick<Terminal, 'subscribe' | 'placeCursor'>
  colour: boolean
}

/** The screens in a terminal. They end in one place, here, when the desk says so. */
export function App({ desk, terminal, colour }: AppProps) {
  const { exit } = useApp()
  const size = useSize()
  useDesk(desk, terminal)
  useTick(desk)
  useEffect(() => desk.resize(size), [desk, size])
  useEffect(() => {
    if (desk.ended !== null) exit()
  })
  return <Frame desk={desk} size={size} colour={colour} placeCursor={terminal.placeCursor} />
}
