import { describe, expect, test } from 'vitest'
import { benchWithJob } from './support/bench.ts'

describe('a sum on the command line', () => {
  test('is answered in words, and writes nothing', () => {
    const { say, session } = benchWithJob()
    const before = session().entries().length
    expect(say('setting 100 Nm handle 12 in adapter 6 in')).toMatchObject({
      code: 0,
      out: expect.stringContaining('Set the wrench to 66.7 N·m.\n'),
    })
    expect(say('=', '22', 'lbf·ft').out).toContain('22 lbf·ft = 29.83 N·m')
    expect(session().entries()).toHaveLength(before)
  })

  test('is data with --json, in SI units beside what was typed', () => {
    const { say } = benchWithJob()
    const { answer } = JSON.parse(say('--json', 'preload M8 8.8 25 Nm friction 0.12').out)
    expect(answer).toMatchObject({
      sum: 'preload',
      torque: { base: 25, typed: '25 Nm' },
      worked: { isKnown: true, shares: [{ fastenerClass: { name: '8.8' }, share: { proofMpa: 580 } }] },
    })
    expect(
      JSON.parse(say('--json', '= 22 lbf·ft in kgf·m').out).answer.conversion.in[0].numbers[0],
    ).toBeCloseTo(3.0416, 4)
  })

  test.each([
    ['= 22 Nm in litres', "'litres' is of another kind."],
    ['= 0 Nm', "'0 Nm' is zero or less."],
    ['= 10000 Nm', "'10000 Nm' is more than it can be on a machine."],
    ['setting 40 Nm range', 'LEAST..MOST is missing.'],
    ['preload M8 8.8 25', "'25' has no unit that fits here."],
  ])('%s is refused in one clear line', (line, says) => {
    const { code, err } = benchWithJob().say(line)
    expect(code).toBe(2)
    expect(err).toContain(says)
  })
})

describe('a wrench that is named for a tightening', () => {
  const job = ['begin head off', 'off 4 M8x45 8.8 hex 13 head bolts into bench']

  test('is told what to set for each torque, once, and so is whoever turns', () => {
    const { say } = benchWithJob(...job, 'tighten head bolts: 10 Nm, 20 Nm, back off, again, oiled')
    const { out } = say('wrench t1 handle 400 mm adapter 50 mm range 5..25 Nm')
    expect(out.match(/Set the wrench to .*/g)).toEqual([
      'Set the wrench to 8.89 N·m for 10 N·m; worked out, the service manual decides.',
      'Set the wrench to 17.8 N·m for 20 N·m; worked out, the service manual decides.',
    ])
    expect(say('step 1').out).toContain('set the wrench to 8.89 N·m for 10 N·m')
  })

  test('passes that come again are asked about once', () => {
    const { say } = benchWithJob(...job)
    const { out } = say('tighten head bolts: 20 Nm, 120 Nm, back off, again, oiled')
    expect(out.match(/120 Nm is much/g)).toHaveLength(1)
  })

  test('is data with --json, and so is what is asked', () => {
    const { say } = benchWithJob(...job)
    expect(JSON.parse(say('--json', 'tighten head bolts: 120 Nm, oiled').out).heeds).toMatchObject([
      { heed: 'joint', tightening: 't1', question: { code: 'torque-over', typed: '120 Nm' } },
    ])
    expect(JSON.parse(say('--json', 'wrench t1 range 20..200 Nm').out).heeds).toMatchObject([
      { heed: 'wrench', setting: { settingNm: 120, fault: null } },
    ])
  })
})

describe('a bolt and its look-alike', () => {
  test('are named once, when the second of them comes off', () => {
    const { say } = benchWithJob()
    expect(say('off 4 5/16-18x1 grade 5 pump bracket bolts into bench').out).not.toContain('both in this job')
    expect(say('off 8 M8x45 8.8 hex 13 mount bolts into bench').out).toContain(
      "M8 and 5/16 are both in this job: they go into each other's holes; 5/16: p1 pump bracket bolts 5/16-18x1 grade 5.",
    )
    expect(say('off 2 M8x60 long bolts into bench').out).not.toContain('both in this job')
  })

  test('the class stays with the size', () => {
    const { say, session } = benchWithJob()
    say('off 8 M8x45 8.8 hex 13 mount bolts into bench')
    expect([...session().state.ledger.accounts.values()].map(({ piece }) => piece.size)).toEqual([
      'M8x45 8.8 hex 13',
    ])
    expect(say('where 8.8').out).toContain('mount bolts')
  })
})
