import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { benchWithJob } from './support/bench.ts'

// It is Tuesday, 1 January 2030. All figures are invented.

const apart = [
  'begin pump off',
  'off water pump into bench',
  'off 4 M6x30 pump bolts',
  'off coolant out 2.1 L',
  'begin head off',
  'off 8 M10x60 head bolts, single-use into new bag',
  'off head gasket, single-use into bench',
  'end',
  'judge water pump replace because the bearing is rough',
  'lost 1 pump bolt because it fell behind the bench',
]

describe('what to buy', () => {
  test('nothing, at first', () => {
    const { say } = benchWithJob()
    expect(say('to buy').out).toBe('Nothing is to be bought that is not ordered.\n')
  })

  test('by groups, numbered, with what is known and what it comes to', () => {
    const { say, told } = benchWithJob()
    told(
      ...apart,
      'want 2 tubes grease at 4.50 USD',
      'part head bolts no 11-204 at 3.20 EUR each from corner shop',
    )
    expect(say('to buy').out).toBe(
      [
        'To buy:',
        'Judged to be replaced:',
        '  1  1 × water pump',
        'Single-use, and used:',
        '  2  8 × head bolts M10x60  number 11-204  3.20 EUR each  from corner shop',
        '  3  1 × head gasket',
        'Lost:',
        '  4  1 × pump bolt M6x30',
        'Fluids that came out:',
        '  5  2.1 L coolant',
        'Wanted besides:',
        '  6  2 tubes grease  4.50 USD each',
        '     In all: 25.60 EUR and 9.00 USD; 4 lines without a price.',
        'When ordered: buy 1,2 or: buy all',
        '',
      ].join('\n'),
    )
    expect(say('buy 2 due Friday').out).toContain(
      'ordered: o2, 8 × head bolts M10x60, number 11-204, 3.20 EUR each, from corner shop, due 4 Jan',
    )
  })

  test('with its arithmetic, and how what was ordered stands as the days go by', () => {
    const { say, told, itIs } = benchWithJob()
    told(...apart, 'lost 1 pump bolt because it fell too', 'scrap 1 pump bolt')
    told('buy 2 pump bolts due Friday', 'buy 8 head bolts due 12 Jan', 'arrived o2 5')
    itIs('2030-01-07')
    const text = say('to buy').out
    expect(text).toContain('1 × pump bolt M6x30  (1 broken or scrapped and 2 lost: 3, less 2 ordered)\n')
    expect(text).toContain(
      [
        'Ordered:',
        '  o1  2 × pump bolts M6x30: due 4 Jan, 3 days late; step 1 waits',
        '  o2  8 × head bolts M10x60: partly here, 5 here, 3 to come, due 12 Jan; steps 1 and 2 wait',
        '',
      ].join('\n'),
    )
  })

  test('for a program, as facts', () => {
    const { ask, told } = benchWithJob()
    told(...apart)
    const { json } = ask('to buy')
    expect(json).toMatchObject({
      answer: { lines: [{ group: 'replace', count: 1 }, {}, {}, {}, {}], orders: [] },
    })
  })
})

describe('what comes of it', () => {
  test('more than was ordered is refused with the arithmetic and both ways out, and both are ways out', () => {
    const two = () => {
      const { say, told } = benchWithJob()
      told(...apart, 'buy 8 head bolts')
      const refused = say('arrived o1 10')
      expect(refused.code).toBe(1)
      expect(refused.err).toBe(
        [
          'o1, 8 × head bolts M10x60: 8 to come, 10 said to be here: 2 too many.',
          'Count again; if they are wanted, "buy o1 10" first; if they stay as spares, "arrived o1 10 spare 2".',
          '',
        ].join('\n'),
      )
      return { say, told }
    }
    expect(two().say('arrived o1 10 spare 2').out).toContain(
      'arrived: 10 of o1, 8 × head bolts M10x60: 8 × head bolts M10x60, onto the bench; 2 × head bolts M10x60, to the spares',
    )
    const other = two()
    other.told('buy o1 10', 'arrived o1 10')
    expect(other.say('where head bolts').out).toContain('10 on the bench')
  })

  test('what nothing waits for any more is named', () => {
    const { say, told } = benchWithJob()
    told(...apart, 'buy head gasket')
    expect(say('new head gasket').out).toContain(
      'o1, 1 × head gasket, is still to come, and nothing waits for it any more: "cancel o1 because ...", or "undo" and "arrived o1" if that is what came.',
    )
  })

  test('more than is needed is named, and taken all the same', () => {
    const { say, told } = benchWithJob()
    told(...apart, 'buy 8 head bolts')
    expect(say('buy 2 head bolts').out).toContain(
      '10 × head bolts M10x60 are to come, and 8 are needed: 2 too many; if that was a slip, "cancel o2 because ...".',
    )
  })

  test('a kit that is short says so', () => {
    const { say, told } = benchWithJob()
    told(...apart)
    expect(say('kit top end: 1 head gasket, 6 head bolts, 2 O-rings').out).toContain(
      'The kit held 6 head bolts, and 2 more are owed: "to buy" shows what is still needed.',
    )
  })

  test('where new ones are waited for, the line that they come by is named', () => {
    const { say, told } = benchWithJob()
    told(...apart, 'buy 8 head bolts', 'buy pump bolt')
    const left = say('left').out
    expect(left).toContain('"arrived o1" when here')
    expect(left).toContain('"arrived o2" when here')
  })
})

describe('the list as a table', () => {
  test('in the folder of the job, each time under a free name', async () => {
    const { send, told, session } = benchWithJob()
    told(
      ...apart,
      'want 1 gasket paper, "thick" at 3.20 EUR',
      'want 1 =SUM(A1)',
      'buy 8 head bolts due Friday',
    )
    const folder = dirname(session().store.path)
    const first = await send('buy csv')
    expect(first.out).toBe(`Written: ${join(folder, 'to-buy.csv')}\n`)
    expect((await send('buy csv')).out).toBe(`Written: ${join(folder, 'to-buy-2.csv')}\n`)
    const rows = readFileSync(join(folder, 'to-buy.csv'), 'utf8').split('\r\n')
    expect(rows).toEqual([
      'line,standing,what,count,unit,arrived,part number,price,currency,price for,source,due,why',
      '1,to buy,water pump,1,,0,,,,,,,replace',
      '2,to buy,head gasket,1,,0,,,,,,,single-use',
      '3,to buy,pump bolts M6x30,1,,0,,,,,,,lost',
      '4,to buy,coolant,2.1,L,0,,,,,,,fluid',
      'o1,wanted,"gasket paper, ""thick""",1,,0,,3.20,EUR,each,,,',
      "o2,wanted,'=SUM(A1),1,,0,,,,,,,",
      'o3,ordered,head bolts M10x60,8,,0,,,,,,2030-01-04,',
      '',
    ])
  })

  test('under a name of its own, and never over what is there', async () => {
    const { send, told, home } = benchWithJob()
    told(...apart)
    const folder = join(home, 'lists')
    mkdirSync(folder)
    const path = join(folder, 'mine.csv')
    writeFileSync(path, 'mine')
    const refused = await send('buy csv', path)
    expect(refused).toMatchObject({
      code: 1,
      err: `${path} is there already, and nothing is written over it.\nSay another name, or "buy csv" for a free one.\n`,
    })
    expect(readFileSync(path, 'utf8')).toBe('mine')
    const other = join(folder, 'other.csv')
    expect((await send('buy csv', other)).out).toBe(`Written: ${other}\n`)
    expect(readdirSync(folder).sort()).toEqual(['mine.csv', 'other.csv'])
    const nowhere = await send('buy csv', join(path, 'below.csv'))
    expect(nowhere.code).not.toBe(0)
    expect(nowhere.err).toMatch(/below\.csv cannot be written \(E[A-Z]+\)\.\nLook at the folder/)
  })
})

test('what a thing is bought for is no number of it', () => {
  const { say, told, session } = benchWithJob()
  told('begin sump off', 'off sump', 'end')
  expect(say('buy sump for 12')).toMatchObject({ code: 2, out: '' })
  expect(session().state.orders.size).toBe(0)
  told('buy sump 2')
  expect(session().state.orders.get('o1')?.count).toBe(2)
})
