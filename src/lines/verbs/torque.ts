import { type Amount, readAmountOf } from '../../trade/convert/read-amount.ts'
import { readConversion } from '../../trade/convert/read-conversion.ts'
import { readDecimal } from '../../trade/number.ts'
import { readThread, type Thread } from '../../trade/thread.ts'
import { classText, type FastenerClass, readFastenerClass } from '../../trade/torque/fastener-class.ts'
import { type FrictionBy, readFriction, usualFriction } from '../../trade/torque/friction.ts'
import type { Line } from '../line.ts'
import type { Ask } from '../reading.ts'
import type { PreloadSum, SettingSum } from '../sum.ts'
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

// Where the words behind one of these end.
const NEXT = '(?= (?:handle|lever|adapter|extension|crow-?foot|at|range) |$)'

function settingSum(line: Line): SettingSum {
  const range = takeRange(line)
  const [angle] = line.take(/(?:^| )at (\S+?) ?(?:deg(?:rees?)?|°)?(?= |$)/i) ?? []
  const [handle] = line.take(new RegExp(`(?:^| )(?:handle|lever) (.+?)${NEXT}`, 'i')) ?? []
  const [length] = line.take(new RegExp(`(?:^| )(?:adapter|extension|crow-?foot) (.+?)${NEXT}`, 'i')) ?? []
  const torque = amount(line, 'torque', line.takeRest('TORQUE'))
  if (handle === undefined && length === undefined) {
    if (angle !== undefined) line.missing('handle LENGTH adapter LENGTH')
    return { sum: 'setting', torque, ...range }
  }
  if (handle === undefined) line.missing('handle LENGTH')
  if (length === undefined) line.missing('adapter LENGTH')
  const angleDegrees = angle === undefined ? 0 : readDecimal(angle)
  if (angleDegrees === undefined || Math.abs(angleDegrees) > 360)
    line.notUnderstood(angle ?? '', again(line, `at ${angle}`, 'at 90'))
  const adapter = {
    handle: amount(line, 'length', handle, 'handle '),
    length: amount(line, 'length', length, 'adapter '),
    angleDegrees,
  }
  return { sum: 'setting', torque, adapter, ...range }
}

/** `range 20..100 Nm`, `range 20 Nm to 100 Nm`. */
function takeRange(line: Line): Pick<SettingSum, 'range'> {
  const [typed] = line.take(new RegExp(`(?:^| )range(?: (.+?))?${NEXT}`, 'i')) ?? []
  if (typed === undefined) return {}
  if (typed === '') line.missing('LEAST..MOST')
  const [, first = '', second = ''] = /^(.+?) ?(?:\.{2,3}|…|-|–| to ) ?(\d.*)$/i.exec(typed) ?? []
  if (second === '') line.notUnderstood(typed, again(line, `range ${typed}`, 'range 20..100 Nm'))
  const most = amount(line, 'torque', second)
  const least = amount(line, 'torque', /[^\d.,]$/.test(first) ? first : `${first} ${unitOf(second)}`)
  if (least.base < most.base) return { range: { least, most } }
  return line.notUnderstood(typed, again(line, typed, `${most.typed}..${least.typed}`))
}

function unitOf(text: string): string {
  return text.replace(/^[\d.,]+ ?/, '')
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
    torque: amount(line, 'torque', torqueText),
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
  return line.notUnderstood(first, reading.understood ? null : again(line, first, reading.nearest))
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
    reading.understood ? classText(reading.value) : again(line, typed, reading.nearest),
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
  return line.notUnderstood(typed, again(line, `friction ${typed}`, `friction ${reading.nearest}`))
}

/** `before`: the word before it, so that the same number elsewhere in the line stays as it is. */
function amount(line: Line, kind: 'torque' | 'length', typed: string, before = ''): Amount {
  const units = { units: line.state.job.units }
  const reading = readAmountOf(kind, typed, units)
  if (reading.understood) return reading.value
  const words = typed.split(' ')
  // `40 Nm handel 400 mm`: what is behind an amount is what is not understood.
  const used = words.findLastIndex(
    (_, i) => readAmountOf(kind, words.slice(0, i + 1).join(' '), units).understood,
  )
  if (used >= 0) line.notUnderstood(words.slice(used + 1).join(' '))
  return line.notAnAmount(reading, again(line, before + typed, before + reading.nearest))
}

/** The line once more, with something that would be understood in the place of what is not. */
function again(line: Line, part: string, nearest: string): string {
  return line.whole.replace(part, () => nearest)
}
