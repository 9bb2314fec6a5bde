import { groupedCode } from '../../label/code.ts'
import { screenQr } from '../../label/screen-qr.ts'
import { type Bearer, bearerOf, codeOf } from '../../session/scan.ts'
import { bearerName } from '../../words/bearers.ts'
import { markerText } from '../../words/label-text/marker-text.ts'
import { BACK, type Choice, choicesOf, goTo, type Large, NO_CHOICES, type Page, rowsOf } from '../page.ts'
import { blank, cut, type Line, line, strong, wrap } from '../text/line.ts'
import { inLarge, inWhole } from './large-words.ts'
import { picturesChoice } from './pictures-choice.ts'
import { flagChoices, printChoice } from './print-choices.ts'
import { heading } from './rows.ts'
import type { Scene } from './scene.ts'

const SYMBOL_WIDTH = 29
/** The columns left of the words. */
const BESIDE = SYMBOL_WIDTH + 8

/** The QR symbol of a label, as large as a terminal draws it, and beside it what to write on it with a marker. */
export function qrPage(scene: Scene, no: number, invert: boolean): Page {
  const { session, colour, width } = scene
  const { state } = session
  const bearer = bearerOf(state, no)
  if (bearer === null) return missing(no)
  const name = bearerName(state, bearer)
  const code = codeOf(state, no)
  const written = bearer.kind === 'container' ? markerText(state, no, code) : [groupedCode(code)]
  const choices = labelChoices(scene, no, bearer, invert)
  const beside = besideRows(scene, { name, bearer, written }, choices)
  const symbol = screenQr(code, { colour, invert })
  const rows = Array.from({ length: Math.max(symbol.length, beside.length) }, (_, index): Line => {
    const text = cut(beside[index] ?? blank, Math.max(0, width - BESIDE))
    const row = symbol[index]
    return [
      { text: '     ', tone: 'plain' },
      row === undefined ? { text: ' '.repeat(SYMBOL_WIDTH), tone: 'plain' } : { text: row, tone: 'raw' },
      { text: '   ', tone: 'plain' },
      ...text,
    ]
  })
  return {
    title: line(strong(name), `  label ${groupedCode(code)}`),
    top: [],
    rows: rowsOf(rows),
    enter: BACK,
    choice: choicesOf(choices),
    large: largeOf(written, name, bearer),
  }
}

const FLAGS = 2
const MOST_FLAGS = 3

/** A number always means the same: 1 prints, 2 to 4 are flags, 5 pictures, 6 what is in it, 9 the other way round. */
function labelChoices(scene: Scene, no: number, bearer: Bearer, invert: boolean): Map<number, Choice> {
  const { session, colour } = scene
  const choices = new Map<number, Choice | null>([[1, printChoice(session.state, no)]])
  if (bearer.kind === 'container' || bearer.kind === 'blank') {
    for (const [index, flags] of flagChoices(session.state, no).slice(0, MOST_FLAGS).entries())
      choices.set(FLAGS + index, flags)
    choices.set(5, picturesChoice(scene, { container: no }))
  }
  if (bearer.kind === 'step') choices.set(5, picturesChoice(scene, { step: bearer.step }))
  if (bearer.kind === 'container') choices.set(6, goTo('look into it', { at: 'scan', text: String(no) }))
  if (!colour)
    choices.set(9, {
      says: 'the other way round, for a light screen',
      act: { do: 'turn', to: { at: 'qr', container: no, invert: !invert } },
    })
  return new Map([...choices].flatMap(([number, choice]) => (choice ? [[number, choice] as const] : [])))
}

function besideRows(
  { width }: Scene,
  { name, bearer, written }: { name: string; bearer: Bearer; written: readonly string[] },
  choices: ReadonlyMap<number, Choice>,
): Line[] {
  const room = Math.max(10, width - BESIDE)
  const [code = '', ...rest] = written
  return [
    blank,
    heading(bearer.kind === 'container' ? 'WRITE ON IT' : 'ITS LABEL'),
    line(strong(code)),
    ...(bearer.kind === 'container' ? rest : [toldOf(bearer, name)]).flatMap((text) =>
      wrap(line(text), room, 2),
    ),
    blank,
    ...[...choices].flatMap(([number, { says }]) =>
      wrap(line(strong(String(number).padStart(2)), `  ${says}`), room, 4),
    ),
  ]
}

function toldOf(bearer: Bearer, name: string): string {
  return bearer.kind === 'blank' ? 'unused: what is put into it opens a bag' : name
}

/** The code is what must be written right; the words under it are copied too, so none is cut. */
function largeOf([code = '', ...rest]: readonly string[], name: string, bearer: Bearer): Large {
  if (bearer.kind !== 'container') return inLarge(code, [name])
  const whole = inWhole([name, ...rest])
  return inLarge(code, whole, whole.length)
}

function missing(no: number): Page {
  return {
    title: line(strong(`LABEL ${no}`)),
    top: [],
    rows: rowsOf([line(`     No label of this job has the number ${no}.`)]),
    enter: BACK,
    choice: NO_CHOICES,
    large: null,
  }
}
