import { expect, test } from 'vitest'
import { benchWithJob } from './support/bench.ts'

// It is Tuesday, 1 January 2030.

const apart = [
  'begin cylinder head off',
  'off cylinder head into bench',
  'off 6 M10 head nuts',
  'begin water pump off',
  'off 4 M8 pump bolts',
  'end',
]

test('a head that is late at the shop: what waits for it, what is free, and what was taken out there', () => {
  const { say, told, itIs } = benchWithJob()
  told(...apart)
  const out = say(
    'out cylinder head, 2 head nuts to Miller for skimming due Friday expect flat within 0.05 mm',
  )
  expect(out.out).toContain(
    'out to Miller (b1): 1 × cylinder head and 2 × head nuts M10, for skimming, due 4 Jan, expected: flat within 0.05 mm',
  )
  expect(say('due').out).toBe(
    [
      'OUT:',
      '  b1  1 × cylinder head and 2 × head nuts M10, at Miller since 1 Jan, due 4 Jan',
      '      for skimming; expected: flat within 0.05 mm',
      '      "came back b1" when it is here',
      '',
    ].join('\n'),
  )

  itIs('2030-01-07')
  expect(say('card').out).toContain(
    'OVERDUE b1, 1 × cylinder head and 2 × head nuts M10 at Miller, due 4 Jan, 3 days late\n',
  )
  expect(say('due').out).toMatch(/^OVERDUE:\n {2}OVERDUE b1, .*, due 4 Jan, 3 days late\n/)
  const blocked = say('take 1')
  expect(blocked.code).toBe(1)
  expect(blocked.err).toContain(
    '1 × cylinder head is out, at Miller (b1) since 1 Jan, due 4 Jan, 3 days late: once back, "came back p1".',
  )
  // The way back goes on where nothing waits for it.
  expect(say('take 2').code).toBe(0)

  const short = say('came back cylinder head, 1 head nut: skimmed by 0.1 mm')
  expect(short.out).toContain('back from Miller (b1): 1 × cylinder head, 1 × head nut M10, onto the bench')
  expect(short.out).toContain(
    '1 × head nut M10 is still out, at Miller (b1) since 1 Jan, due 4 Jan, 3 days late.',
  )
  expect(short.out).toContain(
    'What was taken out of it there? Look, then "took out b1: nothing" or "took out b1: ...".',
  )
  expect(short.out).toContain('Expected of it: flat within 0.05 mm. See that it is so.')

  told('took out b1: 2 gallery plugs M8 back, 4 guides not back')
  expect(say('where gallery plugs').out).toContain('2 on the bench; belongs to cylinder head, step 1')
  expect(say('where guides').out).toContain('4 out')
  expect(say('due').out).toContain('1 × head nut M10 and 4 × guides')
  expect(say('came back 5 guides').err).toContain('4 away with b1, 5 said to be back: 1 too many')
  told('came back b1')
  expect(say('due').out).toBe('Nothing is to be checked, and nothing is awaited.\n')
  expect(say('came back b1').err).toContain('All that went out as b1 is back already.')
})

test('what sits on a piece goes along, and what is left here is said', () => {
  const { say, told } = benchWithJob()
  told(...apart, 'on cylinder head: 2 gallery plugs; 1 dowel')
  const { out } = say('out cylinder head to Miller without dowel')
  expect(out).toContain('left here: dowel')
  expect(out).toContain('With it go 2 × gallery plugs (on p1).')
  expect(say('due').out).toContain('on it: 2 × gallery plugs; left here: dowel')
})

test('what is judged to be machined is still judged so when it comes back', () => {
  const { say, told } = benchWithJob()
  told(...apart, 'judge cylinder head machine because warped by 0.2 mm', 'out cylinder head to Miller')
  expect(say('came back b1: took out nothing').out).toContain(
    'Cylinder head is still to be machined by the verdict: "judge p1 fit again because ..." when it is right.',
  )
  expect(say('take 1').err).toContain('Cylinder head is to be machined, because warped by 0.2 mm')
  told('judge cylinder head fit again because flat within 0.02 mm')
  expect(say('take 1').err).not.toContain('machined')
})

test('nothing is out: who has what is said', () => {
  const { say, told } = benchWithJob()
  told(...apart, 'out head nuts to Miller')
  const { code, err } = say('came back cylinder head')
  expect(code).toBe(1)
  expect(err).toContain('Cylinder head is not out, but on the bench.')
  expect(err).toContain('6 × head nuts M10, at Miller (b1).')
})

test('what is owed before the first start is said of a thing, and not in one breath with it', () => {
  const { say, told } = benchWithJob()
  told(...apart, 'out cylinder head to Miller', 'came back b1')
  const { out } = say('left')
  expect(out).toContain(
    '\nb1 is back from Miller, and nobody has said what was taken out there of 1 × cylinder head: to be done before the first start\n',
  )
  expect(out).toContain('\nstep 1, cylinder head: not begun\n')
})

test('the estimate names how many of a lot are not here, and all of one that is used', () => {
  const { say, told } = benchWithJob()
  told('begin cover off', 'off 6 M6x25 cover bolts', 'off 2 seal rings, single-use', 'end')
  told('lost 2 cover bolts because they rolled away', 'lost 1 seal ring because it rolled away')
  const { out } = say('finish')
  expect(out).toContain('  step 1, cover: 2 × cover bolts M6x25, nothing is on its way\n')
  expect(out).toContain('  step 1, cover: 2 × seal rings, nothing is on its way\n')
})
