import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { Reader } from '../../../src/ui/reader/reader.ts'
import { done, heldErrands, jobWith, jobWithErrands } from '../support/bench.ts'

beforeEach(() => {
  vi.useFakeTimers()
})
afterEach(() => {
  vi.useRealTimers()
})

/** The screens of a job read aloud, with what is said to each line. */
function read(bench: ReturnType<typeof jobWith>) {
  const reader = new Reader(bench.desk)
  const last = () => reader.said.at(-1)?.sentences ?? []
  return {
    ...bench,
    reader,
    last,
    hears: (line: string): readonly string[] => {
      const before = reader.said.length
      reader.take(line)
      // An Enter that would record something waits to see whether the key is held down.
      vi.advanceTimersByTime(500)
      return reader.said.slice(before).flatMap(({ sentences }) => sentences)
    },
  }
}

const TWO_STEPS = [
  'begin valve cover off',
  'off 8 M6x25 valve cover bolts',
  'begin cylinder head off',
  'off 4 nuts',
]

describe('in reading order', () => {
  test('the answer, the screen, what is in hand, what Enter does, the choices, the rows', () => {
    const { hears } = read(jobWith('begin valve cover off'))
    hears('.1')
    const said = hears('8 M6x25 hex 10 valve cover bolts')
    const at = (text: string) => {
      const index = said.findIndex((sentence) => sentence.startsWith(text))
      expect(index, `"${text}" in ${said.join('\n')}`).toBeGreaterThanOrEqual(0)
      return index
    }
    const order = [
      at('Recorded: came off: 8 × valve cover bolts'),
      at('In hand: step 1, bag 1.'),
      at('Enter: a new bag.'),
      at('8: Label of bag 1.'),
      at('In it:'),
    ]
    expect(order).toEqual([...order].sort((a, b) => a - b))
  })

  test('another screen is read whole: its name, its state, the rows with their words', () => {
    const { hears } = read(jobWith(...TWO_STEPS))
    const said = hears('.3')
    expect(said[0]).toMatch(/^Back\. What goes back/)
    expect(said.join('\n')).toMatch(/^\d: (?:Coming off|Ready|Blocked), /m)
  })

  test('a verdict is read with the label, and its large letters are not', () => {
    const { hears } = read(jobWith(...TWO_STEPS, 'end'))
    const said = hears('scan 1').join('\n')
    expect(said).toMatch(/^Bag 1, not yet, label \d/m)
    expect(said).not.toMatch(/[█▀▄─]/)
  })

  test('every sentence is one: begun large or by a number or a word to type, ended, and without columns', () => {
    const { hears } = read(jobWith(...TWO_STEPS))
    for (const line of ['.', '.1', '.2', '.3', '.4', '.5', '.6', 'scan 1', 'qr 1', 'step 2', '?', '-']) {
      for (const sentence of hears(line)) {
        expect(sentence).toMatch(/[.!?:]["')]?$/)
        expect(sentence).not.toMatch(/ {2}|\p{Cc}|[█▀▄─✓]/u)
      }
    }
  })
})

describe('on the same screen', () => {
  test('only what is new is read: the answer, the new account, what Enter does', () => {
    const { hears } = read(jobWith(...TWO_STEPS))
    hears('.1')
    const said = hears('2 clips')
    expect(said[0]).toBe('Recorded: came off: 2 × clips, into bag 2.')
    expect(said).toContain('Off 14: 14 in containers.')
    expect(said).toContain('Enter: a new bag.')
    expect(said).not.toContain('Blue twin 001.')
    expect(said.join('\n')).not.toMatch(/takes entry|All of it is off/)
  })

  test('- reads all of it again, and + the rows after those that were read', () => {
    const bench = jobWith(
      'begin x off',
      ...Array.from({ length: 30 }, (_, no) => `off 1 part${no} into new bag`),
    )
    const { hears } = read(bench)
    const first = hears('.2')
    expect(first.at(-1)).toBe('18 more: + reads on.')
    const second = hears('+')
    expect(second[0]).toMatch(/^13: Bag, 1 × part12\.$/)
    hears('+')
    expect(hears('+')).toEqual(['No more rows. - reads all again.'])
    expect(hears('-')).toEqual(expect.arrayContaining(first.slice(0, 1)))
  })
})

describe('lines of its own', () => {
  test('/ goes back to where one was, and clears a line that stands there first', () => {
    const { hears, desk } = read(jobWith(...TWO_STEPS))
    hears('.3')
    hears('.1')
    expect(hears('9').join('\n')).toContain('The line begins with: begin. Type the rest; / clears it.')
    hears('/')
    expect(desk.screen.at).toBe('off')
    hears('/')
    expect(desk.screen.at).toBe('back')
  })

  test('* records nothing and takes no Enter with it', () => {
    const { hears, entries } = read(jobWith(...TWO_STEPS))
    hears('.1')
    const before = entries()
    expect(hears('*').join()).toMatch(/^Large letters are for the eye/)
    expect(entries()).toBe(before)
  })

  test('what was begun by a number is completed by the next line', () => {
    const { hears, state } = read(jobWith(...TWO_STEPS))
    hears('.1')
    hears('9')
    expect(hears('pump off')[0]).toMatch(/^Recorded: step 3 begun: pump off/)
    expect(state().strip).toBe(3)
  })

  test('what was not taken is said with its cause, and replaced by the next line', () => {
    const { hears } = read(jobWith(...TWO_STEPS))
    const said = hears('fit the moon at I9')
    expect(said[0]).toMatch(/^(?:Refused|Not understood): /)
    expect(said.join('\n')).toContain('Not taken: fit the moon at I9. Type it anew; Enter alone forgets it.')
    expect(hears('.1')[0]).toMatch(/^Off\. /)
  })
})

test('an Enter that records is answered first, and then what it does next', async () => {
  const { reader, hears, last } = read(jobWith(...TWO_STEPS))
  hears('.1')
  reader.take('')
  await vi.advanceTimersByTimeAsync(500)
  expect(last()[0]).toMatch(/^Recorded: /)
  expect(last().at(-1)).not.toMatch(/^Recorded: /)
  expect(last().join('\n')).toMatch(/^Enter: nothing: bag 3 is still empty/m)
})

test('what Enter does is not read as a choice and as the next thing as well', () => {
  const { hears } = read(jobWith('begin x off', 'off 4 nuts', 'end', 'take 1'))
  const said = hears('step 1')
  expect(said.filter((sentence) => /fit 4 × nuts/i.test(sentence))).toHaveLength(1)
})

test('a key that is held down records once, and says so', () => {
  const { reader, hears, entries, last } = read(jobWith(...TWO_STEPS))
  hears('.1')
  const before = entries()
  reader.take('')
  reader.take('')
  reader.take('')
  vi.advanceTimersByTime(500)
  expect(entries() - before).toBeLessThanOrEqual(1)
  expect(last().join()).toContain('key held down')
})

test('what an errand brought is read when it comes', async () => {
  const { errands, end } = heldErrands()
  const { hears, reader } = read(jobWithErrands(errands, ...TWO_STEPS))
  expect(hears('labels 1').join('\n')).toMatch(/^Under way: /m)
  const before = reader.said.length
  vi.useRealTimers()
  await end(done('drawn: labels of bag 1'))
  expect(
    reader.said
      .slice(before)
      .flatMap(({ sentences }) => sentences)
      .join(),
  ).toContain('Done: drawn: labels of bag 1.')
})

test('the end of the input leaves, with everything recorded', () => {
  const { reader, desk } = read(jobWith(...TWO_STEPS))
  reader.end()
  expect(desk.ended).toBe(0)
})
