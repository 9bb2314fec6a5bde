import { templatePages } from '../label/layout/template.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { Printed } from '../lines/errand.ts'
import type { Arrow, LayoutFacts } from '../plan/facts.ts'
import { layoutFor, layoutOf } from '../plan/pattern.ts'
import type { Session } from '../session/session.ts'
import { templateFacts } from '../session/template-facts.ts'
import { proposeLayout } from '../trade/position-layout/propose-layout.ts'
import { readLayout } from '../trade/position-layout/read-layout.ts'
import { templateContent } from '../words/template-text.ts'
import { type TemplateTrouble, templateTroubleText } from '../words/template-troubles.ts'
import type { Choice } from './choose-print.ts'
import { typeface } from './fonts.ts'
import { jobPart, type Made, madePages, type NotMade, notMade } from './made.ts'

/** A sheet with a place for each piece of one or more sets, as they lie on the machine. */
export function makeTemplate(
  { state }: Session,
  { pieces, layout: typed, arrow, pitch }: Extract<Printed, { print: 'template' }>,
  { stock, dpi }: Choice,
): Made | NotMade {
  const troubled = (trouble: TemplateTrouble) =>
    notMade({
      code: 'command-refused',
      refused: trouble.code,
      told: templateTroubleText(state, trouble),
    })
  const reading = templateFacts(state, pieces as PieceId[])
  if (!reading.ok) return troubled(reading.refusal)
  const content = templateContent(state, reading.facts, pitch)
  const positions = content.places.map(({ position }) => position)
  const written = typed === null ? null : readLayout(typed, positions)
  if (written && !written.understood) return troubled(written.fault)
  const drawn = layoutFor(layoutOf(state, pieces[0] as PieceId), positions)
  const layout = written?.value ?? drawn ?? proposeLayout(positions).layout
  const laid = templatePages(content, layout, stock.page, {
    typeface: typeface(),
    arrow: arrow ?? (drawn && !written ? sharedArrow(drawn) : null),
    pitch,
    dpi,
  })
  if (!laid.ok) return troubled(laid.refusal)
  return madePages(laid.pages, {
    title: content.name,
    name: `${jobPart(state.job.no)}-template-${pieces[0]}`,
    notes: [
      ...(typed === null && !drawn
        ? [
            'Laid out by the names of the positions; "layout PIECE: 2x4" draws them in the record, "laid out 2x4" for this sheet.',
          ]
        : []),
      'Print it without scaling, and measure the line of 100 mm on it.',
    ],
  })
}

/** The way all arrows of a drawing point; null where they do not agree, or there are none. */
function sharedArrow({ places }: Pick<LayoutFacts, 'places'>): Arrow | null {
  const [first] = places
  return first?.arrow && places.every(({ arrow }) => arrow === first.arrow) ? first.arrow : null
}
