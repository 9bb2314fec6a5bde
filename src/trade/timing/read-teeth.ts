import { tidy } from '../number.ts'
import { notUnderstood, type Reading, understood } from '../reading.ts'
import type { Stage } from './teeth.ts'

/** Why teeth were not understood: nothing there; a text that is no pair of teeth. */
export type TeethFault = 'empty' | 'pair'

/** Reads the teeth of a timing drive from the crank to the cam: `24/48`, `24:48`, `24 crank 48 cam`, `20/30 24/32`. */
export function readTeeth(text: string): Reading<Stage[], TeethFault> {
  const typed = text.trim()
  if (typed === '') return notUnderstood('empty', '', '24/48')
  const plain = tidy(text)
    .toLowerCase()
    .replace(/\b(?:crank|cam|shaft|sprocket|pulley|teeth|tooth|and|to|on|at|the|stage)s?\b|[,;]/g, ' ')
    .replace(/\s*[/:-]\s*/g, '/')
    .replace(/\s+/g, ' ')
    .trim()
  const parts = plain.split(' ')
  if (parts.length === 2 && parts.every((part) => /^\d{1,4}$/.test(part))) {
    return understood([{ driver: Number(parts[0]), driven: Number(parts[1]) }])
  }
  const stages = parts.map((part) => /^(\d{1,4})\/(\d{1,4})$/.exec(part))
  const pairs = stages.flatMap((match) =>
    match === null ? [] : [{ driver: Number(match[1]), driven: Number(match[2]) }],
  )
  if (pairs.length === parts.length) return understood(pairs)
  const single = /^(\d{1,3})$/.exec(plain)?.[1]
  const isCam = /\bcam/i.test(typed) && Number(single) % 2 === 0
  const nearest = isCam ? `${Number(single) / 2}/${single}` : `${single}/${Number(single) * 2}`
  return notUnderstood('pair', typed, single === undefined ? '24/48' : nearest)
}
