import { describe, expect, test } from 'vitest'
import { readArguments } from '../../src/cli/arguments.ts'

describe('options are taken out of the words, wherever they stand', () => {
  test.each<[string[], string[], Record<string, unknown>]>([
    [['scan', '3'], ['scan', '3'], {}],
    [['--job', '17', 'scan', '3'], ['scan', '3'], { job: '17' }],
    [['scan', '3', '--job=17', '--json'], ['scan', '3'], { job: '17', json: true }],
    [['--home', '/x', '--by', 'Ann', 'card'], ['card'], { home: '/x', by: 'Ann' }],
    [
      ['new', 'job', 'Twin', '--machine', 'a twin', '--units', 'us'],
      ['new', 'job', 'Twin'],
      { machine: 'a twin', units: 'us' },
    ],
    [['-h'], [], { help: true }],
    [['--reader'], [], { reader: true }],
    [['-v'], [], { version: true }],
    [['--no-color', 'qr', '1', '--invert'], ['qr', '1'], { noColour: true, invert: true }],
    [['note', '--', '--json', 'is an option'], ['note', '--json', 'is an option'], { json: false }],
    [['note: torque wrench --json'], ['note: torque wrench --json'], { json: false }],
    [['add', 'check', '-10', 'degrees'], ['add', 'check', '-10', 'degrees'], {}],
  ])('%j', (args, words, options) => {
    const read = readArguments(args)
    expect(read).toMatchObject({ words, options })
  })
})

test.each([
  [['--jobb', '17'], 'there is no option --jobb'],
  [['scan', '--job'], '--job needs a value'],
  [['--job='], '--job needs a value'],
  [['--json=yes'], 'there is no option --json=yes'],
])('%j is a wrong use', (args, wrong) => {
  expect(readArguments(args)).toEqual({ wrong })
})
