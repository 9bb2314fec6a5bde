/** A position, and the slot of a tray that its piece lies in. */
export interface Slotted {
  position: string
  slot: string | undefined
}

/** Positions as one says them: `I1–I4, E1, E2`. They run on in the order given; two alone are listed. */
export function rangesText(positions: readonly string[], to = '–', and = ', '): string {
  return runsOf(positions.map((position) => [position]))
    .map((run) => runText(run, 0, to, and))
    .join(and)
}

/** Positions with the slots they lie in, told in runs in which both go on: `I1–I4 in slots 1–4, E1 in slot 9`. */
export function slottedText(slotted: readonly Slotted[]): string {
  return runsOf(slotted.map(({ position, slot = '' }) => [position, slot]))
    .map((run) => {
      const slots = runText(run, 1, '–', ' and ')
      if (slots.trim() === '') return runText(run, 0)
      return `${runText(run, 0)} in ${run.length === 1 ? 'slot' : 'slots'} ${slots}`
    })
    .join(', ')
}

/** Rows of names cut where not all of them go on by one, or all stay empty. Short runs without slots are single. */
function runsOf(rows: readonly string[][]): string[][][] {
  const runs: string[][][] = []
  for (const row of rows) {
    const run = runs.at(-1)
    const last = run?.at(-1)
    if (run && last?.every((name, index) => isNext(name, row[index] ?? ''))) run.push(row)
    else runs.push([row])
  }
  return runs
}

function runText(run: readonly string[][], column: number, to = '–', and = ', '): string {
  const names = run.map((row) => row[column] ?? '')
  if (names.every((name) => name === '')) return ''
  return names.length > 2 ? `${names[0]}${to}${names.at(-1)}` : names.join(and)
}

function isNext(one: string, other: string): boolean {
  if (one === '' || other === '') return one === other
  const [, letters, digits] = NUMBERED.exec(one) ?? []
  const [, otherLetters, otherDigits] = NUMBERED.exec(other) ?? []
  if (digits === undefined || otherDigits === undefined) return false
  // `09` and `10` go on, `I1` and `II2` do not.
  return letters === otherLetters && Number(otherDigits) === Number(digits) + 1
}

const NUMBERED = /^(.*?)(\d{1,6})$/
