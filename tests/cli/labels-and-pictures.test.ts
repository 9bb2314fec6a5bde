import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import type { Belongs } from '../../src/journal/entry.ts'
import { groupedCode, labelCode, stepNumber } from '../../src/label/code.ts'
import { benchWithJob } from './support/bench.ts'

/** One job with labels 2 to 25 printed ahead, beside a bag that was written on by hand. */
function withLabels(...lines: string[]) {
  const made = benchWithJob('begin valve cover off', 'off 8 M6x25 hex 10 valve cover bolts into new bag')
  const send = (command: Command) => {
    const outcome = made.session().send(command)
    if (outcome.kind !== 'recorded') throw new Error(JSON.stringify(outcome))
  }
  send({ do: 'deal-labels', count: 24 })
  made.told(...lines)
  return { ...made, send }
}

const code = (number: number) => groupedCode(labelCode(1, number))
const picture = (file: string, belongs: Belongs | null, taken: string | null = null): Command => ({
  do: 'add-pictures',
  pictures: [{ file, sha256: Buffer.from(file).toString('hex').padStart(64, '0'), taken, belongs }],
})

describe('an unused label', () => {
  test('says how it is used, by its code and by its number', () => {
    const { say, ask } = withLabels()
    const out = say('scan', labelCode(1, 14)).out
    expect(out).toContain(`UNUSED LABEL 14, ${code(14)}: nothing has it yet.`)
    expect(out).toContain('off ... into 14')
    expect(say('14').out).toBe(out)
    expect(ask('scan 14').json).toMatchObject({ answer: { kind: 'blank', container: 14 } })
  })

  test('is used by what goes into it, and asks for nothing to be written', () => {
    const { say } = withLabels()
    const used = say('off 4 M6x20 exhaust nuts into tag 14')
    expect(used.out).toContain('onto tag 14 (new)')
    expect(used.out).not.toContain('write on')
    expect(say('off 2 dowels into new bag').out).toContain(`write on bag 26: ${code(26)}`)
    expect(say('scan 14').out).toContain('tag 14')
  })

  test('is opened empty by its number or its whole code', () => {
    const { say } = withLabels()
    expect(say('bag exhaust nuts label 14').out).toContain('opened bag 14 (exhaust nuts)')
    expect(say(`tray 12 slots cam caps label ${code(15)}`).out).toContain('opened tray 15 with 12 slots')
    expect(say('bag label 14').err).toContain('Label 14 is in use: it is bag 14 (exhaust nuts).')
  })

  test('stands in no bin and holds nothing to be counted before it is used', () => {
    const { say } = withLabels('bin')
    expect(say('put 14 in 26').err).toContain('Label 14 is unused: no container has it yet.')
    expect(say('count 14 = 3').err).toContain('"bag label 14"')
  })

  test('has its QR symbol, as the machine and each step have', () => {
    const { say } = withLabels()
    expect(say('qr 14').out).toContain(`${code(14)}  label 14`)
    expect(say('qr machine').out).toContain(`${code(9000)}  the machine`)
    expect(say('qr step 1').out).toContain(`${code(9001)}  step 1, valve cover`)
    expect(say('qr step 7')).toMatchObject({ code: 1, err: expect.stringContaining('no step 7') })
    expect(say('qr 26')).toMatchObject({ code: 1, err: expect.stringContaining('no container 26') })
  })

  test('that is void says why, alone or in a run', () => {
    const { say } = withLabels('off 4 nuts into 5')
    expect(say('void 14 because torn').out).toContain('unused label 14 made void: torn')
    expect(say('scan 14').out).toContain(`Label ${code(14)} is void: torn.`)
    expect(say('void 2..9 because the sheet is lost').out).toContain(
      'unused labels 2 to 4 and 6 to 9 made void, 1 is in use and stays: the sheet is lost',
    )
    expect(say('off 2 clips into 8').err).toContain('Label 8 is void: the sheet is lost.')
    expect(say('void 2..9 because once more').err).toContain('None of the labels 2 to 9 is unused.')
    expect(say('where').out).toContain('unused labels: 10 to 13 and 15 to 25')
  })

  test('is on paper: undo passes over it, and the log does not call it undone', () => {
    const { say } = withLabels()
    expect(say('log').out).toContain('labels 2 to 25 dealt to paper')
    expect(say('log').out).not.toContain('(undone)')
    expect(say('undo').out).toContain('taken back: came off')
    expect(say('scan 14').out).toContain('UNUSED LABEL 14')
  })

  test('is among what a misread may have been', () => {
    const { say } = withLabels()
    const right = labelCode(1, 14)
    const wrong = `${right.slice(0, 8)}${(Number(right[8]) + 1) % 10}`
    expect(say('scan', wrong).out).toContain(`${groupedCode(right)}  label 14`)
  })
})

describe('other labels', () => {
  test('a step tells how it stands, the machine where the job stands', () => {
    const { say } = withLabels('end')
    const step = say('scan', labelCode(1, stepNumber(1))).out
    expect(step).toContain(`Label ${code(9001)} is a step:`)
    expect(step).toContain('Its pieces:')
    const machine = say('scan', labelCode(1, 9000)).out
    expect(machine).toContain(`Label ${code(9000)} is the machine:`)
    expect(machine).toContain('Next: ')
  })

  test('of another job are named for what they are', () => {
    const { say } = withLabels()
    expect(say('scan', labelCode(44, 9000)).out).toContain('this is the machine of job 44')
    expect(say('scan', labelCode(44, 9004)).out).toContain('this is step 4 of job 44')
  })
})

describe('pictures', () => {
  const told = () => {
    const made = withLabels()
    made.send(picture('lid.jpg', { container: 1 }, '2026-05-02T14:03:11'))
    made.send(picture('port.jpg', null))
    made.send(picture('bracket.jpg', { step: 1 }))
    return made
  }

  test('are listed, with those that are not sorted yet', () => {
    const { say, ask } = told()
    expect(say('photos').out.trim().split('\n')).toEqual([
      '3 pictures in this job:',
      '  g1  2026-05-02 14:03  lid.jpg: of bag 1',
      '  g2  no time  port.jpg: not sorted yet',
      '  g3  no time  bracket.jpg: of step 1, valve cover off',
      '1 picture is not sorted yet: photo g2 to bag N, to step N, or to job',
    ])
    expect(ask('photos').json).toMatchObject({ answer: { unsorted: ['g2'] } })
    expect(say('photos bag 14').out).toContain('No picture of label 14.')
    expect(say('photos step 9').code).toBe(1)
    expect(say('photos bag 99').code).toBe(1)
  })

  test('are sorted', () => {
    const { say } = told()
    expect(say('photo g2 to bag 1').out).toContain('sorted: picture g2 (port.jpg), of bag 1')
    expect(say('photos bag 1').out).toContain('2 pictures of bag 1:')
    expect(say('photo g2 to job').out).toContain('of the job as a whole')
    expect(say('photo g9 to job').err).toContain('There is no picture g9 in this job.')
  })

  test('are told where their container, their piece and their step are', () => {
    const { say } = told()
    expect(say('scan 1').out).toContain('  1 picture: photos bag 1')
    expect(say('where valve cover bolts').out).toContain('  1 picture: photos p1')
    expect(say('step 1').out).toContain('2 pictures: photos step 1')
    expect(say('photos p1').out).toContain('lid.jpg')
    expect(say('where').out).not.toContain('photos')
  })
})
