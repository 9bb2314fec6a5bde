import { placements } from '../label/sheet.ts'
import { labelsOnPage } from '../label/stock.ts'
import type { Printed } from '../lines/errand.ts'
import { codeOf } from '../session/scan.ts'
import type { Session } from '../session/session.ts'
import { blankLabel } from '../words/label-text/blank-label.ts'
import { type Choice, tooManyForPicture } from './choose-print.ts'
import { jobPart, type Made, madeLabels, type NotMade, notMade, type Recorded } from './made.ts'
import { sendFor } from './send-for.ts'

/** Deals numbers to labels without a container, and draws them. That they can be drawn is seen first. */
export function makeBlanks(
  session: Session,
  { count }: Extract<Printed, { print: 'blanks' }>,
  choice: Choice,
): Made | NotMade {
  // Every number takes the same room: one that suits the stock speaks for all of the run.
  const trial = labelsOf(session, [1], choice)
  if (!trial.ok) return trial
  const { stock, from, shift } = choice
  const placed = placements(stock, 1, { from, shift })
  if (!placed.ok) return notMade(placed.refusal)
  const wanted = count === 'sheet' ? labelsOnPage(stock) - from + 1 : count
  const tooMany = tooManyForPicture(choice, wanted)
  if (tooMany) return notMade(tooMany)
  const sent = sendFor(session, [{ do: 'deal-labels', count: wanted }])
  if (!sent.ok) return sent
  const [entry] = sent.entries
  if (entry?.type !== 'labels-dealt') throw new Error('no labels were dealt')
  const dealt = { from: entry.from, to: entry.to }
  return labelsOf(session, numbers(dealt), choice, { entries: sent.entries, dealt })
}

/** Unused labels of an earlier run once more, as when the paper jammed. */
export function makeBlanksAgain(
  session: Session,
  range: { from: number; to: number },
  choice: Choice,
): Made | NotMade {
  const { blanks } = session.state
  const unused = numbers(range).filter((no) => blanks.get(no)?.voided === null)
  if (unused.length === 0) return notMade({ code: 'not-unused', ...range })
  const made = labelsOf(session, unused, choice)
  if (!made.ok) return made
  const left = range.to - range.from + 1 - unused.length
  return {
    ...made,
    notes: [
      ...made.notes,
      ...(left > 0
        ? [`${left} of ${range.from} to ${range.to} are in use, void or were never dealt, and were left out`]
        : []),
      'If the first print of these is still about, destroy it: two labels with one number are one too many.',
    ],
  }
}

function labelsOf(
  { state }: Session,
  nos: readonly number[],
  choice: Choice,
  recorded: Recorded = {},
): Made | NotMade {
  const [first = 0] = nos
  const last = nos.at(-1) ?? first
  return madeLabels(
    nos.map((no) => blankLabel(state, no, codeOf(state, no))),
    choice,
    {
      title: first === last ? `unused label ${first}` : `unused labels ${first} to ${last}`,
      name: [jobPart(state.job.no), 'unused', ...new Set([first, last])].join('-'),
      ...recorded,
    },
  )
}

function numbers({ from, to }: { from: number; to: number }): number[] {
  return Array.from({ length: Math.max(0, Math.min(to, from + 9999) - from + 1) }, (_, index) => from + index)
}
