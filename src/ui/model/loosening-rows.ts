import type { OpenLoosening } from '../../session/open-loosening.ts'
import { looseningName, passName } from '../../words/names.ts'
import type { Choice, Large } from '../page.ts'
import { blank, type Line, line, strong } from '../text/line.ts'
import { besideLetters } from './beside.ts'
import { stageRows } from './position-stage.ts'
import { headed } from './rows.ts'
import type { Scene, State } from './scene.ts'

/** The fastener that is eased next, large, over how far each of them is. */
export function looseningRows(
  { session: { state }, width, height }: Scene,
  { loosening, next }: OpenLoosening,
): Line[] {
  const { letters, under } = looseningInLarge(state, { loosening, next })
  return [
    ...besideLetters(
      letters,
      [line(strong(isNewPass(next) ? 'NEXT: EASE, A NEW PASS' : 'NEXT: EASE')), ...under],
      width,
    ),
    blank,
    ...headed(
      `EASING ${looseningName(state, loosening.id)}`,
      stageRows(state, loosening, { width, height: Math.max(LEAST_ROWS, height - BESIDES) }).rows,
    ),
  ]
}

function isNewPass({ pass, through }: OpenLoosening['next']): boolean {
  return pass > 0 && through === 0
}

/** The container in hand, the large letters and what can be chosen want their rows as well. */
const BESIDES = 14
const LEAST_ROWS = 8

/** The same for large letters alone. */
export function looseningInLarge(state: State, { loosening, next }: OpenLoosening): Large {
  return {
    letters: next.fastener,
    under: [
      line(strong(passName(loosening, next.pass))),
      line(`${next.through} of ${loosening.order.length} eased`),
      line(looseningName(state, loosening.id)),
    ],
  }
}

/** One Enter a fastener. */
export function easeChoice({ loosening, next }: OpenLoosening): Choice {
  return {
    says: `${next.fastener} is eased: ${loosening.passes[next.pass]?.typed ?? ''}`,
    act: { do: 'send', commands: [{ do: 'tighten', tightening: loosening.id, fastener: next.fastener }] },
  }
}
