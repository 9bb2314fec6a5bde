import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { decide } from '../../../src/journal/decide/decide.ts'
import { parseEntry } from '../../../src/journal/entry.ts'
import { fold } from '../../../src/journal/fold.ts'
import { LONGEST_TEXT } from '../../../src/journal/shapes/parts.ts'
import {
  addStep,
  at,
  bag,
  drain,
  endStrip,
  mark,
  matchedOff,
  move,
  off,
  snug,
  strip,
  tightening,
} from '../../support/commands.ts'
import { given, openJob, stateText } from '../../support/journal.ts'
import { numbered } from '../../support/record.ts'

const long = 'x'.repeat(2000)
// Half of what looks like one character: 300 of these are 600 to JavaScript, which counts UTF-16 code units.
const bolts = '🔩'.repeat(300)

/** Every text that a person can give. */
const wordy = (text: string): [string, Command][] => [
  ['the name of a job', { ...openJob, name: text } as Command],
  ['its machine', { ...openJob, machine: text } as Command],
  ['a title', strip(text)],
  ['a check and when it is due', addStep(text, { due: text })],
  ['a piece, its size and its home', off(2, text, { size: text, at: text, alikeAt: [text, 'b'] })],
  ['a position', matchedOff([text, `b${text}`], 'cap')],
  ['a position of a set with a long name', matchedOff(['I1', 'I2'], text)],
  ['a note', { do: 'note', kind: 'note', text }],
  ['a mark', mark(text)],
  ['a fluid', { ...drain(text), typed: text } as Command],
  ['an aid and where it goes', { do: 'put-in', kind: 'aid', name: text, count: 1, where: text }],
  ['a container', { do: 'open-container', kind: 'bag', name: text }],
  ['a reason', move('p1', at('lost'), { reason: text })],
  ['a stop', { do: 'stop', note: text, abrupt: false }],
  ['a tightening', tightening('p1', [{ ...snug, typed: text }])],
  ['an override', { do: 'override', target: 'start 1', reason: text }],
]

describe('a text of any length makes an entry that reads back', () => {
  test.each([...wordy(long), ...wordy(bolts)])('%s', (_, command) => {
    const job = command.do === 'open-job' ? { state: fold([]) } : given(off(4, 'bolts', { found: 3 }))
    const decision = decide(job.state, command)
    // Two long positions may be one and the same once they are cut: then they are refused as that.
    if (!decision.ok) {
      expect(decision.refusal.code).toBe('count-wrong')
      return
    }
    const entry = numbered(decision.body, 99)
    const text = JSON.stringify(entry)
    expect(() => parseEntry(JSON.parse(text))).not.toThrow()
    // JSON writes half a character as an escape; a whole one stands as it is.
    expect(text).not.toMatch(/\\ud[89a-f]/i)
  })

  test('and keeps as much of it as an entry takes', () => {
    const { state } = given({ do: 'note', kind: 'note', text: long })
    expect(state.notes[0]?.text).toBe('x'.repeat(LONGEST_TEXT))
  })
})

describe('deciding', () => {
  const job = given(off(4, 'bolts'), endStrip)
  const text = stateText(job.state)

  test('changes nothing, whether it says yes or no', () => {
    expect(decide(job.state, move('p1', bag(1)))).toMatchObject({ ok: false })
    expect(decide(job.state, move('p1', at('bench')))).toMatchObject({ ok: true })
    expect(stateText(job.state)).toBe(text)
  })

  test('answers the same twice', () => {
    const twice = [1, 2].map(() => JSON.stringify(decide(job.state, off(2, 'nuts'))))
    expect(twice[0]).toBe(twice[1])
  })

  test('throws only where the program is wrong: a step that is in no record is a refusal', () => {
    const numbers = fc.oneof(
      fc.integer(),
      fc.double(),
      fc.constantFrom(0, -1, Number.NaN, Number.POSITIVE_INFINITY),
    )
    fc.assert(
      fc.property(numbers, numbers, (step, count) => {
        const commands: Command[] = [
          { do: 'begin-build', step },
          { do: 'look', step },
          { do: 'close-step', step },
          { do: 'reopen', steps: [step], reason: 'x' },
          { do: 'void-container', container: step, reason: 'x' },
          { do: 'count', container: 1, counts: [{ piece: 'p1', counted: count }] },
          move('p1', at('bench'), { count }),
          off(count, 'nuts', { found: step }),
          { do: 'supply', piece: 'p1', count, into: at('bench'), instead: false },
          { do: 'leave-off', piece: 'p1', count, reason: 'x' },
          { do: 'put-in', kind: 'aid', name: 'rag', count },
          { do: 'open-container', kind: 'tray', slots: count },
          drain('oil', count),
          { ...openJob, no: step } as Command,
        ]
        for (const command of commands) {
          const decision = decide(job.state, command)
          if (!decision.ok) continue
          const entry = parseEntry(JSON.parse(JSON.stringify(numbered(decision.body, job.state.seq + 1))))
          expect(() => fold([...job.entries, entry])).not.toThrow()
        }
      }),
      { numRuns: 300 },
    )
  })
})
