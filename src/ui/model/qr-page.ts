import { groupedCode } from '../../label/code.ts'
import { screenQr } from '../../label/screen-qr.ts'
import { bearerOf, codeOf } from '../../session/scan.ts'
import { bearerName } from '../../words/bearers.ts'
import { liesIn } from '../../words/lookups.ts'
import { countedPiece } from '../../words/pieces.ts'
import { type Choice, choicesOf, type Page, rowsOf } from '../page.ts'
import { blank, cut, type Line, line, padded, strong, wrap } from '../text/line.ts'
import type { Scene, State } from './scene.ts'

const SYMBOL_WIDTH = 29

/** The QR symbol of a label, as large as a terminal draws it, and beside it what it stands for. */
export function qrPage(scene: Scene, no: number, invert: boolean): Page {
  const { session, colour, width } = scene
  const { state } = session
  const bearer = bearerOf(state, no)
  if (bearer === null) return missing(no)
  const name = bearerName(state, bearer)
  const code = codeOf(state, no)
  const choices = new Map<number, Choice>()
  if (!colour)
    choices.set(1, {
      says: 'the other way round, for a light screen',
      act: { do: 'turn', to: { at: 'qr', container: no, invert: !invert } },
    })
  const beside = besideRows(scene, { no, name, code, isContainer: bearer.kind === 'container' }, choices)
  const rows = screenQr(code, { colour, invert }).map((row, index): Line => {
    const text = cut(beside[index] ?? blank, Math.max(0, width - SYMBOL_WIDTH - 8))
    return [
      { text: '     ', tone: 'plain' },
      { text: row, tone: 'raw' },
      { text: '   ', tone: 'plain' },
      ...text,
    ]
  })
  return {
    title: line(strong(name), `  label ${groupedCode(code)}`),
    top: [],
    rows: rowsOf(rows),
    enter: { says: 'back', act: { do: 'back' } },
    choice: choicesOf(choices),
    large: null,
  }
}

function besideRows(
  { session, width, colour }: Scene,
  { no, name, code, isContainer }: { no: number; name: string; code: string; isContainer: boolean },
  choices: Map<number, Choice>,
): Line[] {
  const { state } = session
  const room = Math.max(10, width - SYMBOL_WIDTH - 8)
  return [
    blank,
    line(strong(groupedCode(code))),
    ...wrap(line(name), room, 2),
    blank,
    ...(isContainer ? content(state, no) : []).flatMap((text) => wrap(line(text), room, 2)).slice(0, 7),
    blank,
    ...(colour ? [] : wrap(line('Without colour a dark screen is assumed.'), room)),
    ...[...choices].flatMap(([number, { says }]) => wrap(line(strong(String(number)), `  ${says}`), room, 3)),
  ]
}

function content(state: State, no: number): string[] {
  const lying = liesIn(state, no)
  return lying.length === 0 ? ['empty'] : lying.map(({ piece, count }) => countedPiece(state, piece, count))
}

function missing(no: number): Page {
  return {
    title: line(strong(`LABEL ${no}`)),
    top: [],
    rows: rowsOf([padded(line(`     No label of this job has the number ${no}.`), 40)]),
    enter: { says: 'back', act: { do: 'back' } },
    choice: () => undefined,
    large: null,
  }
}
