import { describe, expect, test } from 'vitest'
import { entriesTold, factOf, partOf, recordOf, sectionOf, stepOf } from './support/record-of.ts'
import { toldJob } from './support/told-job.ts'

const apart = [
  'Kim: begin water pump off, does not hide',
  'Kim: off water pump into bench',
  'Kim: off 4 M6x25 pump bolts into new bag',
  'Kim: off pump gasket, single-use into bench',
  'Kim: on water pump: 2 studs M6x20',
  'Kim: end',
]

const facts = (rows: readonly string[]) => rows.map(factOf).map((row) => row.trim())

describe('what was judged', () => {
  const told = [
    ...apart,
    'Kim: check water pump: measure shaft',
    'Kim: check p2: look for stretch',
    'Ola: measure size of p1: 11.98 by 0.01, limits 12.00..12.02',
    'Ola: judge p1 fit again because it looks good',
    'Ola: judge p1 replace because the shaft is worn',
    'Ola: ok k2: straight',
    'Ola: when metal in the oil: check p2: look for score',
    'Ola: finding metal in the oil',
    'Ola: drop k3 because looked at already',
  ]

  test('is told with the reason, the reading and who said so, and what was said anew since', () => {
    const rows = recordOf(toldJob(...told))
    expect(facts(sectionOf(rows, 'FOUND, CHECKED AND JUDGED'))).toEqual([
      'to be checked: water pump, measure shaft (k1)',
      'to be checked: pump bolts M6x25, look for stretch (k2)',
      'judged: water pump good to go back, because it looks good',
      'measured: q1, size of p1: 11.98; by 0.01; 12.00..12.02',
      'judged anew since: water pump',
      'judged: water pump to be replaced, because the shaft is worn',
      'measured: q1, size of p1: 11.98; by 0.01; 12.00..12.02',
      'checked and good: k2, pump bolts M6x25: straight',
      'h1 set, when metal in the oil: check pump bolts M6x25, look for score',
      'found: metal in the oil; check pump bolts M6x25, look for score (k3)',
      'check k3 dropped, because looked at already',
    ])
    expect(rows.find((row) => row.includes('the shaft is worn'))).toContain('[Ola]')
  })

  test('stands open in the end while it is not done', () => {
    const rows = recordOf(toldJob(...told))
    expect(sectionOf(rows, 'STILL OPEN').join('\n')).toContain('Water pump is to be replaced')
  })
})

test('an order is told from the wish to the arrival, with its number, its price and where it comes from', () => {
  const rows = recordOf(
    toldJob(
      ...apart,
      'Ola: judge p1 replace because the shaft is worn',
      'Ola: part p1 no 11-204 at 80 EUR from the corner shop',
      'Ola: buy 1 p1 due 4 jan',
      'Ola: arrived o1 into bench',
      'Ola: compare p5: bolt holes alike',
    ),
  )
  expect(facts(sectionOf(rows, 'WANTED AND ORDERED'))).toEqual([
    'o1, 1 × water pump, number 11-204, 80 EUR each, from the corner shop: all here',
    'ordered: o1, 1 × water pump, number 11-204, 80 EUR each, from the corner shop, due 4 Jan',
    'arrived: 1 of o1, 1 × water pump: 1 × water pump, onto the bench, in place of the old',
    'to buy water pump: number 11-204, 80 EUR each, from the corner shop',
  ])
  expect(facts(sectionOf(rows, 'NEW PIECES'))).toEqual([
    'new: 1 × water pump (p5), by order o1, in place of water pump (p1); the new: on the bench; the old: on the bench',
    'compared: water pump with the old one, p1: bolt holes alike; not done yet',
    'not all of it compared with the old one, water pump (p1)',
  ])
})

test('a new piece is told with what was found beside the old one, the wrong one too', () => {
  const rows = recordOf(
    toldJob(
      ...apart,
      'Ola: new pump gasket',
      'Ola: compare p5: wrong, one hole is missing',
      'Ola: send back p5 because a hole is missing',
      'Ola: new p5',
      'Ola: compare p6: alike',
    ),
  )
  expect(facts(sectionOf(rows, 'NEW PIECES'))).toEqual([
    'new: 1 × pump gasket (p5) in place of pump gasket (p3); the new: at a supplier; the old: in scrap',
    'compared: pump gasket with the old one, p3: wrong (one hole is missing); it is wrong',
    'new: 1 × pump gasket (p6) in place of pump gasket (p5); the new: on the bench; the old: at a supplier',
    'compared: pump gasket with the old one, p3: all alike; it is right; 1 × pump gasket from the bench, to scrap',
  ])
})

describe('what went out', () => {
  const title = 'SENT OUT, BACK, SCRAPPED AND MOVED'
  const sent = [...apart, 'Ola: out p2 to the plater for new zinc due 3 jan']

  test('is told with what came back and what was taken out there', () => {
    const rows = recordOf(toldJob(...sent, 'Ola: came back b1 into bench', 'Kim: took out b1: nothing'))
    expect(facts(sectionOf(rows, title))).toEqual([
      'b1, 4 × pump bolts M6x25, at the plater',
      'out to the plater (b1): 4 × pump bolts M6x25, for new zinc, due 3 Jan',
      'back from the plater (b1): 4 × pump bolts M6x25, onto the bench',
      'at the plater (b1): taken out there: nothing',
    ])
  })

  test('and is not back is told, and so is a question that nobody answered', () => {
    expect(facts(sectionOf(recordOf(toldJob(...sent)), title))).toContain('not back: 4 × pump bolts M6x25')
    const back = recordOf(toldJob(...sent, 'Ola: came back b1 into bench'))
    expect(facts(sectionOf(back, title))).toContain('nobody said what was taken out there')
  })
})

describe('what was put on, and what was seen again', () => {
  const built = [
    ...apart,
    'Ola: sealant 1: grey paste on the flange, within 5 min, cures 1 h',
    'Ola: step 1 critical after 1 min',
    'Ola: use again p3 because it is hardly pressed',
    'Ola: take 1',
    'Ola: applied s1',
    'Ola: fit p1',
    'Ola: fit p2',
    'Ola: fit p3',
    'Ola: done',
    'Kim: seen p1: sits flat',
  ]

  test('are told in their step, with who and when', () => {
    const step = stepOf(recordOf(toldJob(...built)), 1)
    expect(facts(partOf(step, 'put on'))).toEqual([
      's1, to put on in step 1, water pump: grey paste on the flange, together within 5 min, sets 1 h before the first start',
      'put on: s1, grey paste on the flange, together within 5 min, sets 1 h before the first start',
      'sets until 2030-01-01 09:14',
    ])
    expect(facts(partOf(step, 'seen again'))).toEqual([
      'water pump: sits flat',
      'pump bolts M6x25: not seen again',
      'pump gasket: not seen again',
      'studs M6x20: not seen again',
      's1, grey paste on the flange: not seen again',
    ])
    expect(partOf(step, 'seen again')[0]).toContain('[Kim]')
  })

  test('no longer count once the step is reopened, and stay told', () => {
    const step = stepOf(recordOf(toldJob(...built, 'Ola: reopen 1 because it drips')), 1)
    expect(facts(partOf(step, 'put on')).slice(1)).toEqual([
      'put on: s1, grey paste on the flange, together within 5 min, sets 1 h before the first start',
      'no longer counted',
      'not put on',
    ])
    expect(facts(partOf(step, 'seen again'))[0]).toBe('water pump: sits flat (no longer counted)')
  })
})

test('sub-parts are told with the piece that they sit on', () => {
  const step = stepOf(recordOf(toldJob(...apart)), 1)
  expect(facts(partOf(step, 'came off'))).toContain('on water pump: 2 × studs M6x20')
})

test('what was taken back is in no part of the record', () => {
  const session = toldJob(...apart, 'Kim: check water pump: measure shaft', 'undo')
  const rows = recordOf(session)
  expect(facts(sectionOf(rows, 'FOUND, CHECKED AND JUDGED'))).toEqual(['Nothing was asked of any piece.'])
  expect(entriesTold(rows).has(8)).toBe(false)
})
