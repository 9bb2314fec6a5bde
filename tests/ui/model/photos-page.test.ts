import { describe, expect, test } from 'vitest'
import { labelCode, stepNumber } from '../../../src/label/code.ts'
import { done, heldErrands, jobWithErrands } from '../support/bench.ts'

type Belongs = { container: number } | { step: number } | null

const strip = [
  'begin valve cover off, does not hide',
  'off 8 M6x25 hex 10 valve cover bolts into new bag',
  'off valve cover into bench',
  'end',
]

/** Pictures as they lie on the phone: when they were taken, and what they show as far as that is certain. */
const pictures: [file: string, taken: string | null, belongs: Belongs][] = [
  ['lid.jpg', '2030-01-14T16:20:00', { container: 1 }],
  ['bolts.jpg', '2030-01-14T16:20:09', { container: 1 }],
  ['thumb.jpg', null, null],
  ['whole.jpg', '2030-01-15T14:01:00', { step: 1 }],
  ['hoses.jpg', '2030-01-15T14:02:00', null],
]

function bench(wanted = pictures) {
  const held = heldErrands()
  const job = jobWithErrands(held.errands, ...strip)
  if (wanted.length > 0) {
    const outcome = job.desk.session?.send({
      do: 'add-pictures',
      pictures: wanted.map(([file, taken, belongs], index) => ({
        file,
        taken,
        belongs,
        sha256: String(index).padStart(64, '0'),
      })),
    })
    if (outcome?.kind !== 'recorded') throw new Error(JSON.stringify(outcome))
  }
  return { ...job, ...held }
}

describe('all pictures', () => {
  test('those that nobody sorted stand first, each with its number, its time and its file', () => {
    const { enter, rows } = bench()
    enter('photos')
    const told = rows().map((row) => row.replace(/ +/g, ' ').trim())
    expect(told[0]).toBe('PICTURES 5 in this job, 2 not sorted yet')
    expect(told.slice(1)).toEqual([
      'NOT SORTED YET: a number says what it shows',
      '5 14:02 hoses.jpg',
      '3 no time thumb.jpg',
      '',
      'SORTED: a number says it anew',
      '1 14 Jan 16:20 of bag 1 lid.jpg',
      '2 14 Jan 16:20 of bag 1 bolts.jpg',
      '4 14:01 of step 1, valve cover whole.jpg',
    ])
  })

  test('a number begins the line that sorts it, and the place ends it', () => {
    const { enter, line, state, rows, desk } = bench()
    enter('photos', '5')
    expect(line()).toBe('photo g5 to |')
    enter('bag 1')
    expect(state().pictures.get('g5')?.belongs).toEqual({ container: 1 })
    expect(desk.screen).toEqual({ at: 'photos', of: null })
    expect(rows()[0]).toContain('1 not sorted yet')
  })

  test('a scanned label ends it as well: of a bag, of a step, of the machine', () => {
    const { enter, type, state } = bench()
    enter('photos', '5')
    type(`${labelCode(1, 1)}\r`)
    enter('3')
    type(`${labelCode(1, stepNumber(1))}\r`)
    enter('4')
    type(`${labelCode(1, 9000)}\r`)
    const belongs = (id: 'g3' | 'g4' | 'g5') => state().pictures.get(id)?.belongs
    expect([belongs('g5'), belongs('g3'), belongs('g4')]).toEqual([{ container: 1 }, { step: 1 }, 'none'])
  })

  test('Enter opens them, and a number that no picture has chooses none', async () => {
    const { enter, asked, end, answer } = bench()
    enter('photos', '')
    expect(asked).toEqual([{ errand: 'photos-open', of: { of: 'job' } }])
    await end(done('5 pictures opened'))
    enter('12')
    expect(answer()).toContain('Nothing has the number 12 here')
    enter('120')
    expect(answer()).toContain('There is no picture 120')
  })

  test('more than a hundred are chosen by their numbers too', () => {
    const { enter, line } = bench(Array.from({ length: 130 }, (_, n) => [`${n}.jpg`, null, null]))
    enter('photos', '128')
    expect(line()).toBe('photo g128 to |')
  })

  test('without any it says how they come, and Enter begins that line', () => {
    const { enter, text, line } = bench([])
    enter('photos')
    expect(text()).toContain('"photos import"')
    enter('')
    expect(line()).toBe('photos import |')
  })
})

describe('the pictures of one thing', () => {
  test('of a bag, without saying so again on each row', () => {
    const { enter, rows, asked } = bench()
    enter('photos bag 1')
    expect(rows()[0]).toBe('PICTURES  2 of bag 1')
    expect(rows()[2]).not.toContain('of bag 1')
    enter('')
    expect(asked).toEqual([{ errand: 'photos-open', of: { of: 'container', no: 1 } }])
  })

  test('of what there is not', () => {
    const { enter, text, desk } = bench()
    enter('.2', 'photos bag 9')
    expect(text()).toContain('There is no container 9 in this job.')
    enter('')
    expect(desk.screen.at).toBe('lies')
  })

  test('of a step, and of a piece', () => {
    const { enter, rows, asked } = bench()
    enter('photos step 1')
    expect(rows()[0]).toBe('PICTURES  3 of step 1, valve cover')
    enter('photos valve cover bolts')
    expect(rows()[0]).toContain('2 of valve cover bolts')
    enter('')
    expect(asked).toEqual([{ errand: 'photos-open', of: { of: 'piece', piece: 'p1' } }])
  })
})

describe('the way there', () => {
  test('from a scanned bag', () => {
    const { enter, desk, text } = bench()
    enter(labelCode(1, 1))
    expect(text()).toContain('6  2 pictures')
    enter('6')
    expect(desk.screen).toEqual({ at: 'photos', of: { container: 1 } })
  })

  test('from a step, by one row of its own', () => {
    const { enter, desk, rows } = bench()
    enter('step 1')
    const row = rows().find((each) => each.endsWith('3 pictures')) ?? ''
    enter(row.trim().split(' ')[0] ?? '')
    expect(desk.screen).toEqual({ at: 'photos', of: { step: 1 } })
  })

  test('from where the job stands, while some are not sorted', () => {
    const { enter, desk, text, state } = bench()
    enter('.')
    expect(text()).toContain('6  2 pictures not sorted yet')
    enter('6')
    expect(desk.screen).toEqual({ at: 'photos', of: null })
    enter('photo g3 to job', 'photo g5 to job', '.')
    expect(state().pictures.get('g5')?.belongs).toBe('none')
    expect(text()).not.toMatch(/\d {2}\d+ pictures? not sorted/)
  })

  test('where there are none, nothing says so', () => {
    const { enter, text } = bench([])
    for (const screen of ['.', 'step 1', labelCode(1, 1), 'label 1']) {
      enter(screen)
      expect(text()).not.toMatch(/pictures?\b/)
    }
  })
})
