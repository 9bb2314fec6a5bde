import { countText, shareText } from '../../tests/simulation/measure/share-text.ts'
import type { ClassTally, Tally } from '../../tests/simulation/measure/tally.ts'

/** What a job takes on the command line, without a mistake and with some. */
export function costsOfLines(clean: Tally, withMistakes: Tally): string[] {
  const each = ({ costs, jobs }: Tally, name: keyof Tally['costs']) => costs[name] / Math.max(1, jobs)
  const share = clean.costs.confirmations / Math.max(1, clean.costs.lines)
  const sum = (count: (row: ClassTally) => number) =>
    withMistakes.rows.reduce((total, row) => total + count(row), 0)
  const made = sum((row) => row.made)
  const stopped = made - sum(({ asked, unseen }) => asked + unseen)
  return [
    `Of all ${countText(made)} mistakes, whatever was said of them, ${shareText(stopped, made)} were stopped before the first start.`,
    `On the command line a clean job takes ${countText(Math.round(each(clean, 'lines')))} lines on average, ${Math.round(share * 100)} % of them asked for by the tool alone, ${each(clean, 'overrides').toFixed(1)} overrides; one with ${withMistakes.mistakes} mistakes ${countText(Math.round(each(withMistakes, 'lines')))} lines, of which ${each(withMistakes, 'refusals').toFixed(1)} are refused.`,
    `Refusals and holds that no mistake explains: ${countText(clean.falseBlocks.length)} in ${countText(clean.jobs)} clean jobs, ${countText(withMistakes.falseBlocks.length)} in ${countText(withMistakes.jobs)} jobs with mistakes.`,
  ]
}
