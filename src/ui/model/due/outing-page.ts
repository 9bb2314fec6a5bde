import { type OutingView, outingView } from '../../../session/outing-view.ts'
import { dayText, dueText } from '../../../words/days.ts'
import { sentence } from '../../../words/grammar.ts'
import { countedPiece, countedPieces, pieceName } from '../../../words/pieces.ts'
import { holderName } from '../../../words/waiting/out-words.ts'
import type { Command } from '../../act.ts'
import { BACK, type Choice, choicesOf, NO_CHOICES, type Page, rowsOf } from '../../page.ts'
import { chip, SIGNS, type Sign } from '../../signs.ts'
import { line, strong } from '../../text/line.ts'
import { inLarge } from '../large-words.ts'
import { groups, headed, indented, numbered } from '../rows.ts'
import type { OutingId, Scene, State } from '../scene.ts'

/** What went out together: what is still away, what went along on it, and what the shop took out. */
export function outingPage({ session, width }: Scene, id: OutingId): Page {
  const state = session.stateNow()
  const outing = state.outings.get(id)
  if (!outing) return noOuting(id, width)
  const view = outingView(state, outing)
  const sign = outingSign(view)
  const choices = outingChoices(view)
  const name = countedPieces(state, outing.pieces)
  return {
    title: line(strong(id), '  ', chip(sign), '  ', strong(name)),
    top: [],
    rows: rowsOf(
      groups(
        facts(state, view).flatMap((text) => indented(text, width)),
        headed(
          'STILL AWAY',
          outing.pieces.flatMap(({ piece, away }) =>
            away > 0 ? indented(countedPiece(state, piece, away), width) : [],
          ),
        ),
        headed(
          'SITS ON IT',
          view.riders.flatMap(({ piece, count, on }) =>
            indented(`${countedPiece(state, piece, count)}, on ${pieceName(state, on)}`, width),
          ),
        ),
        headed(
          'TAKEN OFF BEFORE, AND HERE',
          outing.aside.flatMap((piece) => indented(pieceName(state, piece), width)),
        ),
        headed('TAKEN OUT THERE', outing.tookOut === null ? [] : indented(outing.tookOut.text, width)),
        headed(
          'SAY WHAT CAME OF IT',
          [...choices].flatMap(([no, { says }]) => numbered(no, says, width)),
        ),
      ),
    ),
    enter: BACK,
    choice: choicesOf(choices),
    large: inLarge(sign.word, [[chip(sign)], name]),
  }
}

/** How an outing stands, as a sign. */
export function outingSign({ standing }: OutingView): Sign {
  switch (standing) {
    case 'away':
      return SIGNS.away
    case 'overdue':
      return SIGNS.overdue
    case 'unanswered':
      return SIGNS.unanswered
    case 'back':
      return SIGNS.isBack
    default:
      return standing satisfies never
  }
}

function facts({ clock }: State, { outing, standing }: OutingView): string[] {
  const { why, due, expects, since, result } = outing
  const isBack = standing === 'unanswered' || standing === 'back'
  const holder = isBack ? `back from ${outing.to}` : holderName(outing)
  const day = `${isBack ? 'out' : 'since'} ${dayText(since, clock.today)}`
  return [
    sentence(`${holder}${why === undefined ? '' : ` for ${why}`}, ${day}`),
    ...(due === undefined ? [] : [sentence(dueText(due, clock.today))]),
    ...(expects === undefined ? [] : [`Expected: ${expects}.`]),
    ...(result === undefined ? [] : [`Came of it: ${result}.`]),
  ]
}

/** Each with a number of its own, whether or not the others can be chosen now: the same number says the same. */
function outingChoices({ outing, standing }: OutingView): Map<number, Choice> {
  const { id, job, pieces, tookOut } = outing
  const choices = new Map<number, Choice>()
  if (standing === 'away' || standing === 'overdue') {
    const all = pieces.filter(({ away }) => away > 0).length > 1 ? 'all of it is back' : 'it is back'
    choices.set(1, send(`${all}: onto the bench`, { do: 'come-back', outing: id, into: BENCH }))
    choices.set(2, {
      says: `${all}, and goes elsewhere: say into what`,
      act: { do: 'write', before: `came back ${id} into `, asks: 'Type or scan what it lies in, as: 14' },
    })
  }
  // What is lent is not worked on.
  if (job === undefined && tookOut === null) {
    choices.set(
      3,
      send('looked: nothing was taken out of it there', {
        do: 'come-back',
        outing: id,
        pieces: [],
        into: BENCH,
        tookOut: { text: 'nothing', items: [] },
      }),
    )
    choices.set(4, {
      says: 'something was taken out there: say what, and whether it is back',
      act: {
        do: 'write',
        before: `took out ${id}: `,
        asks: 'Type it, as: 2 gallery plugs back, 4 guides not back',
      },
    })
  }
  return choices
}

const BENCH = { kind: 'place', place: 'bench' } as const

function send(says: string, command: Command): Choice {
  return { says, act: { do: 'send', commands: [command] } }
}

function noOuting(id: OutingId, width: number): Page {
  return {
    title: line(strong(id)),
    top: [],
    rows: rowsOf(indented(`Nothing went out as ${id}.`, width)),
    enter: BACK,
    choice: NO_CHOICES,
    large: null,
  }
}
