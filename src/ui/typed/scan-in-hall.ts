import { readCode, splitTail } from '../../label/code.ts'
import { plainText } from '../../label/plain-text.ts'
import type { Hall } from '../model/scene.ts'
import { act, type Meaning, type Typed } from './meaning.ts'

/**
 * A label scanned while no job is open is none of the words for which a question waits: alone it opens its job; behind
 * words, where its job is known, they stay.
 */
export function scanInHall({ before, after }: Typed, hall: Hall): Meaning | undefined {
  const tail = splitTail(before)
  const reading = tail && readCode(tail.code)
  if (!tail || reading?.kind !== 'code') return undefined
  const known = hall.jobs.find(({ no }) => no === reading.job)
  const isAlone = tail.words.trim() === '' && after.trim() === ''
  if (known && isAlone)
    return act(
      { do: 'open-job', path: known.path, to: { at: 'scan', text: tail.code } },
      `open ${plainText(known.name)}, and scan`,
    )
  if (!known && !isAlone) return undefined
  const name = known ? plainText(known.name) : 'which is not in this home'
  const meaning = act(
    {
      do: 'say',
      what: `This is a label of job ${reading.job}, ${name}.`,
      cure: known ? 'Scan it with nothing typed, and its job opens.' : 'Nothing came of it.',
    },
    'a label of a job',
  )
  return meaning.kind === 'act' ? { ...meaning, keep: { before: tail.words, after } } : meaning
}
