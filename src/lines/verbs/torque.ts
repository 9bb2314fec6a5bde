import type { Command } from '../../journal/command.ts'
import { readConversion } from '../../trade/convert/read-conversion.ts'
import type { Line } from '../line.ts'
import { readPreload } from '../read-preload.ts'
import type { Ask } from '../reading.ts'
import type { SettingSum } from '../sum.ts'
import { takeAmount, takeWrench } from '../take-wrench.ts'
import type { Verb } from '../verb.ts'

export const torqueVerbs: readonly Verb[] = [
  {
    words: ['='],
    topic: 'arithmetic',
    forms: ['= AMOUNT [in UNIT]', '= AMOUNT (AMOUNT)'],
    says: 'Shows an amount in other units; or whether two printed figures are the same.',
    examples: ['= 22 lbf·ft', '= 22 lbf·ft in kgf·m', '= 3 US qt', '= 0.10 mm (0.004 in)'],
    read(line): Ask {
      const typed = line.takeRest('AMOUNT')
      const conversion = readConversion(typed, { units: line.state.job.units })
      if (!conversion.understood) return line.notAnAmount(conversion, `= ${conversion.nearest}`)
      return { ask: 'sum', sum: { sum: 'convert', conversion: conversion.value } }
    },
  },
  {
    words: ['setting'],
    topic: 'arithmetic',
    forms: ['setting TORQUE [handle LENGTH adapter LENGTH [at DEGREES]] [range LEAST..MOST]'],
    says: 'Works out what to set a torque wrench to: when an adapter lengthens it; and whether it is in its range.',
    examples: [
      'setting 40 Nm handle 400 mm adapter 50 mm',
      'setting 40 Nm handle 400 mm adapter 50 mm at 90 deg range 20..100 Nm',
      'setting 22 Nm range 20..100 Nm',
    ],
    read: (line): Ask => ({ ask: 'sum', sum: settingSum(line) }),
  },
  {
    words: ['wrench'],
    topic: 'tightening',
    forms: ['wrench t1 [range LEAST..MOST] [handle LENGTH adapter LENGTH [at DEGREES]]'],
    says: 'Names the torque wrench in use for a tightening: each pass then shows what to set it to.',
    examples: ['wrench t1 range 20..100 Nm', 'wrench t1 range 5..60 Nm handle 400 mm adapter 50 mm'],
    read(line): Command {
      const [number] = line.take(/^t(\d{1,9})(?= |$)/i) ?? line.missing('t1')
      const typed = line.rest
      if (typed === '') line.missing('range LEAST..MOST')
      const { adapter, range } = takeWrench(line)
      line.end()
      return {
        do: 'choose-wrench',
        tightening: `t${Number(number)}`,
        wrench: {
          typed,
          ...(range && { leastNewtonMetres: range.least.base, mostNewtonMetres: range.most.base }),
          ...(adapter && {
            leverMm: adapter.handle.base,
            adapterMm: adapter.length.base,
            angleDegrees: adapter.angleDegrees,
          }),
        },
      }
    },
  },
  {
    words: ['preload'],
    topic: 'arithmetic',
    forms: ['preload THREAD [CLASS] TORQUE [friction LEAST..MOST | dry | oiled]', 'preload PIECE TORQUE'],
    says: 'Works out what a torque clamps with: as a range, against what the fastener bears.',
    examples: [
      'preload M8 8.8 25 Nm',
      'preload M8 8.8 25 Nm friction 0.10..0.16',
      'preload 3/8-16 grade 5 30 lbf·ft dry',
      'preload valve cover bolts 10 Nm',
    ],
    read: (line): Ask => ({ ask: 'sum', sum: readPreload(line) }),
  },
]

function settingSum(line: Line): SettingSum {
  const { adapter, range } = takeWrench(line)
  const torque = takeAmount(line, 'torque', line.takeRest('TORQUE'))
  return { sum: 'setting', torque, ...(adapter && { adapter }), ...(range && { range }) }
}
