import { type JudgingView, judgedSet, judgingView } from '../../../session/judging-view.ts'
import { sentence } from '../../../words/grammar.ts'
import { checkWords, VERDICTS } from '../../../words/judging/names.ts'
import { setNames } from '../../../words/judging/set-names.ts'
import { verdictLine } from '../../../words/measurements/measure-text.ts'
import { countedPiece, homeName, liesText, pieceName } from '../../../words/pieces.ts'
import type { Screen } from '../../navigation.ts'
import { BACK, type Choice, choicesOf, goTo, type Page, rowsOf } from '../../page.ts'
import { chip, SIGNS, type Sign } from '../../signs.ts'
import { type Line, line, strong } from '../../text/line.ts'
import { inLarge } from '../large-words.ts'
import { bulleted, groups, headed, indented, numbered } from '../rows.ts'
import type { PieceId, Scene, State } from '../scene.ts'

type Judged = Extract<Screen, { at: 'judge' }>
type Check = JudgingView['checks'][number]

/** What is asked of a piece: each check good by its number, or a verdict with its reason. */
export function judgePage(scene: Scene, { piece, ofSet }: Judged): Page {
  return ofSet ? setPage(scene, piece) : piecePage(scene, piece)
}

/** How a piece stands, as a sign. */
export function standingSign({ standing }: JudgingView): Sign {
  switch (standing) {
    case 'due':
      return SIGNS.notChecked
    case 'accepted':
      return SIGNS.good
    case 'not-asked':
      return SIGNS.notAsked
    case 'wrong':
      return SIGNS.wrongOne
    case 'gone':
      return SIGNS.sentBack
    case 'machine':
    case 'replace':
    case 'clean':
      return SIGNS.notGood
    default:
      return standing satisfies never
  }
}

function piecePage({ session, width }: Scene, piece: PieceId): Page {
  const state = session.stateNow()
  const view = judgingView(state, piece)
  const choices = new Map<number, Choice>()
  // A check keeps its number when it is done: a finger that bounces claims it twice, and no other.
  const checks = view.checks.flatMap((check, index) => {
    // Nobody looks again at what is to be replaced.
    if (isCondemned(view)) return [...indented(checkRow(check), width), ...readingRows(check, width)]
    const no = index + 1
    choices.set(no, choiceOf(check))
    return [...numbered(no, checkRow(check), width), ...readingRows(check, width)]
  })
  const verdicts = VERDICT_WORDS.flatMap((verdict, index) => {
    const no = view.checks.length + index + 1
    choices.set(no, verdictChoice(piece, verdict))
    return numbered(no, verdict.says, width)
  })
  const sign = standingSign(view)
  return {
    title: line(strong(pieceName(state, piece)), '  ', chip(sign)),
    top: [],
    rows: rowsOf(
      groups(
        [
          ...indented(`Home: ${homeName(state, piece)}. Now ${liesText(state, piece)}.`, width),
          ...verdictRows(state, view, width),
        ],
        headed(isCondemned(view) ? 'WAS ASKED' : 'A NUMBER SAYS: LOOKED AT, AND GOOD', checks),
        headed('OR JUDGE IT', verdicts),
        headed(
          'BELONGS TOGETHER WITH',
          view.together.length === 0 ? [] : indented(setNames(state, view.together), width),
        ),
      ),
    ),
    enter: BACK,
    choice: choicesOf(choices),
    large: inLarge(sign.word, [[chip(sign)], pieceName(state, piece)]),
  }
}

function isCondemned({ standing }: JudgingView): boolean {
  return standing === 'replace'
}

function checkRow({ check, readings }: Check): Line {
  const { id, done } = check
  const result = done ? `  good${done.says ? `: ${done.says}` : ''}` : ''
  const lacks = readings && readings.missing.length > 0 ? ', to be measured' : ''
  return line(...(done ? [chip(SIGNS.good), ' '] : []), strong(checkWords(check)), `  ${id}${lacks}${result}`)
}

/** What was measured for a check, under its row. */
function readingRows({ readings }: Check, width: number): Line[] {
  return (readings?.readings ?? []).flatMap(({ measure, judged }) =>
    bulleted(`${measure.name}: ${verdictLine(measure.measurement, judged)}`, width),
  )
}

function choiceOf({ check, readings }: Check): Choice {
  const { id, done, piece } = check
  if (done)
    return { says: `${id} is done already`, act: { do: 'say', what: `${id} was found good already.` } }
  const [first] = readings?.missing ?? []
  if (first === undefined)
    return { says: `${id} is good`, act: { do: 'send', commands: [{ do: 'pass-checks', checks: [id] }] } }
  const what = first === 'it' ? '' : `${first} `
  return {
    says: `measure ${what}first`,
    act: {
      do: 'write',
      before: `measure ${what}of ${piece}: `,
      asks: 'Type the readings, the instrument and the limits of the manual.',
    },
  }
}

interface VerdictWords {
  typed: string
  says: string
}

const VERDICT_WORDS: readonly VerdictWords[] = [
  { typed: 'fit again', says: 'it goes back as it is: say why' },
  { typed: 'clean', says: 'clean it, and look again: say what' },
  { typed: 'machine', says: 'it needs machining: say what' },
  { typed: 'replace', says: 'a new one is needed: say why' },
]

function verdictChoice(piece: PieceId, { typed, says }: VerdictWords): Choice {
  return {
    says,
    act: {
      do: 'write',
      before: `judge ${piece} ${typed} because `,
      asks: 'Type why, as: scored on the big end',
    },
  }
}

function verdictRows(state: State, { piece, verdict }: JudgingView, width: number): Line[] {
  if (!verdict) return []
  const along = verdict.along === undefined ? '' : `, along with ${pieceName(state, verdict.along)}`
  const text = line(strong(sentence(`${VERDICTS[verdict.verdict]}${along}`)), ` ${sentence(verdict.reason)}`)
  const next = verdict.verdict === 'replace' ? `"new ${piece}" when the new one is here.` : ''
  return [...indented(text, width), ...(next === '' ? [] : indented(next, width))]
}

/** A matched set that is asked about: one piece is chosen, or all of them are good. */
function setPage({ session, width }: Scene, piece: PieceId): Page {
  const state = session.stateNow()
  const views = judgedSet(state, piece).map((each) => judgingView(state, each))
  const open = views
    .filter((view) => !isCondemned(view))
    .flatMap(({ checks }) => checks.filter(({ check }) => check.done === null))
  const choices = new Map<number, Choice>()
  const rows = views.flatMap((view) => {
    const no = choices.size + 1
    choices.set(no, goTo(`look at ${pieceName(state, view.piece)}`, { at: 'judge', piece: view.piece }))
    const asked = view.checks.flatMap(({ check }) => (check.done === null ? checkWords(check) : []))
    return numbered(
      no,
      line(chip(standingSign(view)), ' ', strong(pieceName(state, view.piece)), `  ${asked.join('; ')}`),
      width,
    )
  })
  const all = open.length === 0 ? null : choices.size + 1
  if (all !== null)
    choices.set(all, {
      says: 'all of them are good',
      act: { do: 'send', commands: [{ do: 'pass-checks', checks: open.map(({ check }) => check.id) }] },
    })
  return {
    title: line(strong('TO BE CHECKED'), `  ${countedPiece(state, piece, 1)} and its set`),
    top: [],
    rows: rowsOf(
      groups(rows, all === null ? [] : numbered(all, 'all of them were looked at, and are good', width)),
    ),
    enter: BACK,
    choice: choicesOf(choices),
    large: inLarge(open.length === 0 ? SIGNS.good.word : `${open.length} OPEN`, [
      countedPiece(state, piece, 1),
      'and its set',
    ]),
  }
}
