import type { Tone } from '../text/line.ts'

/** How many colours there are: none, the sixteen with names, or the 256 whose values are settled. */
export type Depth = 'none' | 'named' | 'settled'

/** How a tone looks: letters and ground always come as a pair, so that no theme can make them unreadable. */
export interface Look {
  bold?: true
  inverse?: true
  color?: string
  backgroundColor?: string
}

/** What stands out by a colour. The others are the terminal's own colours, bold or turned round. */
export type Coloured = Extract<Tone, 'good' | 'wait' | 'active'>

/**
 * The pairs, by number in the 256 colours and by name in the sixteen. Of the numbers only those from 16 on are taken,
 * which no theme changes. Of the names, light letters on black: a light ground comes out dark on a Linux console, and
 * black letters grey on others. What is good is quiet, what waits is loud.
 */
export const PAIRS: Record<Coloured, { settled: [letters: number, ground: number]; named: Named }> = {
  good: { settled: [231, 22], named: ['greenBright', 'black'] },
  wait: { settled: [16, 172], named: ['yellowBright', 'black'] },
  active: { settled: [16, 37], named: ['cyanBright', 'black'] },
}

type Named = [letters: 'greenBright' | 'yellowBright' | 'cyanBright', ground: 'black']

/** How a tone is shown with so many colours. */
export function lookOf(tone: Tone, depth: Depth): Look {
  switch (tone) {
    case 'strong':
    case 'large':
      return { bold: true }
    case 'here':
    case 'stop':
      return { bold: true, inverse: true }
    case 'good':
    case 'wait':
    case 'active':
      return paired(tone, depth)
    default:
      return {}
  }
}

/** Never bold as well: some terminals make bold letters of a named colour lighter, black ones grey. */
function paired(tone: Coloured, depth: Depth): Look {
  if (depth === 'none') return { bold: true }
  const [letters, ground] = PAIRS[tone][depth]
  return depth === 'named'
    ? { color: `${letters}`, backgroundColor: `${ground}` }
    : { color: `ansi256(${letters})`, backgroundColor: `ansi256(${ground})` }
}
