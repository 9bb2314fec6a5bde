import { groupedCode } from '../../label/code.ts'
import { screenQr } from '../../label/screen-qr.ts'
import { codeOf } from '../../session/scan.ts'
import type { Session } from '../../session/session.ts'
import { bearerText } from './labels.ts'

/** How the QR symbol is drawn on this terminal. */
export interface Drawing {
  colour: boolean
  invert: boolean
}

/** A label as a QR symbol for the screen; null when nothing in the job bears that number. */
export function qrAnswer(
  { state }: Session,
  container: number,
  drawing: Drawing,
): { symbol: string[]; text: string[]; answer: unknown } | null {
  const name = bearerText(state, container)
  if (name === null) return null
  const code = codeOf(state, container)
  const theme = drawing.invert
    ? ['Drawn for a light terminal; leave out --invert for a dark one.']
    : ['Drawn for a dark terminal; add --invert for a light one.']
  return {
    symbol: screenQr(code, drawing),
    text: [`${groupedCode(code)}  ${name}`, ...(drawing.colour ? [] : theme)],
    answer: { container, code },
  }
}
