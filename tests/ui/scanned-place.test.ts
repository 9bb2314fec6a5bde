import { describe, expect, test } from 'vitest'
import { labelCode, stepNumber } from '../../src/label/code.ts'
import { jobWith } from './support/bench.ts'

const strip = ['begin cover off, does not hide', 'off 8 M6x25 cover bolts into new bag', 'bin', 'end']

describe('a line that waits for a place takes a scanned label as its end', () => {
  test.each([
    ['put 1 in ', 2],
    ['put 1 in', 2],
    ['Put bag 1 into ', 2],
  ])('%s', (words, container) => {
    const { type, state, line } = jobWith(...strip)
    type(`${words}${labelCode(1, container)}\r`)
    expect(state().containers.get(1)?.inside).toBe(container)
    expect(line()).toBe('|')
  })

  test('where things come off', () => {
    const { type, state } = jobWith(...strip.slice(0, 3))
    type(`.1\r2 clips into ${labelCode(1, 2)}\r`)
    expect(state().ledger.accounts.get('p2')?.at.get('c2')).toBe(2)
  })
})

describe('it is a scan like any other, and the words stay,', () => {
  test.each([
    ['behind words that wait for none', 'put 1 ', labelCode(1, 2)],
    ['where the line would not be understood', 'hello in ', labelCode(1, 2)],
    ['where a step is no place', 'put 1 in ', labelCode(1, stepNumber(1))],
  ])('%s', (_, words, code) => {
    const { type, desk, line, entries } = jobWith(...strip)
    const before = entries()
    type(`${words}${code}\r`)
    expect(desk.screen).toEqual({ at: 'scan', text: code })
    expect(line()).toBe(`${words}|`)
    expect(entries()).toBe(before)
  })

  test('a label of another job', () => {
    const { type, entries } = jobWith(...strip)
    const before = entries()
    type(`put 1 in ${labelCode(412, 2)}\r`)
    expect(entries()).toBe(before)
  })
})
