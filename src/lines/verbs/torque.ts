import type { Command } from '../../journal/command.ts'
import { readAmountOf } from '../../trade/convert/read-amount.ts'
import { readConversion } from '../../trade/convert/read-conversion.ts'
import { readThread, type Thread } from '../../trade/thread.ts'
import { classText, type FastenerClass, readFastenerClass } from '../../trade/torque/fastener-class.ts'
import { type FrictionBy, readFriction, usualFriction } from '../../trade/torque/friction.ts'
import type { Line } from '../line.ts'
import type { Ask } from '../reading.ts'
import type { PreloadSum, SettingSum } from '../sum.ts'
import { lineAgain, takeAmount, takeWrench } from '../take-wrench.ts'
import type { Verb } from '../verb.ts'

export const torqueVerbs: readonly Verb[] = [
  {
    words: ['='],
    topic: 'arithmetic',
    forms: ['= AMOUNT [in UNIT]', '= AMOUNT (AMOUNT)'],
    says: 'Shows an amount in other units, or whether two printed figures are the same.',
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
    says: 'Works out what to set a torque wrench to when an adapter lengthens it, and whether it is in its range.',
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
    forms: ['preload THREAD [CLASS] TORQUE [friction LEAST..MOST | dry | oiled]'],
    says: 'Works out what a torque clamps with, as a range, against what the fastener bears.',
    examples: [
      'preload M8 8.8 25 Nm',
      'preload M8 8.8 25 Nm friction 0.10..0.16',
      'preload 3/8-16 grade 5 30 lbf·ft dry',
    ],
    read: (line): Ask => ({ ask: 'sum', sum: preloadSum(line) }),
  },
]

function settingSum(line: Line): SettingSum {
  const { adapter, range } = takeWrench(line)
  const torque = takeAmount(line, 'torque', line.takeRest('TORQUE'))
  return { sum: 'setting', torque, ...(adapter && { adapter }), ...(range && { range }) }
}

function preloadSum(line: Line): PreloadSum {
  const [typedFriction] = line.take(/(?:^| )friction(?: (.*))?$/i) ?? []
  const [surface] = line.take(/(?:^|,? )(dry|oiled|lubricated|greased)$/i) ?? []
  const frictionBy: FrictionBy =
    typedFriction !== undefined
      ? 'typed'
      : surface === undefined
        ? 'assumed'
        : /dry/i.test(surface)
          ? 'dry'
          : 'oiled'
  const words = line.takeRest('THREAD').split(' ')
  const { thread, rest } = takeThread(line, words)
  const { fastenerClass, torqueText } = takeClass(line, rest)
  if (torqueText === '') line.missing('TORQUE')
  return {
    sum: 'preload',
    thread,
    ...(fastenerClass && { fastenerClass }),
    torque: takeAmount(line, 'torque', torqueText),
    friction: frictionBy === 'typed' ? friction(line, typedFriction ?? '') : usualFriction[frictionBy],
    frictionBy,
  }
}

/** The longest run of words at the front that is a thread: `M8 x 1`, `1/4 NPT`. */
function takeThread(line: Line, words: readonly string[]): { thread: Thread; rest: string[] } {
  for (let used = Math.min(5, words.length); used > 0; used--) {
    const reading = readThread(words.slice(0, used).join(' '))
    if (reading.understood) return { thread: reading.value, rest: words.slice(used) }
  }
  const [first = ''] = words
  const reading = readThread(first)
  return line.notUnderstood(first, reading.understood ? null : lineAgain(line, first, reading.nearest))
}

/** Words between thread and torque are the class; what is none is not passed over. */
function takeClass(
  line: Line,
  words: readonly string[],
): { fastenerClass?: FastenerClass; torqueText: string } {
  for (let used = Math.min(3, words.length); used > 0; used--) {
    const torqueText = words.slice(used).join(' ')
    const reading = readFastenerClass(words.slice(0, used).join(' '))
    // `8.8 Nm` is a torque.
    if (reading.understood && !isUnit(torqueText)) return { fastenerClass: reading.value, torqueText }
  }
  const torque = words.findIndex((_, i) => i > 0 && isAmount(line, words.slice(i).join(' ')))
  if (torque < 0 || isAmount(line, words.join(' '))) return { torqueText: words.join(' ') }
  const typed = words.slice(0, torque).join(' ')
  const reading = readFastenerClass(typed)
  return line.notUnderstood(
    typed,
    reading.understood ? classText(reading.value) : lineAgain(line, typed, reading.nearest),
  )
}

function isUnit(text: string): boolean {
  return text !== '' && !/\d/.test(text)
}

function isAmount(line: Line, text: string): boolean {
  return readAmountOf('torque', text, { units: line.state.job.units }).understood
}

function friction(line: Line, typed: string): PreloadSum['friction'] {
  if (typed === '') line.missing('LEAST..MOST')
  const reading = readFriction(typed)
  if (reading.understood) return reading.value
  return line.notUnderstood(typed, lineAgain(line, `friction ${typed}`, `friction ${reading.nearest}`))
}
