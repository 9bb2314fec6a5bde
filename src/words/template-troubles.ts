import type { State } from '../journal/state.ts'
import type { TemplateRefusal } from '../label/layout/template.ts'
import type { TemplateFactsRefusal } from '../session/template-facts.ts'
import type { LayoutFault } from '../trade/position-layout/read-layout.ts'
import { joined } from './grammar.ts'
import { layoutFaultText, namedWrongly } from './layout-faults.ts'
import { characterName, millimetres, sizeText } from './measures.ts'
import { patternTrouble } from './pattern-troubles.ts'
import { pieceName, positionName } from './pieces.ts'
import { type Told, told } from './told.ts'

/** Why no template was drawn: of the pieces, of the layout as typed, or of the paper. */
export type TemplateTrouble = TemplateFactsRefusal | LayoutFault | TemplateRefusal

/** Why no template was drawn, with its arithmetic, and what to do. */
export function templateTroubleText(state: State, trouble: TemplateTrouble): Told {
  switch (trouble.code) {
    case 'pattern-not-of':
    case 'pattern-single':
    case 'pattern-positions-unknown':
    case 'pattern-position-shared':
      return patternTrouble(state, trouble)
    case 'template-position-shared':
      return told(
        `${positionName(trouble.position)} would stand twice on one sheet: ${joined(trouble.pieces.map((id) => pieceName(state, id)))}`,
        'print a template for each set',
      )
    case 'template-too-many':
    case 'layout-too-many':
      return told(`${trouble.positions} positions are more than ${trouble.most}`, 'print fewer on one sheet')
    case 'template-places':
      return told(
        'the layout does not name every position once',
        'write each position once, and "." where there is none',
        namedWrongly(trouble),
      )
    case 'layout-form':
    case 'layout-positions':
    case 'layout-too-small':
    case 'layout-too-wide':
      return layoutFaultText(trouble, 'laid out')
    default:
      return paperTold(trouble)
  }
}

function paperTold(trouble: Exclude<TemplateRefusal, { code: 'template-places' }>): Told {
  switch (trouble.code) {
    case 'template-characters':
      return told(
        `'${trouble.text}' cannot be drawn: the fonts have no ${trouble.characters.map(characterName).join(', ')}`,
        'change the name that holds it, or write this sheet by hand',
      )
    case 'template-page-small':
      return told(
        `a template needs paper at least ${millimetres(trouble.least)} wide, and this is ${sizeText(trouble.page)}`,
        'print it on a4 or letter',
      )
    case 'template-too-dense': {
      const { positions, fits, columns, rows } = trouble
      return columns === null || rows === null
        ? told(
            `${positions} names would overlap on a circle: ${fits} fit on this paper`,
            'lay them out in rows',
          )
        : told(
            `${positions} positions laid out like this would overlap: at most ${rows} rows of ${columns} fit on this paper`,
            'lay them out in more or shorter rows, or print larger paper',
          )
    }
    case 'template-pitch-small':
      return told(
        `at ${millimetres(trouble.pitch)} between neighbours the names would overlap`,
        trouble.least === null
          ? 'leave out the pitch: then they are spread over the sheet'
          : `from ${millimetres(trouble.least)} on they do not; without a pitch they are spread over the sheet`,
      )
    case 'template-pitch-large':
      return told(
        `at ${millimetres(trouble.pitch)} between neighbours this needs ${sizeText(trouble.needs)}, and the paper is ${sizeText(trouble.page)}`,
        trouble.largest === null
          ? 'use larger paper, or leave out the pitch'
          : `up to ${millimetres(trouble.largest)} fit; or use larger paper, or leave out the pitch`,
      )
    case 'symbol-too-small':
      return told(
        `the symbol of the container needs ${millimetres(trouble.needed)} at ${trouble.dpi} dpi, and has ${millimetres(trouble.room)}`,
        'use a printer of higher resolution',
      )
    default:
      return trouble satisfies never
  }
}
