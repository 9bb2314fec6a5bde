import { Box, Static, Text, useApp } from 'ink'
import { useCallback, useEffect, useSyncExternalStore } from 'react'
import type { Desk } from '../desk/desk.ts'
import { useTick } from '../hooks/use-tick.ts'
import { plain, textOf, wrap } from '../text/line.ts'
import type { Reader, Utterance } from './reader.ts'

interface ReadAloudProps {
  desk: Desk
  reader: Reader
  /** Columns of the terminal: sentences are broken between words. */
  width(): number
}

/**
 * The screens in Ink's screen-reader mode: what is static there is written once, in reading order, and never drawn
 * over. Two things that mode does not carry are done by hand. It would read each frame from its top: which sentences
 * are new is worked out before. Its roles come out as words before each text ("listitem: ..."), so none are given:
 * the sentences say themselves what they are.
 */
export function ReadAloud({ desk, reader, width }: ReadAloudProps) {
  const { exit } = useApp()
  const subscribe = useCallback((listener: () => void) => reader.subscribe(listener), [reader])
  const said = useSyncExternalStore(subscribe, () => reader.said)
  useTick(desk)
  useEffect(() => {
    const leave = () => {
      if (desk.ended !== null) exit()
    }
    leave()
    return desk.subscribe(leave)
  }, [desk, exit])
  return (
    <Static items={[...said]}>
      {(utterance: Utterance) => (
        <Box key={utterance.no} flexDirection="column">
          <Text>{utterance.sentences.map((sentence) => broken(sentence, width())).join('\n')}</Text>
        </Box>
      )}
    </Static>
  )
}

function broken(sentence: string, width: number): string {
  return wrap([plain(sentence)], width)
    .map(textOf)
    .join('\n')
}
