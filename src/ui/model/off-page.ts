import { groupedCode } from '../../label/code.ts'
import { openLoosening } from '../../session/open-loosening.ts'
import { codeOf } from '../../session/scan.ts'
import type { Session } from '../../session/session.ts'
import { liesAt, liesIn } from '../../words/lookups.ts'
import { fluidName, markName, stepName } from '../../words/names.ts'
import { containerName, containerPlace } from '../../words/places.ts'
import { bigLetters } from '../controls/big-letters/big-letters.ts'
import { type Choice, choicesOf, type Large, type Page, rowsOf } from '../page.ts'
import { blank, type Line, large, line, plain, strong } from '../text/line.ts'
import { contentNames, setNames } from './content-names.ts'
import { firstLines } from './first-lines.ts'
import { inLarge } from './large-words.ts'
import { easeChoice, looseningInLarge, looseningRows } from './loosening-rows.ts'
import { measuredRows } from './measured-rows.ts'
import { nextChoice } from './next.ts'
import { offChoices } from './off-choices.ts'
import { flowed, groups, headed, indented, labelledFlow, numbered } from './rows.ts'
import { sameAgain } from './same-again.ts'
import { cardNow, type Scene, type State } from './scene.ts'

/** What comes off: the step under way, the container in hand and what is in it, words said before. */
export function offPage(scene: Scene): Page {
  const { session, width } = scene
  const { state } = session
  const { strip } = state
  const container = inHand(scene)
  const easing = openLoosening(state)
  const again = sameAgain(scene)
  const choices = offChoices(scene, { again, container })
  const rest = [...choices].filter(([no]) => no > again.length)
  return {
    title: title(state),
    top: [...handRows(scene, container), blank],
    rows: rowsOf(
      groups(
        easing === null ? firstLines(state) : [],
        easing === null ? [] : looseningRows(scene, easing),
        [
          ...(container === null
            ? []
            : labelledFlow('IN IT', contentNames(state, container), width, MOST_ROWS)),
          ...(strip === null
            ? []
            : labelledFlow('STEP SO FAR', soFar(scene, strip, container), width, MOST_ROWS)),
        ],
        headed(
          'THE SAME AGAIN: 8.1 is eight of the first; or its number, then the count',
          again.flatMap((words, index) => numbered(index + 1, plainWords(words), width)),
        ),
        flowed(rest, width),
        strip === null ? [] : headed('MEASURED', measuredRows(state, strip, width)),
      ),
    ),
    enter: easing === null ? enter(scene, container) : easeChoice(easing),
    choice: choicesOf(choices),
    large: easing === null ? handInLarge(scene, container) : looseningInLarge(easing),
  }
}

function handInLarge({ session }: Scene, container: number | null): Large {
  const { state } = session
  if (container === null)
    return inLarge(state.strip === null ? 'OFF' : `STEP ${state.strip}`, [
      state.steps.get(state.strip ?? 0)?.title ?? 'no step is open',
      'the first piece opens a bag',
    ])
  return inLarge(groupedCode(codeOf(state, container)), [
    containerName(state, container),
    isJustOpened(session, container) ? 'write this on it' : 'in hand',
  ])
}

/** The container that the next line fills; null when it will open one. */
function inHand({ session, hand }: Scene): number | null {
  const no = hand ?? session.state.hand
  if (no === null) return null
  // An unused label in hand opens its bag with the first piece.
  const label = session.state.containers.get(no) ?? session.state.blanks.get(no)
  return label && label.voided === null ? no : null
}

function title(state: State): Line {
  if (state.strip === null) return line(strong('WHAT COMES OFF'), '  no step is open')
  const after = state.steps.get(state.strip)?.after ?? []
  return line(strong(stepName(state, state.strip)), after.length === 0 ? '' : `  after ${after.join(', ')}`)
}

/** The code stands large right after the bag was opened: that is when it is written on the label. */
function handRows({ session, width }: Scene, container: number | null): Line[] {
  const { state } = session
  if (container === null) return indented('In hand: nothing. The first piece opens a bag.', width)
  const code = groupedCode(codeOf(state, container))
  const letters = isJustOpened(session, container) ? bigLetters(code, width - 10) : null
  const name = strong(containerName(state, container))
  if (!letters) return indented(line('In hand: ', name, `   label ${code}`), width)
  return [
    ...indented(line('In hand: ', name, '. Write on it, or print it with 8:'), width),
    ...letters.map((row) => line('     ', large(row))),
  ]
}

function isJustOpened(session: Session, container: number): boolean {
  // On a printed label it stands already.
  if (session.state.containers.get(container)?.run !== undefined) return false
  const last = session.entries().findLast(({ n }) => n === session.state.inForce.at(-1))
  if (last?.type === 'container-opened') return last.container.no === container
  return last !== undefined && 'opened' in last && last.opened?.no === container
}

/** What else came off or went in during the step: the bag in hand does not show it. */
function soFar({ session }: Scene, strip: number, container: number | null): string[] {
  const { state } = session
  const { pieces, aids, tools, fluids, marks } = session.gates().contentsOf(strip)
  const elsewhere = pieces.filter(({ piece }) =>
    liesAt(state, piece.id).every(({ place }) => containerPlace(place)?.container !== container),
  )
  const counted = [...elsewhere, ...aids, ...tools].map(({ piece, entered }) => ({
    piece: piece.id,
    count: entered,
  }))
  return [
    ...setNames(state, counted),
    ...fluids.map(({ id }) => fluidName(state, id)),
    ...marks.map(({ id }) => markName(state, id)),
  ]
}

/** So many rows are seen at a glance. */
const MOST_ROWS = 3

function plainWords(words: string): Line {
  return [plain(words)]
}

function enter(scene: Scene, container: number | null): Choice | null {
  const { session } = scene
  const { state } = session
  if (container !== null && liesIn(state, container).length === 0) {
    return {
      says: `nothing: ${containerName(state, container)} is still empty`,
      act: {
        do: 'say',
        what: `${containerName(state, container)} is in hand and empty.`,
        cure: 'Type what goes into it: 8 M6x25 hex 10 valve cover bolts',
      },
    }
  }
  const { phase } = cardNow(session)
  if (state.strip === null && phase !== 'strip-down' && phase !== 'waiting') return nextChoice(scene)
  return { says: 'a new bag', act: { do: 'send', commands: [{ do: 'open-container', kind: 'bag' }] } }
}
