import { countText, shareText } from '../../tests/simulation/measure/share-text.ts'
import type { ClassTally, JobCount, Tally } from '../../tests/simulation/measure/tally.ts'

/** What a job takes on the command line, without a mistake and with some. */
export function costsOfLines(clean: Tally, withMistakes: Tally): string[] {
  const each = ({ costs, jobs }: Tally, name: keyof Tally['costs']) => costs[name] / Math.max(1, jobs)
  const share = clean.costs.confirmations / Math.max(1, clean.costs.lines)
  const sum = (count: (row: ClassTally) => number) =>
    withMistakes.rows.reduce((total, row) => total + count(row), 0)
  const stopped = (rows: readonly ClassTally[]) => {
    const count = (of: (row: ClassTally) => number) => rows.reduce((total, row) => total + of(row), 0)
    const made = count((row) => row.made)
    const passed = count(({ asked, unseen }) => asked + unseen)
    return { made, text: shareText(made - passed, made) }
  }
  const all = stopped(withMistakes.rows)
  const omissions = stopped(withMistakes.rows.filter(({ group }) => group === 'omission'))
  return [
    `Of all ${countText(all.made)} mistakes, whatever was said of them, ${all.text} were stopped before the first start; of all ${countText(omissions.made)} omissions, ticked or never recorded ones too, ${omissions.text}. ${countText(sum(({ byChance }) => byChance))} more were put right by chance, as their step went apart for another one, and count neither way.`,
    byJobs(withMistakes.byJob),
    `On the command line a clean job takes ${countText(Math.round(each(clean, 'lines')))} lines on average, ${Math.round(share * 100)} % of them asked for by the tool alone, ${each(clean, 'overrides').toFixed(1)} overrides; one with ${withMistakes.mistakes} mistakes ${countText(Math.round(each(withMistakes, 'lines')))} lines, of which ${each(withMistakes, 'refusals').toFixed(1)} are refused. Under the answers of a clean job stand ${each(clean, 'questions').toFixed(1)} questions that hold up nothing.`,
    `Refusals and holds that no mistake explains: ${countText(clean.falseBlocks.length)} in ${countText(clean.jobs)} clean jobs, ${countText(withMistakes.falseBlocks.length)} in ${countText(withMistakes.jobs)} jobs with mistakes.`,
  ]
}

/** The mistakes of one job are not independent of each other: the limits by jobs are those that hold for certain. */
function byJobs({ omissions, places }: Tally['byJob']): string {
  const text = ({ jobs, passed }: JobCount) =>
    `${countText(jobs - passed)} of ${countText(jobs)}, ${shareText(jobs - passed, jobs)}`
  return `The limits above take each mistake by itself, though those of one job may hang together. By jobs: none of the omissions of the first goal passed in ${text(omissions)}; every wrong position was refused at the first piece in ${text(places)}.`
}
