import { type ComparisonView, comparisonView } from '../../../session/comparison-view.ts'
import { featureLine } from '../../../words/judging/compare-words.ts'
import { liesText, pieceName } from '../../../words/pieces.ts'
import type { Command } from '../../act.ts'
import type { Screen } from '../../navigation.ts'
import { BACK, type Choice, choicesOf, type Page, rowsOf } from '../../page.ts'
import { chip, SIGNS, type Sign } from '../../signs.ts'
import { line, strong } from '../../text/line.ts'
import { inLarge } from '../large-words.ts'
import { groups, headed, indented, numbered } from '../rows.ts'
import type { PieceId, Scene } from '../scene.ts'

type Compared = Extract<Screen, { at: 'compare' }>

/** A new piece beside the old one, feature by feature: a number says alike, or begins the words of what is not. */
export function comparePage({ session, width }: Scene, { piece, how }: Compared): Page {
  const state = session.stateNow()
  const comparison = comparisonView(state, piece)
  const name = pieceName(state, piece)
  if (!comparison) return nothingToCompare(name, piece, width)
  const choices = new Map<number, Choice>()
  // Once it is right nothing is chosen any more: a finger that bounces says no more of it.
  const isRight = comparison.verdict === 'right'
  const rows = comparison.features.flatMap((each) => {
    if (isRight) return indented(featureLine(each), width)
    const no = choices.size + 1
    choices.set(no, how === undefined ? alike(piece, each.feature) : unlike(piece, each.feature, how))
    return numbered(no, featureLine(each), width)
  })
  const isAllSaid = comparison.verdict === 'due' && comparison.features.every((each) => each.how !== null)
  const others = (isRight ? [] : otherChoices(piece, how, isAllSaid)).flatMap((choice) => {
    const no = choices.size + 1
    choices.set(no, choice)
    return numbered(no, choice.says, width)
  })
  const sign = comparisonSign(comparison)
  return {
    title: line(strong(`COMPARE ${name}`), '  ', chip(sign)),
    top: [],
    rows: rowsOf(
      groups(
        indented(
          `New: ${piece}, ${liesText(state, piece)}. Old: ${comparison.old}, ${liesText(state, comparison.old)}. ${isRight ? 'It is the right one.' : 'Lay them side by side.'}`,
          width,
        ),
        headed(isRight ? 'COMPARED' : HEADINGS[how ?? 'alike'], rows),
        headed(isAllSaid ? 'EVERY FEATURE IS SAID: A NUMBER ENDS IT' : 'OR', others),
      ),
    ),
    enter: how !== undefined ? noneOfThem(piece) : isAllSaid ? NOT_ENDED : BACK,
    choice: choicesOf(choices),
    large: inLarge(sign.word, [[chip(sign)], name]),
  }
}

const HEADINGS = {
  alike: 'A NUMBER SAYS: HELD SIDE BY SIDE, AND ALIKE',
  differs: 'WHAT DIFFERS, AND IS RIGHT ALL THE SAME?',
  wrong: 'WHAT IS WRONG?',
}

/** How a comparison stands, as a sign. */
export function comparisonSign({ verdict }: Pick<ComparisonView, 'verdict'>): Sign {
  if (verdict === 'due') return SIGNS.notCompared
  return verdict === 'right' ? SIGNS.good : SIGNS.wrongOne
}

function alike(piece: PieceId, feature: string): Choice {
  return send(`${feature}: alike`, { do: 'compare', piece, features: [{ feature, how: 'alike' }] })
}

function unlike(piece: PieceId, feature: string, how: 'differs' | 'wrong'): Choice {
  return {
    says: `${feature}: ${how}, say how`,
    act: {
      do: 'write',
      before: `compare ${piece}: ${feature} ${how} `,
      asks:
        how === 'wrong'
          ? 'Type what is wrong, as: 2 mm too short'
          : 'Type how it differs, as: two bolts more',
    },
  }
}

function noneOfThem(piece: PieceId): Choice {
  return { says: 'none of them', act: { do: 'turn', to: { at: 'compare', piece } } }
}

/** A parcel that only looks compared would hold its step: leaving it so takes a key that means it. */
const NOT_ENDED: Choice = {
  says: 'nothing: choose by number how it ends',
  act: {
    do: 'say',
    what: 'Every feature is said, but not yet that it is right.',
    cure: 'Choose by number how it ends; Backspace leaves it open.',
  },
}

function otherChoices(piece: PieceId, how: Compared['how'], isAllSaid: boolean): Choice[] {
  if (how !== undefined) return []
  return [
    send(`${isAllSaid ? '' : 'all the rest is alike: '}it is right, and the old one goes to scrap`, {
      do: 'compare',
      piece,
      features: [],
      rest: 'alike',
    }),
    send(isAllSaid ? 'it is right, and the old one is kept' : 'the same, and the old one is kept', {
      do: 'compare',
      piece,
      features: [],
      rest: 'alike',
      keep: true,
    }),
    {
      says: 'something differs, and is right',
      act: { do: 'turn', to: { at: 'compare', piece, how: 'differs' } },
    },
    { says: 'something is wrong', act: { do: 'turn', to: { at: 'compare', piece, how: 'wrong' } } },
    {
      says: 'send it back: say why',
      act: { do: 'write', before: `send back ${piece} because `, asks: 'Type why, as: for the other side' },
    },
  ]
}

function send(says: string, command: Command): Choice {
  return { says, act: { do: 'send', commands: [command] } }
}

function nothingToCompare(name: string, piece: PieceId, width: number): Page {
  return {
    title: line(strong(`COMPARE ${name}`)),
    top: [],
    rows: rowsOf(indented(`Nothing is to be compared with ${piece}.`, width)),
    enter: BACK,
    choice: () => undefined,
    large: null,
  }
}
