const PLACE = /(<!-- mistakes -->\n\n)(.*?)(\n\n<!-- end of mistakes -->)/s

/** What stands in a README between the marks of the simulation. */
export function findingsIn(readme: string): string {
  const found = PLACE.exec(readme)?.[2]
  if (found === undefined) throw new Error('the README has no place for the mistakes')
  return found
}

/** The README with other findings between the marks. */
export function withFindings(readme: string, text: string): string {
  findingsIn(readme)
  return readme.replace(PLACE, (_, start: string, __, end: string) => start + text + end)
}
