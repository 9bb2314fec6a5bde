import { findVerb } from '../../lines/read-line.ts'
import type { LayoutView } from '../../session/layout-view.ts'
import type { PositionLayout } from '../../trade/position-layout/position-layout.ts'
import { readLayout } from '../../trade/position-layout/read-layout.ts'
import { layoutFaultText } from '../../words/layout-faults.ts'
import { QUIT } from '../keys.ts'
import type { Screen } from '../navigation.ts'
import type { Choice, Question } from '../page.ts'

export type DrawScreen = Extract<Screen, { at: 'draw' }>

/** Typed forms of a drawing answer the page; numbers, words of the record and the end mean what they mean elsewhere. */
export function drawingQuestion(screen: DrawScreen, { positions }: LayoutView): Question {
  const names = positions.map(({ position }) => position)
  return {
    take(text) {
      if (/^\d{1,2}$/.test(text)) return null
      const read = readLayout(text, names)
      if (read.understood) return { says: 'draw them like this', act: record(screen, read.value) }
      return findVerb(text) || QUIT.test(text) || text.startsWith('?')
        ? null
        : { cannot: layoutFaultText(read.fault, '') }
    },
  }
}

/** Records a drawing and shows it, in place of what was asked. */
export function record({ piece, placing }: DrawScreen, layout: PositionLayout): Choice['act'] {
  return {
    do: 'send',
    commands: [{ do: 'lay-out', piece, layout, ...(placing?.arrow && { arrow: placing.arrow }) }],
    to: { at: 'draw', piece, set: 'belongs', placing: null },
    isTurn: true,
  }
}
