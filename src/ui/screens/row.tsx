import chalk from 'chalk'
import { Text } from 'ink'
import type { Line } from '../text/line.ts'
import { type Depth, lookOf } from './palette.ts'

interface RowProps {
  line: Line
  colour: boolean
}

/** One row of the screen. An empty one still takes its place. */
export function Row({ line, colour }: RowProps) {
  if (line.length === 0) return <Text> </Text>
  const depth = colour ? depthNow() : 'none'
  return (
    <Text wrap="truncate">
      {line.map(({ text, tone }, index) => (
        // Spans have no identity: a row is drawn anew as a whole.
        // biome-ignore lint/suspicious/noArrayIndexKey: see above
        <Text key={index} {...lookOf(tone, depth)}>
          {text}
        </Text>
      ))}
    </Text>
  )
}

/** What Ink found out about the terminal: it colours through chalk, by chalk's level. */
function depthNow(): Depth {
  if (chalk.level === 0) return 'none'
  return chalk.level === 1 ? 'named' : 'settled'
}
