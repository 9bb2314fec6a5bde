import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { labelCode } from '../../src/label/code.ts'
import { jobWith } from './support/bench.ts'

type Bench = ReturnType<typeof jobWith>

interface Action {
  does: string
  /** What was recorded before. */
  after: readonly string[]
  /** What was pressed before, and is not counted. */
  lead?: string
  /** What is pressed: ⏎ and ⌫ are Enter and Backspace, `{1}` is a scan of label 1. */
  pressed: string
  came(bench: Bench): void
}

const cover = ['begin valve cover off, does not hide', 'off 8 M6x25 hex 10 valve cover bolts into new bag']
const head = [
  'begin cylinder head off, does not hide',
  'off cylinder head into bench',
  'off 10 M8x60 E12 head bolts into new bag',
  'end',
  'tighten head bolts: 20 Nm, 50 Nm',
  'take 1',
]
const fitted = ['fit head bolts', 'fit cylinder head']
const angle = [...head.map((each) => each.replace('50 Nm', '90 deg')), ...fitted]
const caps = [
  'begin camshaft off, does not hide',
  'off cam cap I1 into bench',
  'mark I1: arrow to chain',
  'end',
  'take 1',
]

const ACTIONS: readonly Action[] = [
  {
    does: 'record eight alike bolts into a new bag, the first time',
    after: ['begin valve cover off'],
    pressed: '8 M6x25 hex 10 valve cover bolts⏎',
    came: ({ state }) => expect(inBag(state(), 1)).toEqual([['valve cover bolts', 8]]),
  },
  {
    does: 'the same into another new bag, later',
    after: [...cover, 'begin clutch cover off'],
    pressed: '8.⏎',
    came: ({ state }) => expect(inBag(state(), 2)).toEqual([['valve cover bolts', 8]]),
  },
  {
    does: 'record a cam cap with its mark',
    after: ['begin camshaft off'],
    pressed: 'cam cap I1⏎mark I1: arrow to chain⏎',
    came: ({ state }) => {
      expect(inBag(state(), 1)).toEqual([['cam cap', 1]])
      expect([...state().marks.values()]).toMatchObject([{ text: 'arrow to chain', piece: 'p1' }])
    },
  },
  {
    does: 'record four cam caps into the slots of a new tray',
    after: ['begin camshaft off', 'off camshaft into bench'],
    pressed: '11⏎4⏎cam caps I1..I4⏎',
    came: ({ state }) => {
      expect(state().containers.get(1)).toMatchObject({ kind: 'tray', slots: 4 })
      expect(inBag(state(), 1).map(([, count]) => count)).toEqual([1, 1, 1, 1])
    },
  },
  {
    does: 'record what is too big for a bag',
    after: [...cover, 'begin cylinder head off'],
    pressed: '12⏎cylinder head⏎',
    came: ({ state }) => {
      const head = [...state().ledger.accounts.values()].at(-1)
      expect(head?.piece.name).toBe('cylinder head')
      expect([...(head?.at.keys() ?? [])]).toEqual(['bench'])
    },
  },
  {
    does: 'find where a bag goes',
    after: [...cover, 'end'],
    pressed: '{1}',
    came: ({ text }) => expect(text()).toContain('goes to valve cover, step 1'),
  },
  {
    does: 'the same by the number on it',
    after: [...cover, 'end'],
    pressed: '.2⏎1⏎',
    came: ({ text }) => expect(text()).toContain('goes to valve cover, step 1'),
  },
  {
    does: 'take up the next step',
    after: [...cover, 'end'],
    pressed: '⏎',
    came: ({ state, desk }) => {
      expect(state().build).toBe(1)
      expect(desk.screen).toEqual({ at: 'step', step: 1 })
    },
  },
  {
    does: 'tighten ten bolts in two stages',
    after: [...head, ...fitted],
    pressed: `⏎${'⏎'.repeat(20)}`,
    came: ({ state }) =>
      expect(
        state()
          .tightenings.get('t1')
          ?.done.map(({ size }) => size),
      ).toEqual([10, 10]),
  },
  {
    does: 'see what blocks a step',
    after: [...cover, 'begin camshaft off', 'off cam cap I1', 'end'],
    pressed: '.3⏎1⏎',
    came: ({ text }) => expect(text()).toContain('Step 2, camshaft, comes before'),
  },
  {
    does: 'undo',
    after: cover,
    pressed: '0⏎',
    came: ({ state }) => expect(state().ledger.accounts.size).toBe(0),
  },
  {
    does: 'count a bag',
    after: [...cover, 'end'],
    pressed: '{1}2⏎8⏎0⏎',
    came: ({ text }) => expect(text()).toContain('8 in the record, 8 counted: agrees'),
  },
  {
    does: 'confirm a mark, once its piece is on',
    after: [...caps, 'fit I1'],
    pressed: '⏎⏎',
    came: ({ state }) => expect(state().marks.get('m1')?.confirmed).toBe(true),
  },
  {
    does: 'go back from a scan',
    after: [...cover, 'end'],
    pressed: '{1}⌫',
    came: ({ desk }) => expect(desk.screen).toEqual({ at: 'now' }),
  },
  {
    does: 'finish a step',
    after: [...cover, 'end', 'take 1', 'fit valve cover bolts'],
    pressed: '⏎⏎',
    came: ({ state }) => expect(state().steps.get(1)?.built).toBe('done'),
  },
  {
    does: 'see what is left over',
    after: [...cover, 'end'],
    pressed: '.4⏎',
    came: ({ desk }) => expect(desk.screen).toEqual({ at: 'left' }),
  },
  {
    does: 'see the next bolt in large letters',
    after: [...head, ...fitted],
    pressed: '⏎*',
    came: ({ desk }) => {
      expect(desk.isLarge).toBe(true)
      expect(desk.page().large?.letters).toBe('1')
    },
  },
  {
    does: 'go on after work broke off, with a bolt in doubt',
    after: angle,
    lead: `⏎${'⏎'.repeat(13)}stop⏎.⏎`,
    pressed: '⏎1⏎1⏎',
    came: ({ state }) => expect(state().tightenings.get('t1')?.suspect).toBe(null),
  },
]

test.each(ACTIONS)('$does', ({ after, lead = '', pressed, came }) => {
  const bench = jobWith(...after)
  // On the screen where that work is done; everything else begins at the card.
  if (bench.state().strip !== null) bench.enter('.1')
  bench.type(keysOf(lead))
  bench.type(keysOf(pressed))
  came(bench)
})

function keysOf(pressed: string): string {
  return pressed
    .replace(/\{(\d+)\}/g, (_, no) => `${labelCode(1, Number(no))}\r`)
    .replaceAll('⏎', '\r')
    .replaceAll('⌫', '\x7f')
}

// `npx vitest run tests/ui/keystrokes.test.ts --update` writes the table anew.
test('the README says how many keys each takes', async () => {
  const readme = readFileSync('README.md', 'utf8')
  expect(readme).toMatch(TABLE)
  await expect(readme.replace(TABLE, (_, start, end) => start + table() + end)).toMatchFileSnapshot(
    '../../README.md',
  )
})

const TABLE = /(<!-- keystrokes -->\n\n).*?(\n\n<!-- end of keystrokes -->)/s

/** Columns as wide as their widest cell, as tables stand in Markdown by hand. */
function table(): string {
  const rows = [
    ['', 'pressed', 'keys', 'scans'],
    ...ACTIONS.map(({ does, pressed }) => [
      does,
      `\`${short(pressed)}\``,
      String([...pressed.replace(SCAN, '')].length),
      String(pressed.match(SCAN)?.length ?? 0),
    ]),
  ]
  const widths = [0, 1, 2, 3].map((column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)))
  const [head = '', ...body] = rows.map(
    (row) => `| ${row.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join(' | ')} |`,
  )
  return [head, `| ${widths.map((width) => '-'.repeat(width)).join(' | ')} |`, ...body].join('\n')
}

const SCAN = /\{\d+\}/g

function short(pressed: string): string {
  return pressed
    .replace(SCAN, '(scan) ')
    .replace(/⏎{4,}/, (all) => `⏎ x ${all.length}`)
    .trim()
}

function inBag(state: ReturnType<Bench['state']>, no: number): [string, number][] {
  return [...(state.ledger.byContainer.get(no) ?? [])].flatMap((piece) => {
    const account = state.ledger.accounts.get(piece)
    return account ? [[account.piece.name, account.should] as [string, number]] : []
  })
}
