import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { restOf, sendCommands } from '../../../src/ui/desk/send-commands.ts'
import { sessionWith } from '../../session/support/sessions.ts'
import { off, strip } from '../../support/commands.ts'

const note = (text: string): Command => ({ do: 'note', kind: 'note', text })

describe('several commands', () => {
  test('of a few each is told, the last first', () => {
    const types: string[] = []
    const sent = sendCommands(sessionWith(strip('cover off')), [note('one'), off(2, 'dowels')], (type) =>
      types.push(type),
    )
    expect(types).toEqual(['noted', 'came-off'])
    expect(sent).toMatchObject({ done: 2, isAll: true })
    expect(sent.answer?.told.what).toContain('2 × dowels')
    expect(sent.answer?.told.lines).toContain('before it: note for step 1, cover off: one')
  })

  test('of many the last is told, and how many there were before it', () => {
    const many = Array.from({ length: 9 }, (_, n) => note(`number ${n + 1}`))
    const { answer, done } = sendCommands(sessionWith(strip('cover off')), many, () => {})
    expect(done).toBe(9)
    expect(answer?.told.what).toContain('number 9')
    expect(answer?.told.lines).toEqual(['8 of 9 entries before it'])
  })

  test('none is sent behind one that is refused', () => {
    const session = sessionWith(strip('cover off'))
    const before = session.entries().length
    const sent = sendCommands(session, [note('one'), note(''), note('three')], () => {})
    expect(sent).toMatchObject({ done: 1, isAll: false })
    expect(session.entries()).toHaveLength(before + 1)
  })

  test('what was not recorded is given back, where the items can be told apart', () => {
    const typed = { before: '2 dowels; 3 nuts; cover', after: '' }
    expect(restOf(typed, 0, 3)).toBe(typed)
    expect(restOf(typed, 1, 3)).toEqual({ before: '3 nuts; cover', after: '' })
    expect(restOf({ before: 'relabel 1 to 2', after: '' }, 2, 5)).toEqual({ before: '', after: '' })
  })
})
