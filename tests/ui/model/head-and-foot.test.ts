import { describe, expect, test } from 'vitest'
import { frameRows } from '../../../src/ui/screens/frame.tsx'
import { textOf, widthOf } from '../../../src/ui/text/line.ts'
import { jobWith } from '../support/bench.ts'

const SIZE = { width: 80, height: 24 }

function shown(...lines: string[]) {
  const job = jobWith(...lines)
  const frame = () => frameRows(job.desk, SIZE).rows.map((row) => textOf(row).trimEnd())
  return { ...job, frame, head: () => frame()[0] ?? '', foot: () => frame().slice(-2).join('\n') }
}

const apart = ['begin valve cover off', 'off 8 M6x25 valve cover bolts into new bag', 'off cover into bench']

describe('the first row', () => {
  test('says the job, the phase, the step and the container in hand', () => {
    const { head, enter } = shown(...apart)
    expect(head()).toMatch(
      /^blue twin 001 {2}strip-down {2}in hand: step 1, bag 1 .*off 9 = 8 stored \+ 1 bench$/,
    )
    enter('end')
    expect(head()).toMatch(/^blue twin 001 {2}waiting {2}hands free/)
    enter('look 1', 'take 1')
    expect(head()).toMatch(/^blue twin 001 {2}build-up {2}in hand: step 1 /)
    // Something in the way comes off again while another step is being built up.
    enter('begin bracket off', 'off 2 nuts')
    expect(head()).toMatch(/^blue twin 001 {2}build-up {2}in hand: steps 1 and 2, bag 2 /)
  })

  test('keeps what is in hand beside a name that is too long', () => {
    const { head, enter } = shown('bag')
    enter('new job "a very long name of a machine that stands in the back of the shed since spring"', '', '')
    enter('begin valve cover off')
    expect(widthOf(head())).toBeLessThanOrEqual(80)
    expect(head()).toMatch(/^a very long name.*\.\. 002 {2}strip-down {2}in hand: step 1, bag 1$/)
  })
})

describe('the last row', () => {
  test('says the next thing of the job wherever Enter does something else', () => {
    const { desk, foot, frame, enter } = shown(...apart, 'end', 'look 1')
    const next = 'take up step 1, valve cover'
    for (const way of ['.', '.2', '.3', '.4', '.5', '.6', '?', '1', 'sound off']) {
      enter(way)
      expect(frame().filter((row) => row.includes(next)).length, way).toBeGreaterThan(0)
      // There already.
      expect(foot().includes('? all keys')).toBe(desk.screen.at !== 'help')
    }
  })

  test('does not say twice what Enter does', () => {
    const { foot, enter } = shown(...apart, 'end', 'look 1', 'take 1')
    enter('.')
    expect(foot()).not.toContain('Next')
    enter('')
    expect(foot()).not.toContain('Next')
    enter('.2')
    expect(foot()).toMatch(/^ Next go on: fit 1 × cover/)
    // Nor what the page itself is about.
    enter('.', '', 'fit cover', 'fit bolts')
    expect(foot()).not.toContain('Next')
    enter('', '.4')
    expect(foot()).not.toContain('Next')
  })

  test('names the keys that work now, and none that does not', () => {
    const { foot, enter, type } = shown()
    expect(foot()).not.toContain('Backspace back')
    expect(foot()).not.toContain('0 takes back')
    expect(foot()).not.toContain('+ - rows')
    enter('.1', '2 nuts', '?')
    expect(foot()).toContain('0 takes back')
    expect(foot()).toContain('+ - rows')
    enter('.', '.1')
    type('*')
    expect(foot()).toContain('* small')
  })

  test('names no key that a question takes for its answer', () => {
    const { desk, foot, enter } = shown(...apart)
    enter('scan 1', '2')
    expect(desk.screen.at).toBe('count')
    expect(foot()).not.toContain('0 takes back')
    enter('.', 'quit')
    expect(desk.screen.at).toBe('leave')
    expect(foot()).not.toContain('0 takes back')
    expect(foot()).toContain('? all keys')
    enter('?')
    expect(desk.screen.at).toBe('help')
    enter('new job red single')
    expect(foot()).not.toContain('? all keys')
    expect(foot()).not.toContain('0 takes back')
    enter('?')
    expect(desk.session?.state.job.name).toBe('blue twin')
    expect(desk.screen.at).toBe('new-job')
  })

  test('large letters that cannot be seen here are told of', () => {
    const { desk, answer, foot, enter, type } = shown(...apart)
    enter('.2')
    type('*')
    expect(answer()).toContain('Large letters are on; this screen has none.')
    expect(foot()).toContain('* small')
    type('*')
    expect(answer()).toContain('Large letters are off.')
    expect(desk.isLarge).toBe(false)
  })
})
