import type { WorkedOut } from '../../session/work-out.ts'

/** An amount in the units of its kind. */
export function convertText({ typed, newtonMetres }: Extract<WorkedOut, { sum: 'convert' }>): string[] {
  return [`${typed} = ${Number(newtonMetres.toPrecision(6))} N·m`]
}
