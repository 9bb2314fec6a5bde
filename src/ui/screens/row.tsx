import { Text, type TextProps } from 'ink'
import type { Line, Tone } from '../text/line.ts'

interface RowProps {
  line: Line
  colour: boolean
}

/** One row of the screen. An empty one still takes its place. */
export function Row({ line, colour }: RowProps) {
  if (line.length === 0) return <Text> </Text>
  return (
    <Text wrap="truncate">
      {line.map(({ text, tone }, index) => (
        // Spans have no identity: a row is drawn anew as a whole.
        // biome-ignore lint/suspicious/noArrayIndexKey: see above
        <Text key={index} {...propsOf(tone, colour)}>
          {text}
        </Text>
      ))}
    </Text>
  )
}

/**
 * Tones as a terminal shows them. Colours come in pairs of letters and ground, so that no theme can make them
 * unreadable; what must stand out most is the terminal's own colours turned round.
 */
function propsOf(tone: Tone, colour: boolean): TextProps {
  switch (tone) {
    case 'strong':
    case 'large':
      return { bold: true }
    case 'here':
    case 'stop':
      return { bold: true, inverse: true }
    case 'good':
      return colour ? { color: 'black', backgroundColor: 'green' } : { bold: true }
    case 'wait':
      return colour ? { color: 'black', backgroundColor: 'yellow' } : { bold: true }
    case 'active':
      return colour ? { color: 'black', backgroundColor: 'cyan' } : { bold: true }
    default:
      return {}
  }
}
