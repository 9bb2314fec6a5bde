import type { EntryOf } from '../../journal/entry.ts'
import type { State } from '../../journal/state.ts'
import { movesText } from '../move-text.ts'
import { agree, pieceName } from '../pieces.ts'

/** One line of history: what was found of a new piece beside the old one, and what left because of it. */
export function comparedText(
  state: State,
  { piece, old, features, verdict, moves }: EntryOf<'compared'>,
): string {
  const said = features.map(({ feature, how, says }) => {
    const name = feature === 'the whole' ? '' : `${feature} `
    return `${name}${LIKENESS[how]}${says ? ` (${says})` : ''}`
  })
  const names = `${pieceName(state, piece)} with the old ${agree(state, old, 'one', 'ones')}, ${old}`
  const left = moves.length === 0 ? '' : `; ${movesText(state, moves)}`
  return `compared: ${names}${said.length > 0 ? `: ${said.join(', ')}` : ''}; ${verdictText(state, piece, verdict)}${left}`
}

function verdictText(
  state: State,
  piece: EntryOf<'compared'>['piece'],
  verdict: keyof typeof STANDS,
): string {
  if (verdict === 'due') return 'not done yet'
  return `${agree(state, piece, 'it is', 'they are')} ${STANDS[verdict]}`
}

const LIKENESS = { alike: 'alike', differs: 'different but right', wrong: 'wrong' }
const STANDS = { due: '', right: 'right', wrong: 'wrong' }
