import { expect, test } from 'vitest'
import { benchWithJob } from './support/bench.ts'

test('what turned up is looked for on the command line, and all homes are in the data', () => {
  const { say, told, session } = benchWithJob()
  const lots = Array.from({ length: 14 }, (_, index) => `off 2 M6x25 lot ${index + 1} bolts into new bag`)
  told('begin all of it off, does not hide', ...lots, 'lost 1 lot 9 bolts because it rolled away')
  const before = session().entries().length

  const { code, out } = say('found', 'M6x25', 'hex', '10')
  expect(code).toBe(0)
  const lines = out.split('\n')
  expect(lines[0]).toBe("14 homes may be that of 'M6x25 hex 10', the likeliest first.")
  expect(lines[1]).toMatch(
    /^ {2}1 {2}p9 {2}lot 9 bolts M6x25, belongs to .*: 1 lost and bag 9 should hold 1$/,
  )
  expect(lines[2]).toBe('     Agrees in thread, pitch and length; the record does not say drive.')
  expect(lines[3]).toBe('     If it is: "move 1 p9 from lost to bench".')
  expect(out).toContain('     and 2 less likely: say more of it, such as its length or its drive\n')

  const { answer } = JSON.parse(say('--json', 'found M6x25 hex 10').out)
  expect(answer).toMatchObject({ words: 'M6x25 hex 10', count: 1 })
  expect(answer.homes).toHaveLength(14)
  expect(session().entries()).toHaveLength(before)
})

test('what is missing or broken from now on is said at once, and each way out with what is due', () => {
  const { say, told } = benchWithJob()
  told('begin exhaust off')
  const snapped = say('off 4 M8 studs, 1 snapped').out
  expect(snapped).toContain(
    'Studs M8: 1 short, 1 in scrap and x1, 1 × stud M8 snapped: "due" shows each way out.',
  )
  const missing = say('off 7 of 8 M6x25 shield bolts').out
  expect(missing).toContain(
    'Shield bolts M6x25: 1 short and 1 missing when the job began: "due" shows each way out.',
  )
  expect(say('off 2 clips').out).not.toContain('way out')
  const lost = say('lost 1 clips because it rolled away').out
  expect(lost).toContain('Clips: 1 short and 1 lost: "due" shows each way out.')
  const due = say('due').out
  for (const words of [
    '"settle x1: ..."',
    '"override x1 because ..."',
    '"new 1 p2" when found or here',
    '"move 1 p3 from lost to bench" when found',
    '"accept lost p3 because ..."',
  ])
    expect(due).toContain(words)
})

test('a step that is to be seen a second time says so wherever it is shown', () => {
  const { say, told } = benchWithJob()
  told('begin gear off, does not hide', 'off 2 M6x25 gear bolts into new bag', 'end', 'step 1 critical')
  const before = 'critical: once done, each line is seen again, by somebody else or 30 min later'
  expect(say('back').out).toContain(`      ${before}\n`)
  told('fit gear bolts', 'done 1')
  const { out } = say('step 1')
  expect(out).toContain('Critical: 1 of 1 still to be seen again; by the same person in 30 min.\n')
  expect(out).toContain('  gear bolts M6x25: "seen p1: ..."\n')
  expect(say('--by', 'Ben', 'step 1').out).toContain('Critical: 1 of 1 still to be seen again.\n')
  expect(say('seen p1: stripes in line').code).not.toBe(0)
  expect(say('--by', 'Ben', 'seen p1: stripes in line').code).toBe(0)
  expect(say('step 1').out).toContain(
    'Critical: seen again, its one line.\n  gear bolts M6x25: stripes in line (Ben)\n',
  )
})

test('what sits on another piece is looked for there', () => {
  const { say, told } = benchWithJob()
  told('begin pump off', 'off water pump into bench', 'on water pump: 3 studs M6x25', 'end')
  const { out } = say('found stud M6')
  expect(out).toContain('3 should be on water pump p1\n')
  expect(out).toContain('     See whether all 3 are on water pump p1.\n')
  expect(out).not.toContain('Nothing on the machine waits for it.')
})
