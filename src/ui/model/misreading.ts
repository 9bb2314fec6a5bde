import type { Reading } from '../../lines/reading.ts'
import { pieceName } from '../../words/pieces.ts'
import type { Told } from '../../words/told.ts'
import type { State } from './scene.ts'

type Misreading = Extract<Reading, { kind: 'misread' }>['misreading']

/** Why a line was not understood, and the nearest form that is. */
export function misreadingTold(state: State, misreading: Misreading): Told {
  switch (misreading.code) {
    case 'empty':
      return told('Nothing is written.', 'Type what to do, or "?" for help.')
    case 'too-long':
      return told(`The line is longer than ${misreading.limit} characters.`, 'Say it in two lines.')
    case 'unknown-word':
      return told(
        `"${misreading.part}" is no word known here.`,
        misreading.nearest === null
          ? '"?" shows what can be written.'
          : `Was it "${misreading.nearest}"? "?" shows what can be written.`,
      )
    case 'missing':
      return told(`${misreading.what} is missing.`, `Write: ${misreading.form}`)
    case 'not-a-number':
      return told(`"${misreading.part}" is no number.`, `Write: ${misreading.form}`)
    case 'not-understood':
      return told(
        `"${misreading.part}" is not understood.`,
        `Write: ${misreading.nearest ?? misreading.form}`,
      )
    case 'no-such-piece':
      return told(
        `No piece answers to "${misreading.part}".`,
        misreading.near.length === 0
          ? 'Look for it with "where" and its words.'
          : `Near: ${misreading.near.map((piece) => `${pieceName(state, piece)} (${piece})`).join(', ')}`,
      )
    case 'no-such-place':
      return told(`"${misreading.part}" is no place.`, `Write: ${misreading.form}`)
    case 'no-such-fluid':
      return told(
        `No fluid "${misreading.part}" came out.`,
        misreading.known.length === 0
          ? 'None has come out yet.'
          : `Those that did: ${misreading.known.join(', ')}`,
      )
    case 'no-such-proposal':
      return told(
        `There is no proposal ${misreading.part}.`,
        misreading.count === 0
          ? 'The record suggests nothing now.'
          : `There are ${misreading.count}: "proposals" shows them.`,
      )
    case 'reason-missing':
      return told('The reason is missing.', `Write: ${misreading.form}`)
    case 'bag-line':
      return told(
        misreading.bag.part === '' ? 'Not understood.' : `"${misreading.bag.part}" is not understood.`,
        `Perhaps: ${misreading.bag.nearest}`,
      )
    default:
      return misreading satisfies never
  }
}

function told(what: string, cure: string): Told {
  return { what, lines: [], cure }
}
