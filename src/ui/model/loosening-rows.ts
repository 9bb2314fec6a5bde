import type { OpenLoosening } from '../../session/open-loosening.ts'
import { fastenerCalled, looseningName, passName } from '../../words/names.ts'
import type { Choice, Large } from '../page.ts'
import { blank, type Line, line, strong } from '../text/line.ts'
import { besideLetters } from './beside.ts'
import { inLarge } from './large-words.ts'
import { stageRows } from './position-stage.ts'
import { headed } from './rows.ts'
import type { Scene } from './scene.ts'
import { figureOf, passOf } from './turn-in-large.ts'

/** The fastener that is eased next, large, over how far each of them is. */
export function looseningRows(
  { session: { state }, width, height }: Scene,
  { loosening, next }: OpenLoosening,
): Line[] {
  return [
    ...besideLetters(
      next.fastener,
      [
        line(strong(isNewPass(next) ? 'NEXT: EASE, A NEW PASS' : 'NEXT: EASE')),
        line(strong(passName(loosening, next.pass))),
        line(easedText({ loosening, next })),
        line(looseningName(state, loosening.id)),
      ],
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
export function looseningInLarge({ loosening, next }: OpenLoosening): Large {
  const pass = loosening.passes[next.pass]
  return inLarge(
    next.fastener,
    [pass ? figureOf(pass) : '', passOf(loosening.passes, next), easedText({ loosening, next })],
    1,
  )
}

function easedText({ loosening, next }: OpenLoosening): string {
  return `${next.through} of ${loosening.order.length} eased`
}

/** One Enter a fastener. */
export function easeChoice({ loosening, next }: OpenLoosening): Choice {
  return {
    says: `${fastenerCalled(next.fastener)} is eased: ${loosening.passes[next.pass]?.typed ?? ''}`,
    act: { do: 'send', commands: [{ do: 'tighten', tightening: loosening.id, fastener: next.fastener }] },
  }
}
