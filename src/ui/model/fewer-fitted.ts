import type { Choice, Page } from '../page.ts'

/**
 * `7.1` is seven of what the first row puts home, `7.` the same: the eighth is not in the bag. Null for what is no such
 * count, and where the row puts no such lot home.
 */
export function fewerFitted(text: string, page: Page): Choice | null {
  const [, count, no] = /^([1-9]\d{0,2})[.,]([1-9]?)$/.exec(text) ?? []
  const choice = count === undefined ? undefined : page.choice(no ? Number(no) : 1)
  if (choice?.fits === undefined || choice.act.do !== 'send') return null
  const [command] = choice.act.commands
  const fitting = command?.do === 'fit' ? command.fittings[0] : undefined
  if (command?.do !== 'fit' || !fitting) return null
  return {
    says: `${count} of ${choice.fits}: ${choice.says}`,
    act: { ...choice.act, commands: [{ ...command, fittings: [{ ...fitting, count: Number(count) }] }] },
  }
}

/** How that is typed, of the first row that has more than one: `7.2 fits 7 of row 2`. */
export function fewerForm(choices: readonly Choice[]): string | null {
  const at = choices.findIndex(({ fits = 0 }) => fits > 1)
  const fewer = (choices[at]?.fits ?? 0) - 1
  return at < 0 ? null : `${fewer}.${at + 1} fits ${fewer} of row ${at + 1}`
}
