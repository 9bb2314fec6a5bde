import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import type { State } from '../../src/journal/state.ts'
import { labelCode } from '../../src/label/code.ts'
import { readLine } from '../../src/lines/read-line.ts'
import { given } from '../support/journal.ts'
import { told } from './told.ts'

type Job = ReturnType<typeof given>

/** A job in which a line is carried out, each of its commands on what the one before left. */
function job(...lines: string[]): { job: Job; say(line: string): Job } {
  const say = (before: Job, line: string): Job => {
    const reading = readLine(line, before.state)
    if (reading.kind !== 'commands') throw new Error(`${line}: ${JSON.stringify(reading)}`)
    return before.and(...reading.commands)
  }
  let now = given({ do: 'deal-labels', count: 12 } as Command)
  for (const line of lines) now = say(now, line)
  return { job: now, say: (line) => say(now, line) }
}

const holds = ({ ledger }: State, no: number) =>
  [...ledger.accounts.values()].flatMap(({ piece, at }) =>
    [...at].flatMap(([place, count]) =>
      place === `c${no}` || place.startsWith(`c${no}/`) ? [`${count} ${piece.id} ${place}`] : [],
    ),
  )

describe('a bag gets another label', () => {
  test('all that it holds goes with it, and its old label says where', () => {
    const { say } = job(
      'begin cover off',
      'bin top end label 1',
      'off 8 M6x25 cover bolts into 2',
      'off 2 dowels into 2',
      'put 2 in 1',
    )
    const { state } = say('relabel bag 2 to 9 because oily')
    expect(holds(state, 9)).toEqual(['8 p1 c9', '2 p2 c9'])
    expect(holds(state, 2)).toEqual([])
    expect(state.containers.get(9)).toMatchObject({ kind: 'bag', inside: 1 })
    expect(state.containers.get(2)?.voided).toEqual({ reason: 'oily', insteadOf: 9 })
  })

  test('a tray keeps its slots, a bin its bags, and a tag its name', () => {
    const { say } = job(
      'begin cover off',
      'tray 8 slots cam caps label 1',
      'off cam caps I1..I4 into tray 1',
      'bin pump label 2',
      'off 2 dowels into 3',
      'put 3 in 2',
      'off coolant hose: radiator > pump into new tag hose label 4',
    )
    const tray = say('relabel 1 to 10').state
    expect(holds(tray, 10)).toEqual(['1 p1 c10/1', '1 p2 c10/2', '1 p3 c10/3', '1 p4 c10/4'])
    expect(tray.containers.get(10)).toMatchObject({ kind: 'tray', slots: 8, name: 'cam caps' })
    const bin = say(`relabel 2 to ${labelCode(7, 10)}`).state
    expect(bin.containers.get(3)?.inside).toBe(10)
    expect(bin.containers.get(10)).toMatchObject({ kind: 'bin', name: 'pump' })
    const tag = say('relabel tag 4 to label 10').state
    expect(tag.containers.get(10)).toMatchObject({ kind: 'tag', name: 'hose' })
    expect(holds(tag, 10)).toHaveLength(2)
  })

  test('its pictures go with it', () => {
    const picture = { id: 'g1', file: '1.jpg', taken: null, belongs: { container: 1 }, pieces: [] } as never
    const state: State = { ...told('bag', 'off 2 dowels into 1'), pictures: new Map([['g1', picture]]) }
    const reading = readLine('relabel 1 to 14', state)
    expect(reading.kind === 'commands' && reading.commands).toContainEqual({
      do: 'sort-picture',
      picture: 'g1',
      belongs: { container: 14 },
    })
  })

  test('what is in hand stays in hand', () => {
    const { say } = job('begin cover off', 'off 2 dowels into 2', 'bag label 3', 'off 3 nuts')
    expect(say('relabel 2 to 9').state.hand).toBe(3)
  })

  test('refused: what is void or was never there, itself, and a label that is void', () => {
    const { job: bench } = job('begin cover off', 'off 2 dowels into 2', 'void 12 because torn')
    const first = (line: string) => {
      const reading = readLine(line, bench.state)
      return reading.kind === 'commands' ? reading.commands[0] : undefined
    }
    bench.when(first('relabel 40 to 9') as Command).refuses('unknown')
    bench.when(first('relabel 2 to 2') as Command).refuses('inside-itself')
    bench.when(first('relabel 2 to 12') as Command).refuses('container-void')
    bench.when(first('relabel 2 to 40') as Command).refuses('unknown')
  })
})
