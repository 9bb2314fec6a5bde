import { describe, expect, test } from 'vitest'
import { bench, benchWithJob } from './support/bench.ts'

const hosesOff = ['begin hoses off', 'off coolant out 2.1 L', 'off coolant hose: radiator > pump', 'end']

describe('coolant at the bench', () => {
  test('what was drained is mixed again, and nothing is written', () => {
    const { say, session } = benchWithJob(...hosesOff)
    const before = session().entries().length
    expect(say('coolant', 'at', '50', '%')).toMatchObject({
      code: 0,
      out: expect.stringContaining(
        'Mix 1.05 L concentrate and 1.05 L water for 50 %, as much as was drained (2.1 L).\n',
      ),
    })
    expect(say('coolant 10 L from 30 % to 50 %').out).toContain('Drain 2.86 L, refill with concentrate')
    expect(session().entries()).toHaveLength(before)
  })

  test('a bare quart is the one of the job', () => {
    const { say } = bench()
    say('new', 'job', 'Red single', '--units', 'us')
    expect(say('coolant 12 qt from 25 % to 50 %').out).toContain('Drain 4 US qt (3.79 L)')
    say('units metric')
    expect(say('coolant 12 qt from 25 % to 50 %')).toMatchObject({
      code: 2,
      err: expect.stringContaining('Perhaps "coolant 12 US qt from 25 % to 50 %".'),
    })
  })

  test('what it comes to is data with --json', () => {
    const { ask } = benchWithJob()
    expect(ask('coolant', '10', 'L', 'from', '30', 'to', '50').json).toMatchObject({
      ok: true,
      answer: {
        sum: 'coolant',
        question: { ask: 'change', capacity: { litres: 10, typed: '10 L' }, glycol: 'ethylene' },
        worked: {
          result: { code: 'drain-and-refill', isAll: false },
          percent: 50,
          freezes: { code: 'freezes' },
        },
      },
    })
    expect(ask('coolant 10 L drained 2 L from 0 to 50').json).toMatchObject({
      answer: { worked: { result: { code: 'too-little-drained', neededLitres: 5 }, percent: null } },
    })
    expect(ask('glycol for -25 °C').json).toMatchObject({
      answer: { sum: 'glycol-for', lowest: { celsius: -25 }, worked: { code: 'strength' } },
    })
    expect(ask('freezes at 65 %').json).toMatchObject({
      answer: { sum: 'freezing-point', worked: { code: 'stronger-than-range' } },
    })
  })
})

describe('a timing drive at the bench', () => {
  test('which way a mark goes back, in words and as data', () => {
    const { say, ask } = benchWithJob()
    const line = 'teeth 24/48 off 16 pins for 15 right, runs clockwise'
    expect(say(line).out).toMatch(
      /^The cam is 1 tooth late: move it 1 tooth forward in its chain or belt\.\n/,
    )
    expect(ask(line).json).toMatchObject({
      answer: {
        sum: 'timing',
        question: { stages: [{ driver: 24, driven: 48 }], off: { runs: 'clockwise' } },
        worked: {
          misplaced: { code: 'misplaced', side: 'late', move: 'forward', crankDegrees: 15, camDegrees: 7.5 },
        },
      },
    })
  })

  test('teeth that drive no cam are an answer as well', () => {
    expect(benchWithJob().ask('teeth 24/46').json).toMatchObject({
      ok: true,
      answer: { worked: { angles: { code: 'not-two-to-one', driven: 48 } } },
    })
  })
})

describe('two full turns by hand after the drive is back', () => {
  test('are counted one by one, hold the step until they are made, and fall with it', () => {
    const { say, told, ask } = benchWithJob(
      'begin timing chain off',
      'off timing chain into bench',
      'end',
      'add turn the crank over by hand turns 2 after 1',
      'fit timing chain',
      'done 1',
      'turned over',
    )
    expect(say('done 2')).toMatchObject({ code: 1, err: expect.stringContaining('1 of 2 full turns') })
    told('turned over', 'done 2', 'reopen 2 because the belt jumped')
    expect(say('done 2').err).toContain('0 of 2 full turns')
    expect(ask('step 2').json).toMatchObject({ ok: true })
  })
})

test.each(['coolant', 'freezes', 'glycol', 'teeth'])('help %s', (word) => {
  const { code, out } = benchWithJob().say('help', word)
  expect(code).toBe(0)
  expect(out).toMatch(new RegExp(`^${word}`))
})

describe('one clear line for what is not understood', () => {
  test.each([
    ['coolant 10 Nm at 50 %', "'10 Nm' has no unit that fits here."],
    ['coolant 0 L at 50 %', "'0 L' is zero or less."],
    ['coolant 10 L from 30 % to 150 %', "Coolant does not understand '150 %'."],
    ['coolant out 2.1 L', 'Perhaps "off coolant out 2.1 L".'],
    ['glycol for -25', 'Glycol: C or F is missing.'],
    ['freezes at lunch', 'Perhaps "freezes at 50 %".'],
    ['teeth 24', 'Perhaps "teeth 24/48".'],
    ['teeth 24/48 off 15 deg late', 'Teeth: crank or cam is missing.'],
    ['coolant 10 L from 30 %', 'Coolant: to STRENGTH is missing.'],
  ])('%s', (line, says) => {
    const { code, err } = benchWithJob().say(line)
    expect(code).toBe(2)
    expect(err).toContain(says)
  })
})
