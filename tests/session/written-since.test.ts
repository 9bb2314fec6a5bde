import { describe, expect, test } from 'vitest'
import type { Refusal } from '../../src/journal/refusal.ts'
import type { Session } from '../../src/session/session.ts'
import { withEntryMeant } from '../../src/session/written-since.ts'
import { refusalText } from '../../src/words/refusals.ts'
import { shown } from '../errors/play.ts'
import { quoted, readTyped } from '../errors/typed.ts'
import { scenario, scenarios } from '../record/support/scenarios.ts'
import {
  at,
  bag,
  begin,
  endStrip,
  mark,
  matchedOff,
  move,
  off,
  putOn,
  strip,
  undo,
} from '../support/commands.ts'
import { sessionWith } from './support/sessions.ts'

const bracket = [strip('bracket off'), off(8, 'bracket bolts'), off(1, 'bracket'), endStrip]

describe('an entry that others were written after', () => {
  test('is told with what it was, what is about the same, and what puts it right', () => {
    const session = sessionWith(...bracket, move('p1', at('bench')))
    expect(saysOf(session, 3)).toEqual([
      'Entry 3 is not the last any more: entry 6 was written since.',
      '  3: came off: 8 × bracket bolts, into bag 1 (new).',
      '  Entry 6 after it is about the same.',
      '  Another name: "rename p1 to NAME".',
      '  Another place: "move p1 to PLACE".',
      '  Another number: "count 1 = ...".',
      '> Put it right with a new line; "undo" takes back the last one, entry 6, and 4 times all of it down to this one.',
    ])
  })

  test('tells the name of a hose from that of what its end sits on', () => {
    const hose = matchedOff(['tank', 'rail'], 'fuel hose', { kind: 'connection', into: at('bench') })
    const session = sessionWith(strip('hoses off'), hose, endStrip)
    expect(saysOf(session, 3)).toEqual([
      'Entry 3 is not the last any more: entry 4 was written since.',
      '  3: came off: 2 × fuel hose ends at tank, rail, onto the bench.',
      '  Another name of the hose: "rename p1 to NAME".',
      '  Of this end: "rehome p1 to NAME because ...".',
      '  Another place: "move p1 to PLACE".',
      '> Put it right with a new line; "undo" takes back the last one, entry 4, and 2 times all of it down to this one.',
    ])
  })

  test('of which nothing else tells stands alone', () => {
    const session = sessionWith(...bracket, begin(1), putOn('p2'))
    expect(saysOf(session, 6)).toEqual([
      'Entry 6 is not the last any more: entry 7 was written since.',
      '  6: took up step 1, bracket.',
      '  Entry 7 after it is about the same.',
      '  Take the step back and do it again: "reopen 1 because ...".',
      '> Put it right with a new line; "undo" takes back the last one, entry 7, and 2 times all of it down to this one.',
    ])
  })

  test('is not what another is about that only came off in the same step, into the same bag', () => {
    const session = sessionWith(off(8, 'bracket bolts'), off(1, 'bracket', { into: bag(1) }))
    expect(saysOf(session, 2)[1]).toBe(
      '  2: came off: 8 × bracket bolts, into bag 1 (new), beginning step 1, bracket bolts off.',
    )
    expect(saysOf(session, 2)[2]).toBe('  Another name: "rename p1 to NAME".')
  })

  test('that is taken back, or is a taking back, is not in force', () => {
    const session = sessionWith(...bracket, mark('arrow forward', 'p2'), undo, move('p2', bag(1)))
    for (const entry of [6, 7])
      expect(saysOf(session, entry)[0]).toBe(
        `Entry ${entry} is not in force: it was taken back, or it is one that cannot be.`,
      )
    expect(saysOf(session, 99)[0]).toBe('There is no entry 99, the last is 8.')
  })
})

test.each(scenarios)(
  'every entry of $name is told so, and what it says to type is understood',
  ({ path }) => {
    const session = scenario(path)
    const { state } = session
    const last = state.inForce.at(-1) as number
    const helped = state.inForce.slice(0, -1).flatMap((entry) => {
      const refusal = { code: 'written-since', entry, last } as const
      const says = wordsOf(session, withEntryMeant(refusal, session.entries(), state.inForce))
      const typed = quoted(says)
      const odd = typed.filter((words) => !['commands', 'errand'].includes(readTyped(words, state).kind))
      expect([says[1], odd]).toEqual([says[1], []])
      return typed.length > 1 ? [entry] : []
    })
    // For most there is a word that is shorter than taking back all that came after.
    expect(helped.length).toBeGreaterThan(state.inForce.length / 2)
  },
)

function saysOf(session: Session, entry: number): string[] {
  const outcome = session.send({ do: 'undo', entry })
  if (outcome.kind !== 'refused') throw new Error(`not refused: ${JSON.stringify(outcome)}`)
  return wordsOf(session, outcome.refusal)
}

function wordsOf(session: Session, refusal: Refusal): string[] {
  return shown(refusalText(session.state, refusal, String))
}
