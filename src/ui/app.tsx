import { useApp } from 'ink'
import { useEffect } from 'react'
import type { Desk } from './desk.ts'
import { type Input, useDesk } from './hooks/use-desk.ts'
import { useSize } from './hooks/use-size.ts'
import { Frame } from './screens/frame.tsx'

interface AppProps {
  desk: Desk
  input: Input
  colour: boolean
}

/** The screens in a terminal. They end in one place, here, when the desk says so. */
export function App({ desk, input, colour }: AppProps) {
  const { exit } = useApp()
  const size = useSize()
  useDesk(desk, input)
  useEffect(() => desk.resize(size), [desk, size])
  useEffect(() => {
    if (desk.ended !== null) exit()
  })
  return <Frame desk={desk} size={size} colour={colour} />
}
