import { describe, expect, test } from 'vitest'
import { jobWith } from '../support/bench.ts'

test('what sits on another piece has a row of its own, as what lies in a bag has', () => {
  const { enter, rows } = jobWith(
    'begin pump off, does not hide',
    'off water pump; front cover into new bag 3',
    'on water pump: 3 studs M6x25; seal ring',
    'end',
  )
  enter('.2')
  const shown = rows().map((row) => row.replace(/ +/g, ' ').trim())
  expect(shown[0]).toBe('WHAT LIES WHERE 1 container')
  expect(shown.at(-1)).toBe('p1 on water pump 3 × studs M6x25, 1 × seal ring')
  enter('scrap seal ring because it is worn', '.2')
  expect(rows().at(-1)).toMatch(/p1 {2}on water pump +3 × studs M6x25$/)
  enter('move studs to bench', '.2')
  expect(rows().join('\n')).not.toContain('p1  on')
})

describe('a long list', () => {
  const strip = [
    'begin valve cover off',
    'off 8 M6x25 hex 10 valve cover bolts into new bag',
    'off 4 M8x30 hex 12 mount bolts into new bag',
    'off left bracket into bench',
  ]

  test('is narrowed by words while they are typed, in any order, and whole again as they are erased', () => {
    const { enter, type, rows, line } = jobWith(...strip)
    enter('.2')
    const all = rows()
    type('bolts m')
    expect(rows()[0]).toBe('WHAT LIES WHERE  2 found for bolts m')
    type('ount')
    expect(rows().slice(1)).toEqual(['    2  4 × mount bolts M8x30 hex 12  in bag 2'])
    expect(line()).toBe('bolts mount|')
    type('\x7f'.repeat('bolts mount'.length))
    expect(rows()).toEqual(all)
  })

  test('stays narrowed with Enter, and Backspace on the empty line gives all of it again, then the way back', () => {
    const { enter, type, rows, line, desk } = jobWith(...strip)
    enter('.3', '.2', 'mount')
    expect(line()).toBe('|')
    expect(rows()[0]).toBe('WHAT LIES WHERE  1 found for mount')
    enter('bracket')
    expect(rows()[0]).toBe('WHAT LIES WHERE  1 found for bracket')
    type('\x7f')
    expect(rows()[0]).toBe('WHAT LIES WHERE  2 containers')
    enter('mount', '')
    expect(rows()[0]).toBe('WHAT LIES WHERE  2 containers')
    type('\x7f')
    expect(desk.screen).toEqual({ at: 'back' })
  })

  test('a number is a container while it is narrowed too, and a command is a command', () => {
    const { enter, type, rows, desk } = jobWith(...strip)
    enter('.2', 'mount')
    type('12')
    expect(rows()[0]).toContain('1 found for mount')
    type('\x15left')
    expect(rows()[0]).toContain('1 found for mount')
    type('\x15')
    enter('2')
    expect(desk.screen).toEqual({ at: 'scan', text: '2' })
  })

  test('the id of a piece answers whole, and never by a figure in it', () => {
    const { enter, type, rows } = jobWith(...strip)
    enter('.2')
    type('m2')
    expect(rows().slice(1)).toEqual(['     Nothing answers to these words.'])
    type('\x15p2')
    expect(rows().slice(1)).toEqual(['    2  4 × mount bolts M8x30 hex 12  in bag 2'])
    type('\x15bolts 8x')
    expect(rows().slice(1)).toEqual(['    2  4 × mount bolts M8x30 hex 12  in bag 2'])
  })

  test('begins at the top when it is narrowed, and stands where it stood afterwards', () => {
    const bags = Array.from({ length: 60 }, (_, index) => `bag bolts ${index}`)
    const { enter, type, desk } = jobWith('begin cover off', 'off 99 M6x20 hex 8 cover bolts', ...bags)
    enter('.2')
    type('++')
    const stood = desk.scroll
    type('bolts')
    expect(desk.scroll).toBe(0)
    type('\x1b[B')
    type('\x15')
    expect(desk.scroll).toBe(stood)
  })
})

test('what happened is looked through in the same way', () => {
  const { enter, type, rows } = jobWith(
    'begin valve cover off',
    'off 8 M6x25 valve cover bolts',
    'off engine mount',
  )
  enter('.5')
  type('mount eng')
  expect(rows()).toEqual(['WHAT HAPPENED  1 found for mount eng', expect.stringContaining('engine mount')])
  enter('', '')
  expect(rows()[0]).toBe('WHAT HAPPENED  4 entries, newest first')
})
