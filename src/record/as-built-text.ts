import type { Entry } from '../journal/entry.ts'
import type { State } from '../journal/state.ts'
import type { LabelCode } from '../words/leftovers.ts'
import type { AsBuilt } from './as-built.ts'
import { arrivalText } from './told/arrival-text.ts'
import { containerText, pictureText } from './told/container-text.ts'
import { jobText } from './told/job-text.ts'
import { judgingText } from './told/judging-text.ts'
import { heading, type Line, line, rowsOf } from './told/line.ts'
import { measuredText } from './told/measured-text.ts'
import { orderText } from './told/order-text.ts'
import { outingText } from './told/outing-text.ts'
import { stepText } from './told/step-text.ts'
import { supplyText } from './told/supply-text.ts'
import { history, orNone, type Telling } from './told/telling.ts'
import { aidText, countText, mergeText, openText, overrideText } from './told/whole-job-text.ts'

export interface AsBuiltOptions {
  /** An entry's time as it is shown. */
  when: (at: string) => string
  /** The name of the time zone that `when` shows. */
  zone: string
  /** The label code of a container. */
  code: LabelCode
  /** Of the paper, in characters. */
  width?: number | undefined
}

/** The as-built record in rows of plain text, for a reader who has nothing but the paper. */
export function asBuiltText(
  state: State,
  facts: AsBuilt,
  { when, zone, code, width = 100 }: AsBuiltOptions,
): string[] {
  const telling: Telling = { state, when, code }
  const lines = [
    line('AS-BUILT RECORD'),
    line('Values are as typed by the user; the service manual of the machine decides.'),
    line(''),
    ...jobText(telling, facts, zone),
    ...section('CONDITION ON ARRIVAL', arrivalText(telling, facts.arrival)),
    ...section('STEPS IN THE ORDER OF THE WAY BACK', steps(telling, facts), 'There are none.'),
    ...(facts.measures.length === 0
      ? []
      : section('MEASURED OUTSIDE EVERY STEP', measuredText(telling, facts.measures, 2))),
    ...section(
      'FOUND, CHECKED AND JUDGED',
      facts.judging.flatMap((one) => judgingText(telling, one)),
      'Nothing was asked of any piece.',
    ),
    ...section(
      'WANTED AND ORDERED',
      [...facts.orders.flatMap((one) => orderText(telling, one)), ...each(telling, facts.partNotes)],
      'Nothing was.',
    ),
    ...section(
      'NEW PIECES',
      facts.supplies.flatMap((one) => supplyText(telling, one)),
      'None came.',
    ),
    ...section('DECISIONS ON PIECES', each(telling, facts.decisions), 'None were taken.'),
    ...section(
      'OVERRIDES',
      facts.overrides.flatMap((one) => overrideText(telling, one)),
      'None were given.',
    ),
    ...section(
      'SENT OUT, BACK, SCRAPPED AND MOVED',
      [...facts.outings.flatMap((one) => outingText(telling, one)), ...each(telling, facts.moves)],
      'Nothing was.',
    ),
    ...section(
      'RECOUNTS',
      facts.counts.flatMap((one) => countText(telling, one)),
      'None were made.',
    ),
    ...section(
      'AIDS AND TOOLS',
      facts.aids.flatMap((one) => aidText(telling, one)),
      'None were recorded.',
    ),
    ...section('INTERRUPTIONS', each(telling, facts.stops), 'None were recorded.'),
    ...(facts.merges.length === 0 ? [] : section('MERGED COPIES', mergeText(telling, facts.merges))),
    ...section('NOTES ON THE WHOLE JOB', each(telling, facts.notes), 'None were made.'),
    ...section(
      'CONTAINERS AND LABELS',
      [...facts.containers.map((one) => containerText(telling, one)), ...each(telling, facts.labels)],
      'There are none.',
    ),
    ...section(
      'PICTURES',
      facts.pictures.map((group) => pictureText(telling, group)),
      'There are none.',
    ),
    ...section('STILL OPEN', openText(telling, facts), 'Nothing.'),
    line(''),
    line(`End of the as-built record of job ${facts.job.no}, to entry ${facts.last?.n ?? 0}.`),
  ]
  return rowsOf(lines, width)
}

function steps(telling: Telling, facts: AsBuilt): Line[] {
  return facts.steps.flatMap((step) => stepText(telling, step)).slice(1)
}

function each(telling: Telling, entries: readonly Entry[]): Line[] {
  return entries.map((entry) => history(telling, entry))
}

function section(title: string, lines: readonly Line[], none = ''): Line[] {
  return [...heading(title), ...orNone(lines, none)]
}
