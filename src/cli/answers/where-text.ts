import { findPiecesEver, nearPieces } from '../../lines/find-piece.ts'
import type { Session } from '../../session/session.ts'
import { containerRows } from '../../session/views.ts'
import { numberRanges } from '../../words/grammar.ts'
import { carriedText, countedPiece, homeName, pieceName } from '../../words/pieces.ts'
import { containerName, containerPath } from '../../words/places.ts'
import { label, placeWithLabel } from './labels.ts'
import { picturesLine } from './photos-text.ts'

/** Where the pieces are that answer to words, each with its home; or every container and what is loose. */
export function whereAnswer(session: Session, words: string): { text: string[]; answer: unknown } {
  const { state } = session
  if (words === '') return everywhere(session)
  const pieces = findPiecesEver(words, state).map((id) => {
    const account = state.ledger.accounts.get(id)
    const lies = [...(account?.at ?? [])].map(([place, count]) => ({ place, count }))
    return {
      piece: id,
      name: pieceName(state, id),
      home: homeName(state, id),
      step: account?.piece.step,
      lies,
    }
  })
  if (pieces.length > 0) {
    const text = pieces.map(({ piece, name, home, step, lies }) => {
      const where = lies.map(({ place, count }) => `${count} ${placeWithLabel(state, place)}`).join(', ')
      return `${piece}  ${name}${carriedText(state, piece)}: ${where === '' ? 'nowhere' : where}; belongs to ${home}, step ${step}`
    })
    const [only] = pieces
    const shown = only && pieces.length === 1 ? picturesLine(state, { piece: only.piece }) : []
    return { text: [...text, ...shown.map((line) => `  ${line}`)], answer: pieces }
  }
  const near = nearPieces(words, state).map((id) => `  ${id}  ${pieceName(state, id)}`)
  return {
    text:
      near.length === 0
        ? [`No piece is called "${words}".`]
        : [`No piece is called "${words}". Near it:`, ...near],
    answer: [],
  }
}

function everywhere({ state }: Session): { text: string[]; answer: unknown } {
  const code = label(state)
  const rows = containerRows(state)
  const text = rows.flatMap(({ container, holdings }) => {
    const outer = containerPath(state, container.no).replace(/^\S+ \S+/, '')
    const head = `${code(container.no)}  ${containerName(state, container.no)}${outer}${holdings.length === 0 ? ': empty' : ''}`
    return [
      head,
      ...holdings.map(
        ({ piece, count }) => `  ${piece}  ${countedPiece(state, piece, count)}${carriedText(state, piece)}`,
      ),
    ]
  })
  const loose = (['bench', 'out', 'supplier', 'spare', 'lost'] as const).flatMap((place) =>
    [...(state.ledger.byPlace.get(place) ?? [])].map((piece) => {
      const count = state.ledger.accounts.get(piece)?.at.get(place) ?? 0
      return { place, piece, count }
    }),
  )
  const lines = loose.map(
    ({ place, piece, count }) =>
      `${piece}  ${countedPiece(state, piece, count)}${carriedText(state, piece)}: ${placeWithLabel(state, place)}`,
  )
  const unused = [...state.blanks].filter(([, { voided }]) => voided === null).map(([no]) => no)
  const blank =
    unused.length === 0 ? [] : [`unused ${unused.length === 1 ? 'label' : 'labels'}: ${numberRanges(unused)}`]
  const all = [...text, ...lines, ...blank]
  return {
    text: all.length === 0 ? ['Nothing is off the machine.'] : all,
    answer: { containers: rows, loose, unused },
  }
}
